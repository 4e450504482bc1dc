/** Sizes are shares of a bar, each above 0 and at most 1. */
type Shares = readonly number[];

/** Float noise of a sum of shares. */
const NOISE = 1e-9;
const MOST_STEPS = 24;
const MOST_EDGES = 60;

const roundedUp = (bars: number): number => Math.ceil(bars - NOISE);
const sum = (values: Shares): number => values.reduce((total, value) => total + value, 0);

/** Pieces above 1 − edge need a bar each, those below edge need none; what is between counts as it is (Martello and Toth 1990). */
const edged = (share: number, edge: number): number => (share > 1 - edge ? 1 : share < edge ? 0 : share);

/** Steps of 1/k: no bar holds more than k pieces that are each above 1/(k + 1) (Fekete and Schepers 2001). */
function stepped(share: number, k: number): number {
  const steps = (k + 1) * share;
  // At a whole number of steps the lower value is taken: it is sound, and float noise cannot turn it.
  const whole = Math.abs(steps - Math.round(steps)) < NOISE ? Math.round(steps) - 1 : Math.floor(steps);
  return whole / k;
}

/**
 * Fewest bars that could hold pieces of these shares; no cutting plan needs fewer.
 * Each way of counting, and each after another, turns the pieces of a full bar into no more than one bar.
 */
export function fewestBars(shares: Shares): number {
  const edges = [...new Set([0, ...shares.filter((share) => share <= 0.5)])].slice(0, MOST_EDGES);
  const steps = Array.from({ length: MOST_STEPS }, (_, i) => i + 1);
  const counts = edges.flatMap((edge) => {
    const cut = shares.map((share) => edged(share, edge)).filter((share) => share > 0);
    return [sum(cut), ...steps.map((k) => sum(cut.map((share) => stepped(share, k))))];
  });
  return Math.max(0, ...counts.map(roundedUp));
}
