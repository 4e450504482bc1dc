import { describe, expect, test } from 'vitest';
import { countOf, problemText } from '../../src-renderer/plan-words.ts';

describe('problemText', () => {
  const problem = { code: 'damaged', what: 'The plan file is cut short.', where: 'hut.nzw', remedy: 'Open an earlier copy.' } as const;

  test('says what, where and what to do', () => {
    expect(problemText(problem)).toBe('The plan file is cut short (hut.nzw). Open an earlier copy.');
    expect(problemText({ ...problem, where: '' })).toBe('The plan file is cut short. Open an earlier copy.');
    expect(problemText({ ...problem, remedy: '' })).toBe('The plan file is cut short (hut.nzw).');
  });

  test('says what else follows from it before what to do', () => {
    expect(problemText({ ...problem, where: '' }, 'Nothing is kept.')).toBe('The plan file is cut short. Nothing is kept. Open an earlier copy.');
  });
});

test('countOf tells one from several', () => {
  expect([countOf(1, 'tee'), countOf(0, 'tee'), countOf(2, 'stop')]).toEqual(['1 tee', '0 tees', '2 stops']);
});
