import type { FittingSign } from '../isometric/fitting-sign.ts';

/** A stroke or ring of a fitting's sign, about its place [mm at factor 1], x to the right and y up. */
export interface FittingStroke {
  /** x and y in turn. */
  readonly places: readonly number[];
  readonly isHeavy?: boolean;
  /** Closed: filled with the colour of the ground, or of the pipe. */
  readonly fill?: 'paper' | 'pipe';
}

type Local = readonly (readonly [u: number, v: number])[];

/** A circle as a ring of places. */
const round = (u: number, v: number, radius: number): Local =>
  Array.from({ length: 16 }, (_, i) => [u + radius * Math.cos((i * Math.PI) / 8), v + radius * Math.sin((i * Math.PI) / 8)] as const);

const across = (u: number, half: number): Local => [
  [u, -half],
  [u, half],
];

/** Strokes in the frame of a leg: u runs along the pipe away from the fitting, v to its left. */
const END_SIGNS: Readonly<Partial<Record<FittingSign, readonly { readonly local: Local; readonly isHeavy?: boolean; readonly fill?: 'paper' | 'pipe' }[]>>> = {
  cap: [{ local: across(0, 1.5), isHeavy: true }],
  plug: [
    { local: across(0, 1.3) },
    { local: [[0, -0.7], [-1.5, -0.7], [-1.5, 0.7], [0, 0.7]], fill: 'pipe' },
  ],
  drain: [
    { local: across(0, 1.3) },
    { local: [[-0.2, 0], [-2.6, 1.4], [-2.6, -1.4]], fill: 'paper' },
  ],
  'dirt-trap': [
    { local: [[2, -1.3], [2, 1.3], [-1, 1.3], [-1, -1.3]], fill: 'paper' },
    { local: across(-1, 1.5), isHeavy: true },
    { local: round(-0.1, -0.5, 0.3), fill: 'pipe' },
    { local: round(0.5, 0.4, 0.3), fill: 'pipe' },
    { local: round(1.3, -0.4, 0.3), fill: 'pipe' },
  ],
  union: [{ local: across(-1, 1.2) }, { local: across(0, 2), isHeavy: true }, { local: across(1, 1.2) }],
  coupling: [{ local: [[-1.2, -1], [1.2, -1], [1.2, 1], [-1.2, 1]], fill: 'paper' }],
};

/** Where the tick of a screwed fitting stands on its leg, and half its length. */
const TICK_AT = 1.7;
const TICK_HALF = 1.1;

/**
 * The sign of a fitting about its place: ticks across the legs of a screwed one, a ring at the corner of a street elbow
 * and a tick on its inside thread only, shapes of their own for what ends or parts a pipe. A reducer has its own wedge.
 * @param legs_rad  directions in which its pipes leave it, counter-clockwise from the right, the one toward the source first
 */
export function fittingShape(sign: FittingSign, legs_rad: readonly number[]): FittingStroke[] {
  const turned = (local: Local, angle: number): number[] => local.flatMap(([u, v]) => [u * Math.cos(angle) - v * Math.sin(angle), u * Math.sin(angle) + v * Math.cos(angle)]);
  const own = END_SIGNS[sign];
  const [feed = 0] = legs_rad;
  if (own) return own.map(({ local, ...rest }) => ({ places: turned(local, feed), ...rest }));
  const ticks = (sign === 'street-elbow' ? legs_rad.slice(0, 1) : legs_rad).map((leg): FittingStroke => ({ places: turned(across(TICK_AT, TICK_HALF), leg) }));
  return sign === 'street-elbow' ? [{ places: turned(round(0, 0, 1), 0), fill: 'paper' }, ...ticks] : ticks;
}
