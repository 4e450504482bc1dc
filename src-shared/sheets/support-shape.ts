import { type PlanPoint3, bearing_rad, distance_m } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { DerivedNozzle, DerivedPipe } from '../derived/derived.ts';
import type { PlacedSupport } from '../derived/placed-supports.ts';
import type { Support } from '../model/plan.ts';

/** A place in the view: x to the right, y up. */
interface ViewPlace {
  readonly x: number;
  readonly y: number;
}

/** How a support is seen: across a pipe that runs in a direction, or beside one that is seen end on [rad]. */
export type SupportLie = { readonly pipe_rad: number } | { readonly beside_rad: number };

/** A support's strokes about its place, x to the right and y up [mm at factor 1]. */
export interface SupportShape {
  /** Two strokes square to the pipe, four numbers each: solid where it takes thrust, broken where it only carries. */
  readonly strokes: readonly (readonly number[])[];
  /** The bar that closes them on the side of the structure; a guide and a sling stay open. */
  readonly bar: readonly number[] | undefined;
  readonly isBroken: boolean;
}

/** How far the strokes stand out on the open side of the pipe [mm at factor 1]. */
export const SUPPORT_NEAR_mm = 1.3;
/** How far on the side of the bar, half the distance between them, and half the bar. */
const FAR = 2.3;
const HALF_GAP = 0.85;
const HALF_BAR = 1.45;
/** Beside a pipe that is seen end on the strokes begin and end here. */
const BESIDE = 1.75;
const BESIDE_FAR = 3.6;
/** A pipe shorter than this in the view is seen end on. */
const END_ON = 1e-3;

/** Aslant first: dimensions run square, and names stand at the upper right. */
const SIDES_rad = [5, 7, 3, 1].map((eighths) => (eighths * Math.PI) / 4);
const CLEAR_rad = (40 * Math.PI) / 180;

/** A side that keeps clear of directions which are taken: aslant where that is clear enough, else the middle of the widest gap. */
export function freeSide_rad(taken_rad: readonly number[]): number {
  const between = (a: number, b: number): number => Math.abs(Math.atan2(Math.sin(a - b), Math.cos(a - b)));
  const aslant = SIDES_rad.find((side) => taken_rad.every((taken) => between(side, taken) >= CLEAR_rad));
  if (aslant !== undefined) return aslant;
  const turns = taken_rad.map((angle) => ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)).sort((a, b) => a - b);
  const gaps = turns.map((from, i) => ({ from, gap: (turns[i + 1] ?? (turns[0] ?? 0) + 2 * Math.PI) - from }));
  const widest = gaps.reduce((best, each) => (each.gap > best.gap + 1e-6 ? each : best));
  return widest.from + widest.gap / 2;
}

/**
 * How a support on a pipe from `a` to `b` of the view is seen.
 * @param beside_rad  on which side of a pipe that is seen end on, or of a place without pipe
 */
export const supportLie = (a: ViewPlace | undefined, b: ViewPlace | undefined, beside_rad: number): SupportLie =>
  a && b && Math.hypot(b.x - a.x, b.y - a.y) >= END_ON ? { pipe_rad: Math.atan2(b.y - a.y, b.x - a.x) } : { beside_rad };

/** How a support is seen from above: that of a riser or drop stands beside it, clear of the jets and the pipe that leave its place. */
export function supportLieOnPlan({ support: { at }, pipe }: PlacedSupport, nozzles: readonly DerivedNozzle[], pipes: readonly DerivedPipe[]): SupportLie {
  const isHere = (place: PlanPoint3 | undefined): boolean => place !== undefined && distance_m(place, at) <= SAME_PLACE_m;
  const leaving = ({ from, to }: DerivedPipe): number[] => [[from, to] as const, [to, from] as const].flatMap(([near, far]) => (isHere(near) && !isHere(far) ? [bearing_rad(near, far)] : []));
  return supportLie(pipe?.from, pipe?.to, freeSide_rad([...nozzles.flatMap((nozzle) => (isHere(nozzle.at) ? nozzle.holes_rad : [])), ...pipes.flatMap(leaving)]));
}

/** The strokes of a support: two square to the pipe; a bar closes them where the pipe cannot slide out. */
export function supportShape(kind: Support['kind'], lie: SupportLie): SupportShape {
  const isAcross = 'pipe_rad' in lie;
  // The bar lies up or left of the pipe, whichever way the agent flows.
  const straight = isAcross ? Math.atan2(Math.sin(lie.pipe_rad), Math.cos(lie.pipe_rad)) : lie.beside_rad - Math.PI / 2;
  const angle = isAcross && (straight > Math.PI / 2 + 1e-9 || straight <= -Math.PI / 2 + 1e-9) ? straight + Math.PI : straight;
  const [near, far] = isAcross ? [-SUPPORT_NEAR_mm, FAR] : [BESIDE, BESIDE_FAR];
  const at = (u: number, v: number): readonly number[] => [u * Math.cos(angle) - v * Math.sin(angle), u * Math.sin(angle) + v * Math.cos(angle)];
  return {
    strokes: [-HALF_GAP, HALF_GAP].map((u) => [...at(u, near), ...at(u, far)]),
    bar: kind === 'rigid' || kind === 'hanger' ? [...at(-HALF_BAR, far), ...at(HALF_BAR, far)] : undefined,
    isBroken: kind === 'hanger' || kind === 'sling',
  };
}

/** Where the middle of a support's strokes lies from its place [mm at factor 1]. */
export function besideMiddle(lie: SupportLie): ViewPlace {
  if ('pipe_rad' in lie) return { x: 0, y: 0 };
  const away = (BESIDE + BESIDE_FAR) / 2;
  return { x: Math.cos(lie.beside_rad) * away, y: Math.sin(lie.beside_rad) * away };
}
