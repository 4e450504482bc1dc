/**
 * Places at which two lists of the same length hold different things.
 * @example placesThatDiffer([a, b], [a, c]) is [1]
 */
export function placesThatDiffer(now: readonly unknown[], before: readonly unknown[]): readonly number[] {
  const places: number[] = [];
  for (let i = 0; i < now.length; i += 1) if (now[i] !== before[i]) places.push(i);
  return places;
}
