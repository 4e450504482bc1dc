import fc from 'fast-check';
import { expect, test } from 'vitest';
import { realign } from '#shared/derived/realign';

const keys = Array.from({ length: 200 }, (_, id) => ({ id }));
type Key = (typeof keys)[number];
const made = (list: readonly Key[], before: readonly { key: Key; order: number }[] = []) => realign(before, ({ key }) => key, list, (key) => ({ key, order: -1 }));

test('the same list is the very same entries', () => {
  const first = made(keys).entries;
  expect(made(keys, first)).toEqual({ entries: first, gone: [], come: [] });
  expect(made(keys, first).entries).toBe(first);
});

test('whatever changes: one entry for each key, in order, kept in the order they stood; gone and come say the difference', () => {
  const anyList = fc.shuffledSubarray(keys.slice(0, 90));
  fc.assert(
    fc.property(fc.oneof(anyList, fc.constant(keys.slice(0, 90))), anyList, fc.boolean(), (one, two, isSorted) => {
      const before = made(one).entries;
      const after = isSorted ? [...two].sort((a, b) => one.indexOf(a) - one.indexOf(b)) : two;
      const orders = new Map(before.map((entry) => [entry, entry.order]));
      const { entries, gone, come } = made(after, before);
      expect(entries.map(({ key }) => key)).toEqual(after);
      expect(entries.map(({ order }) => order)).toEqual(after.map((_, i) => i));
      expect(new Set(gone)).toEqual(new Set(before.filter((entry) => !entries.includes(entry))));
      expect(new Set(come)).toEqual(new Set(entries.filter((entry) => !before.includes(entry))));
      const stood = entries.flatMap((entry) => orders.get(entry) ?? []);
      expect(stood).toEqual([...stood].sort((a, b) => a - b));
    }),
    { numRuns: 200 },
  );
});

test('what is taken out or put in alone is gone or come alone, however far the rest moves', () => {
  const some = fc.subarray(keys.slice(0, 120), { minLength: 1 });
  fc.assert(
    fc.property(some, (part) => {
      const before = made(keys.slice(0, 120)).entries;
      const less = made(part, before);
      expect([less.gone.length, less.come.length]).toEqual([120 - part.length, 0]);
      const more = made(keys.slice(0, 120), made(part).entries);
      expect([more.gone.length, more.come.length]).toEqual([0, 120 - part.length]);
    }),
  );
});
