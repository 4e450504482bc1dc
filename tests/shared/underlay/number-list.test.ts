import { expect, test } from 'vitest';
import { NumberList } from '#shared/underlay/number-list';

test('gives back what was put in, over many chunks', () => {
  const list = new NumberList();
  const count = 50_000;
  for (let i = 0; i < count; i += 1) list.push(4 * i, 4 * i + 1, 4 * i + 2, 4 * i + 3);
  expect(list.length).toBe(count * 4);
  const all = new Float64Array(list.length + 2);
  expect(list.copyTo(all, 2)).toBe(all.length);
  expect(all.subarray(2).every((value, i) => value === i)).toBe(true);
  expect([...list.chunks()].every((chunk) => chunk.length % 4 === 0)).toBe(true);
});

test('an empty list has no numbers', () => {
  const list = new NumberList();
  expect(list.length).toBe(0);
  expect([...list.chunks()].every((chunk) => chunk.length === 0)).toBe(true);
});
