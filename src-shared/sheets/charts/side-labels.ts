/** A label that belongs to a height on paper [mm]. */
export interface SideLabel {
  readonly words: string;
  readonly y: number;
}

/**
 * Moves labels that stand beside a chart up and down just so far that none covers another.
 * @param pitch_mm  least distance from one to the next
 * @param top       highest place of a label, `bottom` the lowest
 * @returns the labels from top to bottom, each with the height that it belongs to as `from`
 */
export function spreadLabels<T extends SideLabel>(labels: readonly T[], pitch_mm: number, top: number, bottom: number): (T & { readonly from: number })[] {
  const sorted = [...labels].sort((a, b) => a.y - b.y);
  const placed: number[] = [];
  for (const { y } of sorted) placed.push(Math.max(y, top, (placed.at(-1) ?? Number.NEGATIVE_INFINITY) + pitch_mm));
  // What was pushed beyond the bottom pushes its neighbours back.
  let limit = bottom;
  for (let i = placed.length - 1; i >= 0; i -= 1) {
    placed[i] = Math.min(placed[i] ?? 0, limit);
    limit = (placed[i] ?? 0) - pitch_mm;
  }
  return sorted.map((label, i) => ({ ...label, from: label.y, y: placed[i] ?? label.y }));
}
