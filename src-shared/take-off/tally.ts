/** What makes two things alike; numbers that differ by float noise only are the same. */
export const likeness = (thing: object): string => JSON.stringify(thing, (_, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(9)) : value));

/** Counts things that are alike, in the order in which they are first met. */
export function tally<Kind>(things: readonly Kind[], keyOf: (thing: Kind) => string): { readonly thing: Kind; readonly count: number }[] {
  const counts = new Map<string, { thing: Kind; count: number }>();
  for (const thing of things) {
    const key = keyOf(thing);
    const known = counts.get(key);
    if (known) known.count += 1;
    else counts.set(key, { thing, count: 1 });
  }
  return [...counts.values()];
}
