import { distance_m } from '#shared/geometry/point';
import type { KnownLength, Underlay } from '#shared/model/plan';

/** A known length beside what the floor plan has there. */
export interface ScaleCheck {
  readonly known: KnownLength;
  readonly drawn_m: number;
  /** Share by which the floor plan is longer than on site. */
  readonly off: number;
}

/** What sets the scale of a floor plan, if a typed distance does, and what checks it. */
export function scaleProof({ calibration, knownLengths, metresPerUnit }: Pick<Underlay, 'calibration' | 'knownLengths' | 'metresPerUnit'>): { readonly setting: KnownLength | undefined; readonly checks: readonly ScaleCheck[] } {
  const isTyped = calibration === 'two-points';
  return {
    setting: isTyped ? knownLengths[0] : undefined,
    checks: (isTyped ? knownLengths.slice(1) : knownLengths).map((known) => {
      const drawn_m = distance_m(known.a, known.b) * (metresPerUnit ?? 1);
      return { known, drawn_m, off: drawn_m / known.distance_m - 1 };
    }),
  };
}
