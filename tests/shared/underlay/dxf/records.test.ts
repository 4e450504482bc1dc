import { describe, expect, test } from 'vitest';
import { Records } from '#shared/underlay/dxf/records';
import { problemOf } from '../../../support/underlay.ts';

const records = (text: string): Records => new Records(new Uint8Array(Buffer.from(text, 'latin1')));

describe('records', () => {
  test.each(['\n', '\r\n', '\r'])('are read with line ends %j', (end) => {
    const walk = records(['  0', 'LINE', '  8', 'Walls', ' 10', '1.5', ' 10', '2.5', '  0', 'EOF', ''].join(end));
    expect(walk.next()).toBe(true);
    expect(walk.type).toBe('LINE');
    expect(walk.count).toBe(3);
    expect(walk.text(8)).toBe('Walls');
    expect(walk.number(10, 0)).toBe(1.5);
    expect(walk.numberAt(2)).toBe(2.5);
    expect(walk.number(99, -1)).toBe(-1);
    expect(walk.upcoming).toBe('EOF');
    expect(walk.next()).toBe(true);
    expect(walk.has(8)).toBe(false);
    expect(walk.next()).toBe(false);
  });

  test('comments are passed over, embedded objects hide nothing of the record before them', () => {
    const walk = records('0\nMTEXT\n999\nnote\n10\n1\n101\nEmbedded Object\n10\n99\n40\n7\n0\nEOF\n');
    walk.next();
    expect(walk.count).toBe(1);
    expect(walk.number(10, 0)).toBe(1);
    expect(walk.has(40)).toBe(false);
  });

  test('a long record keeps all its pairs', () => {
    const body = Array.from({ length: 5000 }, (_, i) => `10\n${i}\n`).join('');
    const walk = records(`0\nLWPOLYLINE\n${body}0\nEOF\n`);
    walk.next();
    expect(walk.count).toBe(5000);
    expect(walk.numberAt(4999)).toBe(4999);
  });

  test('a broken number tells its line and entity', () => {
    const walk = records('0\nLINE\n8\n0\n10\nNaN\n0\nEOF\n');
    walk.next();
    const problem = problemOf(() => walk.number(10, 0));
    expect(problem.where).toMatch(/line 6, LINE, “NaN”/);
    expect(problem.remedy).toMatch(/ASCII DXF/);
  });

  test('a code that is none tells where', () => {
    const walk = records('0\nLINE\nabc\n0\n0\nEOF\n');
    expect(problemOf(() => walk.next()).where).toBe('line 3');
    expect(problemOf(() => records('hello\nworld\n')).what).toMatch(/not a DXF/);
  });
});
