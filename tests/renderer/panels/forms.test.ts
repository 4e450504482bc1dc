import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import { describe, expect, test } from 'vitest';
import { nextMark } from '../../../src-renderer/panels/revisions/next-mark.ts';
import { readProfile } from '../../../src-renderer/panels/dialogs/profile-dialog.tsx';

describe('marks of revisions', () => {
  test.each([
    [[], 'A'],
    [['A'], 'B'],
    [['A', 'Z'], 'AA'],
    [['AZ'], 'BA'],
    [['ZZ'], 'AAA'],
    [['0', '1'], '2'],
    [['for tender'], 'A'],
  ])('after %j comes %s', (marks, next) => {
    expect(nextMark(marks)).toBe(next);
  });
});

describe('a profile file', () => {
  test('what was saved is read again', () => {
    expect(readProfile(JSON.stringify(SAMPLE_PROFILE))).toEqual(SAMPLE_PROFILE);
  });

  test.each(['', 'no json', '[]', '{"id":3}', JSON.stringify({ ...SAMPLE_PROFILE, limits: { nozzleToWall_m: { value: -1, source: '' } } })])('%j is refused in words', (text) => {
    expect(readProfile(text)).toMatch(/unit profile/);
  });
});
