import { type DirectedEnd, cross3, dot3, mixed, onBentPath, placesAlong } from './bent-path.ts';
import { type PlanPoint3, distance3_m } from './point.ts';
import { planeOf, shortestBentPath } from './shortest-bent-path.ts';
import { type Direction3, direction3, opposite3 } from './vector3.ts';

/** A hose between two directed ends. */
export interface LaidHose {
  /** Drawn curve, both ends included; a straight where the hose does not reach. */
  readonly curve: readonly PlanPoint3[];
  /** Sharpest bend of the drawn curve [m]; 0 where the hose does not reach, infinite where it is straight. */
  readonly radius_m: number;
  /** What of the hose is longer than the drawn curve [m]: slack for which no gentle way was found. */
  readonly slack_m: number;
}

/** Lengths of hose are told apart down to this [m]. */
const ALIKE_m = 5e-4;
const HALVINGS = 24;
/** Nothing bends so sharply [m]. */
const SHARPEST_m = 1e-3;

/** The largest value of a growing length that keeps within a limit, between one that does and one that does not. */
function largestWithin(limit_m: number, low: number, high: number, lengthAt_m: (value: number) => number): number {
  let [kept, beyond] = [low, high];
  for (let i = 0; i < HALVINGS; i += 1) {
    const middle = (kept + beyond) / 2;
    const length_m = lengthAt_m(middle);
    if (length_m <= limit_m) kept = middle;
    else beyond = middle;
    if (length_m <= limit_m && limit_m - length_m < ALIKE_m / 5) break;
  }
  return kept;
}

/** A way of a hose past places: shortest curves from one to the next, and straights along its ends. */
interface Way {
  readonly curve: readonly PlanPoint3[];
  readonly length_m: number;
}
const NO_WAY: Way = { curve: [], length_m: Infinity };

function wayThrough(ends: readonly DirectedEnd[], radius_m: number): Way {
  let curve: PlanPoint3[] = [];
  let length_m = 0;
  for (let i = 1; i < ends.length; i += 1) {
    const [a, b] = [ends[i - 1], ends[i]];
    const path = a && b && shortestBentPath(a, b, radius_m);
    if (!path) return NO_WAY;
    const places = placesAlong(path);
    curve = curve.length === 0 ? places : [...curve, ...places.slice(1)];
    length_m += path.length_m;
  }
  return { curve, length_m };
}

/** The two directions square to a way in the plane of both ends; none where they lie in no plane. */
function asideOf(way: Direction3, from: DirectedEnd, to: DirectedEnd): Direction3[] {
  const normal = planeOf(from, to, distance3_m(from.at, to.at));
  if (!normal) return [];
  const aside = cross3(normal, way);
  return [aside, opposite3(aside)];
}

/**
 * Ways that grow from the shortest one as they take up slack: straight on from one end or both before they bend, or
 * bowed out in the middle.
 * @param by_m  how far they go out of the shortest way [m]
 */
function looserWays(from: DirectedEnd, to: DirectedEnd, radius_m: number): ((by_m: number) => Way)[] {
  const on = ({ at, way }: DirectedEnd, by_m: number): DirectedEnd => ({ at: mixed(1, at, by_m, way), way });
  const legs = ([[1, 0], [0, 1], [1, 1]] as const).map(([first, last]) => (by_m: number): Way => {
    const [begin, end] = [on(from, first * by_m), on(to, -last * by_m)];
    const { curve, length_m } = wayThrough([begin, end], radius_m);
    return { curve: [...(first ? [from.at] : []), ...curve, ...(last ? [to.at] : [])], length_m: length_m + (first + last) * by_m };
  });
  const direct = shortestBentPath(from, to, radius_m);
  const middle = direct && onBentPath(direct, direct.length_m / 2);
  const bows = middle ? asideOf(middle.way, from, to).map((aside) => (by_m: number): Way => wayThrough([from, { at: mixed(1, middle.at, by_m, aside), way: middle.way }, to], radius_m)) : [];
  return [...legs, ...bows];
}

/**
 * Lays a hose of a length between two directed ends, as gently as its length allows.
 *
 * The model: a hose is a line of bounded curvature that does not stretch. It can be laid when the shortest such curve
 * is no longer than the hose. What is left over is taken up by wider bends: the drawn curve is the shortest one at the
 * greatest radius that the length allows. Where wider bends do not make it long enough, as between two ends that face
 * each other in line, the hose goes straight on before it bends, or bows out in its middle. What neither takes up is told as slack: a short straight hose that
 * is a little too long has no gentle way at all, since a bow needs room for four bends. Weight, stiffness and twist are
 * left out.
 *
 * @param length_m  of the hose from end to end [m], > 0
 * @param least_m   least radius of any bend [m]; undefined while it is not known
 */
export function layHose(from: DirectedEnd, to: DirectedEnd, length_m: number, least_m: number | undefined): LaidHose {
  const taut = { curve: [from.at, to.at], radius_m: 0, slack_m: 0 };
  const lengthAt_m = (radius_m: number): number => shortestBentPath(from, to, radius_m)?.length_m ?? Infinity;
  const start_m = Math.max(SHARPEST_m, least_m ?? SHARPEST_m);
  const fits = lengthAt_m(start_m) <= length_m + 1e-9;
  // Too short for its bends: drawn as sharply as it would have to bend.
  const low_m = fits ? start_m : SHARPEST_m;
  if (!fits && lengthAt_m(low_m) > length_m) return taut;
  let high_m = 2 * low_m;
  while (high_m < 50 * length_m && lengthAt_m(high_m) <= length_m) high_m *= 2;
  const radius_m = largestWithin(length_m, low_m, high_m, lengthAt_m);
  const path = shortestBentPath(from, to, radius_m);
  if (!path) return taut;
  const slack_m = Math.max(0, length_m - path.length_m);
  const isStraight = path.pieces.every(({ kind }) => kind === 'straight');
  const widest = { curve: placesAlong(path), radius_m: isStraight ? Infinity : radius_m, slack_m: slack_m < ALIKE_m ? 0 : slack_m };
  if (widest.slack_m === 0 || !fits) return widest;
  let best: LaidHose = widest;
  for (const wayAt of looserWays(from, to, low_m)) {
    const { curve, length_m: laid_m } = wayAt(largestWithin(length_m, 0, length_m, (by_m) => wayAt(by_m).length_m));
    const left_m = Math.max(0, length_m - laid_m);
    if (left_m < ALIKE_m) return { curve, radius_m: low_m, slack_m: 0 };
    if (left_m < best.slack_m) best = { curve, radius_m: low_m, slack_m: left_m };
  }
  return best;
}

/** How far two directed ends are from lying in one plane [rad], 0 … π/2: a hose between them bends in two planes and twists. */
export function outOfPlane_rad(from: DirectedEnd, to: DirectedEnd): number {
  const size_m = distance3_m(from.at, to.at);
  const chord = direction3(from.at, to.at, 1e-9);
  if (!chord || size_m === 0) return 0;
  const leaning = (u: Direction3, v: Direction3): number => {
    const normal = direction3({ x: 0, y: 0, z: 0 }, { x: u.y * chord.z - u.z * chord.y, y: u.z * chord.x - u.x * chord.z, z: u.x * chord.y - u.y * chord.x }, 1e-9);
    return normal ? Math.asin(Math.min(1, Math.abs(dot3(normal, v)))) : 0;
  };
  return Math.min(leaning(from.way, to.way), leaning(to.way, from.way));
}
