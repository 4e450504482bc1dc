import fc from 'fast-check';
import { expect, test } from 'vitest';
import { realign } from '#shared/derived/realign';

const keys = Array.from({ length: 200 }, (_, id) => ({ id }));
type Key = (typeof keys)[number];
type Kept = ReturnType<typeof made>;
const NONE = { keys: [], entries: [] };
const made = (list: readonly Key[], before: { readonly keys: readonly Key[]; readonly entries: readonly { key: Key; order: number }[] } = NONE) => realign(before, list, (key, order) => ({ key, order }));

test('the same list is the very same entries', () => {
  const first: Kept = made(keys);
  for (const list of [keys, [...keys]]) {
    expect(made(list, first)).toMatchObject({ gone: [], come: [], isInPlace: true });
    expect(made(list, first).entries).toBe(first.entries);
  }
});

test('whatever changes: one entry for each key, in order, kept in the order they stood; gone and come say the difference', () => {
  const anyList = fc.shuffledSubarray(keys.slice(0, 90));
  fc.assert(
    fc.property(fc.oneof(anyList, fc.constant(keys.slice(0, 90))), anyList, fc.boolean(), (one, two, isSorted) => {
      const start = made(one);
      const before = start.entries;
      const after = isSorted ? [...two].sort((a, b) => one.indexOf(a) - one.indexOf(b)) : two;
      const orders = new Map(before.map((entry) => [entry, entry.order]));
      const { entries, gone, come, isInPlace } = made(after, start);
      expect(entries.map(({ key }) => key)).toEqual(after);
      expect(entries.map(({ order }) => order)).toEqual(after.map((_, i) => i));
      expect(new Set(gone)).toEqual(new Set(before.filter((entry) => !entries.includes(entry))));
      expect(new Set(come)).toEqual(new Set(entries.filter((entry) => !before.includes(entry))));
      if (isInPlace) for (const entry of entries) expect(orders.get(entry) ?? entry.order).toBe(entry.order);
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
      const before = made(keys.slice(0, 120));
      const less = made(part, before);
      expect([less.gone.length, less.come.length]).toEqual([120 - part.length, 0]);
      const more = made(keys.slice(0, 120), made(part));
      expect([more.gone.length, more.come.length]).toEqual([0, 120 - part.length]);
    }),
  );
});
