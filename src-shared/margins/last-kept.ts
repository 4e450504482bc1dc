/**
 * How far a value may go from 0 before something first breaks, found by halving: kept at the answer, broken no farther than
 * `fine` beyond it. What is kept again after it has been broken is not looked for.
 * @param isKept  asked of values 0 … most
 * @param step    strides in which it is looked for first, so that what breaks between two ends of the range is met; the whole range otherwise
 * @returns `most` where nothing breaks; undefined where it is broken at 0
 */
export function lastKept(isKept: (value: number) => boolean, most: number, fine: number, step = most): number | undefined {
  if (!isKept(0)) return undefined;
  let kept = 0;
  for (let value = Math.min(step, most); isKept(value); value = Math.min(value + step, most)) {
    if (value >= most) return most;
    kept = value;
  }
  let broken = Math.min(kept + step, most);
  while (broken - kept > fine) {
    const middle = (kept + broken) / 2;
    if (isKept(middle)) kept = middle;
    else broken = middle;
  }
  return kept;
}
