/** Something that is kept for a key in a list, and its place in it. */
export interface Entry<K> {
  readonly key: K;
  order: number;
}

/** Keys with an entry for each, in their order. */
export interface Aligned<K, E extends Entry<K>> {
  readonly keys: readonly K[];
  readonly entries: readonly E[];
}

/** Entries brought in line with a list of keys, and what became of the others. */
export interface Realigned<K, E extends Entry<K>> extends Aligned<K, E> {
  readonly gone: readonly E[];
  readonly come: readonly E[];
  /** Every entry that was kept stands at the place where it stood. */
  readonly isInPlace: boolean;
}

/** So many places that differ are taken as changed one by one; more of them have moved up or down the list. */
const FEW = 64;

/** Places at which a list of as many keys has another one; undefined when there are many of them. */
function changedPlaces(before: readonly unknown[], keys: readonly unknown[]): number[] | undefined {
  if (before.length !== keys.length) return undefined;
  const changed: number[] = [];
  for (let i = 0; i < keys.length; i += 1) {
    if (before[i] === keys[i]) continue;
    if (changed.length === FEW) return undefined;
    changed.push(i);
  }
  return changed;
}

/**
 * Brings entries in line with a list of keys: entries of keys that are still there are kept, in the order in which they
 * stood, others are made. A key that changed its place among the others counts as gone and come.
 * The order of every entry is set to its new place.
 */
export function realign<K, E extends Entry<K>>(before: Aligned<K, E>, keys: readonly K[], make: (key: K, order: number) => E): Realigned<K, E> {
  const gone: E[] = [];
  const come: E[] = [];
  const changed = before.keys === keys ? [] : changedPlaces(before.keys, keys);
  if (changed?.length === 0) return { keys, entries: before.entries, gone, come, isInPlace: true };
  if (changed) {
    const entries = before.entries.slice();
    for (const i of changed) {
      const [old, key] = [entries[i], keys[i]];
      if (!old || key === undefined) continue;
      const entry = make(key, i);
      entries[i] = entry;
      gone.push(old);
      come.push(entry);
    }
    return { keys, entries, gone, come, isInPlace: true };
  }
  const known = new Map(before.entries.map((entry) => [entry.key, entry]));
  let last = -1;
  const entries = keys.map((key, i) => {
    const entry = known.get(key);
    if (!entry || entry.order < last) {
      const made = make(key, i);
      come.push(made);
      return made;
    }
    last = entry.order;
    known.delete(key);
    return entry;
  });
  for (const entry of known.values()) gone.push(entry);
  for (const [i, entry] of entries.entries()) entry.order = i;
  return { keys, entries, gone, come, isInPlace: false };
}
