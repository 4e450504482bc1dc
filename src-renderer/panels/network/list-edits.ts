/** The same list with one thing a place earlier or later; unchanged at the ends. */
export function shifted<T>(list: readonly T[], index: number, by: 1 | -1): T[] {
  const to = index + by;
  const [thing, other] = [list[index], list[to]];
  if (thing === undefined || other === undefined) return [...list];
  return list.map((each, i) => (i === index ? other : i === to ? thing : each));
}

/** The same list without one thing. */
export const without = <T>(list: readonly T[], index: number): T[] => list.filter((_, i) => i !== index);

/** The same list with one thing changed. */
export const changedAt = <T extends object>(list: readonly T[], index: number, part: Partial<T>): T[] => list.map((each, i) => (i === index ? { ...each, ...part } : each));

/** An id that nothing in a list has yet: "part-1", "part-2", … after the greatest. */
export function freeId(list: readonly { readonly id: string }[], word: string): string {
  const taken = list.map(({ id }) => Number(/-(\d+)$/.exec(id)?.[1] ?? 0));
  return `${word}-${Math.max(0, ...taken) + 1}`;
}
