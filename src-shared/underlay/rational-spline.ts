import type { Run } from './flatten.ts';

/** A rational B-spline: control places x and y in turn, a weight each, knots count = places + degree + 1. */
export interface RationalSpline {
  readonly degree: number;
  readonly knots: ArrayLike<number>;
  readonly places: ArrayLike<number>;
  readonly weights: ArrayLike<number> | undefined;
}

/** Whether the numbers of a spline belong together: enough places and rising knots. */
export function isSoundSpline({ degree, knots, places, weights }: RationalSpline): boolean {
  const count = places.length / 2;
  if (!Number.isInteger(degree) || degree < 1 || degree > 25 || count < degree + 1) return false;
  if (knots.length !== count + degree + 1 || (weights && weights.length !== count)) return false;
  for (let i = 1; i < knots.length; i += 1) if ((knots[i] ?? 0) < (knots[i - 1] ?? 0)) return false;
  return true;
}

/** The place at parameter u inside knot span `span`, by de Boor's recurrence on weighted places. */
function placeAt(spline: RationalSpline, span: number, u: number, work: Float64Array): [number, number] {
  const { degree, knots, places, weights } = spline;
  for (let i = 0; i <= degree; i += 1) {
    const from = span - degree + i;
    const weight = weights?.[from] ?? 1;
    work[3 * i] = (places[2 * from] ?? 0) * weight;
    work[3 * i + 1] = (places[2 * from + 1] ?? 0) * weight;
    work[3 * i + 2] = weight;
  }
  for (let level = 1; level <= degree; level += 1) {
    for (let i = degree; i >= level; i -= 1) {
      const low = knots[span - degree + i] ?? 0;
      const high = knots[span + 1 + i - level] ?? 0;
      const t = high > low ? (u - low) / (high - low) : 0;
      for (let k = 0; k < 3; k += 1) {
        work[3 * i + k] = (1 - t) * (work[3 * (i - 1) + k] ?? 0) + t * (work[3 * i + k] ?? 0);
      }
    }
  }
  const weight = work[3 * degree + 2] || 1;
  return [(work[3 * degree] ?? 0) / weight, (work[3 * degree + 1] ?? 0) / weight];
}

/**
 * Appends a spline, both ends included, halving each knot span until chords fit.
 * @param tolerance greatest distance between curve and chord; 0 means a thousandth of each chord
 */
export function pushSpline(run: Run, spline: RationalSpline, tolerance: number): void {
  const { degree, knots, places } = spline;
  const count = places.length / 2;
  const work = new Float64Array(3 * (degree + 1));
  const halve = (span: number, u0: number, x0: number, y0: number, u1: number, x1: number, y1: number, deep: number): void => {
    const middle = (u0 + u1) / 2;
    const [x, y] = placeAt(spline, span, middle, work);
    const chord = Math.hypot(x1 - x0, y1 - y0);
    // Where the middle lies along the chord. Far from half-way the curve may double back inside.
    const share = chord > 0 ? ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / (chord * chord) : 0;
    const aside = Math.hypot(x - x0 - share * (x1 - x0), y - y0 - share * (y1 - y0));
    const isFlat = aside <= (tolerance > 0 ? tolerance : chord / 1000) && (chord === 0 || Math.abs(share - 0.5) <= 0.25);
    // The first halvings always happen: an S may cross its own chord halfway.
    if (deep >= 8 || (deep >= 2 && isFlat)) {
      run.push(x1, y1);
      return;
    }
    halve(span, u0, x0, y0, middle, x, y, deep + 1);
    halve(span, middle, x, y, u1, x1, y1, deep + 1);
  };
  let isFirst = true;
  for (let span = degree; span < count; span += 1) {
    const u0 = knots[span] ?? 0;
    const u1 = knots[span + 1] ?? 0;
    if (u1 <= u0) continue;
    const [x0, y0] = placeAt(spline, span, u0, work);
    const [x1, y1] = placeAt(spline, span, u1, work);
    if (isFirst) run.push(x0, y0);
    isFirst = false;
    if (degree === 1) run.push(x1, y1);
    else halve(span, u0, x0, y0, u1, x1, y1, 0);
  }
}
