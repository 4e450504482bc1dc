import { expect, test } from 'vitest';
import { isAlike, keeping, remembered, rememberedPart, sameList } from '#shared/derived/remember';

test('derives once while key and inputs are the same objects', () => {
  let times = 0;
  const derive = remembered((key: { n: number }, other: object) => {
    times += 1;
    return { n: key.n, other };
  });
  const [key, one, two] = [{ n: 1 }, {}, {}];
  expect(derive(key, one)).toBe(derive(key, one));
  expect(times).toBe(1);
  expect(derive(key, two)).toEqual({ n: 1, other: two });
  expect(derive({ n: 1 }, two)).not.toBe(derive(key, two));
  expect(times).toBe(3);
});

test('a part of a plan that is not frozen is derived every time', () => {
  const double = rememberedPart((part: { n: number }) => ({ n: part.n * 2 }));
  const open = { n: 1 };
  expect(double(open)).toEqual({ n: 2 });
  open.n = 5;
  expect(double(open)).toEqual({ n: 10 });
  Object.freeze(open);
  expect(double(open)).toBe(double(open));
});

test('a list keeps its identity while it holds the same things', () => {
  const [a, b] = [{}, {}];
  const list = [a, b];
  expect(sameList(list, [a, b])).toBe(list);
  expect(sameList(list, [b, a])).not.toBe(list);
  expect(sameList(list, [a])).toEqual([a]);
  expect(sameList(undefined, list)).toBe(list);
});

test('alike are plain lists and records of the same things, down to a depth', () => {
  const thing = new Map();
  expect(isAlike({ a: [1, { b: thing }], n: Number.NaN }, { a: [1, { b: thing }], n: Number.NaN }, 3)).toBe(true);
  expect(isAlike({ a: [1, { b: thing }] }, { a: [1, { b: thing }] }, 2)).toBe(false);
  expect(isAlike({ a: new Map() }, { a: new Map() }, 9)).toBe(false);
  expect(isAlike([1, 2], [1], 9)).toBe(false);
  expect(isAlike([], {}, 9)).toBe(false);
  expect(isAlike({ a: undefined }, { b: undefined }, 9)).toBe(false);
  expect(isAlike({ a: 0 }, { a: -0 }, 9)).toBe(false);
});

test('the last thing of a key is kept while the next is alike', () => {
  const keep = keeping<object, { readonly n: readonly number[] }>(2);
  const key = {};
  const first = keep(key, { n: [1] });
  expect(keep(key, { n: [1] })).toBe(first);
  const second = keep(key, { n: [2] });
  expect(second).toEqual({ n: [2] });
  expect(keep(key, { n: [2] })).toBe(second);
  expect(keep({}, { n: [2] })).not.toBe(second);
});
