/** Where a chart draws [px]: the frame that its axes span. */
export interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Places figures of an axis on the chart. */
export type Scale = (value: number) => number;

/** A straight scale from one range of figures to one of places. */
export function scaleOf([least, greatest]: readonly [number, number], [from, to]: readonly [number, number]): Scale {
  const span = greatest - least;
  return (value) => (span === 0 ? from : from + ((value - least) / span) * (to - from));
}

/** Nearer than this two places make no difference to the eye [px]. */
const STEP_px = 0.7;

/**
 * A line through places as an SVG path. What is not finite breaks it; places that crowd on one pixel are passed
 * over as long as they do not leave it up or down.
 */
export function pathThrough(xs: readonly number[], ys: readonly number[], x: Scale, y: Scale): string {
  const parts: string[] = [];
  let pen: { x: number; y: number } | null = null;
  xs.forEach((at, i) => {
    const value = ys[i];
    if (value === undefined || !Number.isFinite(value)) {
      pen = null;
      return;
    }
    const place = { x: x(at), y: y(value) };
    const isLast = i === xs.length - 1;
    if (pen && !isLast && Math.abs(place.x - pen.x) < STEP_px && Math.abs(place.y - pen.y) < STEP_px) return;
    parts.push(`${pen ? 'L' : 'M'}${place.x.toFixed(1)} ${place.y.toFixed(1)}`);
    pen = place;
  });
  return parts.join('');
}
