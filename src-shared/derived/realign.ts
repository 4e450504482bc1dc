/** Something that is kept for a key in a list, and its place in it. */
export interface Entry {
  order: number;
}

/** What became of a list of entries. */
export interface Realigned<E> {
  /** One for each key, in the order of the keys. */
  readonly entries: readonly E[];
  readonly gone: readonly E[];
  readonly come: readonly E[];
}

/** So many places that differ are taken as changed one by one; more of them have moved up or down the list. */
const FEW = 64;

/**
 * Brings entries in line with a list of keys: entries of keys that are still there are kept, in the order in which they
 * stood, others are made. A key that changed its place among the others counts as gone and come.
 * The order of every entry is set to its new place.
 */
export function realign<K extends object, E extends Entry>(before: readonly E[], keyOf: (entry: E) => K, keys: readonly K[], make: (key: K) => E): Realigned<E> {
  const isSame = (entry: E | undefined, key: K | undefined): boolean => entry !== undefined && key !== undefined && keyOf(entry) === key;
  const most = Math.min(before.length, keys.length);
  let head = 0;
  while (head < most && isSame(before[head], keys[head])) head += 1;
  if (head === before.length && head === keys.length) return { entries: before, gone: [], come: [] };
  let tail = 0;
  while (tail < most - head && isSame(before[before.length - 1 - tail], keys[keys.length - 1 - tail])) tail += 1;

  const gone: E[] = [];
  const come: E[] = [];
  const fresh = (key: K): E => {
    const entry = make(key);
    come.push(entry);
    return entry;
  };
  const middle = keys.slice(head, keys.length - tail);
  const old = before.slice(head, before.length - tail);
  const isAligned = old.length === middle.length && old.reduce((count, entry, i) => count + (isSame(entry, middle[i]) ? 0 : 1), 0) <= FEW;
  let now: E[];
  if (isAligned) {
    now = old.map((entry, i) => {
      const key = middle[i];
      if (key === undefined || isSame(entry, key)) return entry;
      gone.push(entry);
      return fresh(key);
    });
  } else {
    const known = new Map(old.map((entry) => [keyOf(entry), entry]));
    let last = -1;
    now = middle.map((key) => {
      const entry = known.get(key);
      if (!entry || entry.order < last) return fresh(key);
      last = entry.order;
      known.delete(key);
      return entry;
    });
    gone.push(...known.values());
  }
  const entries = [...before.slice(0, head), ...now, ...before.slice(before.length - tail)];
  for (const [i, entry] of entries.entries()) entry.order = i;
  return { entries, gone, come };
}
