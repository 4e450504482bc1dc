import { type Outline, boundsOf, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, distance_m, midpoint, planPoint } from '../geometry/point.ts';
import { type Segment, distanceToSegment_m, nearestOnSegment } from '../geometry/segment.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { type Region, differenceOf, fillOf, intersectionOf } from './polygon-sums.ts';
import { type SoundFloor, isInCrack, isOnFloor } from './sound-ways.ts';

/** Squares in which a wall hides floor are not halved below this, and others not below the second [m]. */
const FINEST_m = 0.1;
const FINEST_OPEN_m = 0.01;
/** Squares of a zone that is shown are no finer than a share of the room. */
const SHOWN_SHARE = 0.015;
/** A side as long as so many of the finest squares is still a step of the stairs along their border. */
const LONGEST_STEP = 3;

/**
 * A figure at a place; and what it is at least anywhere within `around_m` of it, as far as nothing but distance makes the
 * difference: every way longer by so much. Below 0 it is what the figure is at most.
 */
export type FigureAt = (at: PlanPoint, around_m: number) => number;

interface Square {
  readonly at: PlanPoint;
  readonly half_m: number;
}

const quarters = ({ at, half_m }: Square): Square[] => {
  const half = half_m / 2;
  return [-half, half].flatMap((dx) => [-half, half].map((dy) => ({ at: planPoint(at.x + dx, at.y + dy), half_m: half })));
};

function squaresOver({ outline }: SoundFloor): Square[] {
  const { minX, minY, maxX, maxY } = boundsOf(outline);
  const side_m = Math.min(maxX - minX, maxY - minY);
  if (!(side_m > 0)) return [];
  const squares: Square[] = [];
  for (let x = minX; x < maxX; x += side_m) for (let y = minY; y < maxY; y += side_m) squares.push({ at: planPoint(x + side_m / 2, y + side_m / 2), half_m: side_m / 2 });
  return squares;
}

/** A place of the floor from which all of a square's floor lies within a distance. */
interface Probe {
  readonly at: PlanPoint;
  readonly around_m: number;
  /** Nobody can be there: between a thing and the wall that it touches. */
  readonly isInCrack: boolean;
  /** All of that floor is in sight of the place, so that nothing but distance makes a difference. */
  readonly isOpen: boolean;
}

const isLeftOf = ({ a, b }: Segment, { x, y }: PlanPoint): boolean => (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x) >= -SAME_PLACE_m * distance_m(a, b);

/**
 * From its middle where that is on the floor, else from the nearest place of a wall. All floor around is in sight when the
 * place is on the room's side of every wall near by and no wall ends or turns away there.
 * @returns undefined for a square that lies off the floor
 */
function probeOf(floor: SoundFloor, { at, half_m }: Square): Probe | undefined {
  const reach_m = half_m * Math.SQRT2;
  const [nearest] = floor.sides.map((side) => nearestOnSegment(at, side)).sort((one, other) => distance_m(at, one) - distance_m(at, other));
  const off_m = nearest ? distance_m(at, nearest) : Infinity;
  const isOn = isOnFloor(floor, at);
  if (!isOn && off_m > reach_m) return undefined;
  if (off_m > reach_m) return { at, around_m: reach_m, isInCrack: false, isOpen: true };
  const from = isOn || !nearest ? at : nearest;
  const around_m = isOn ? reach_m : reach_m + off_m;
  if (!isOn && isInCrack(floor, from)) return { at: from, around_m, isInCrack: true, isOpen: false };
  const isOpen = floor.bends.every((bend) => distance_m(from, bend) > around_m) && floor.sides.every((side) => isLeftOf(side, from) || distanceToSegment_m(from, side) > around_m);
  return { at: from, around_m, isInCrack: false, isOpen };
}

/**
 * The place of a floor where a figure is least: at a corner, or found by halving squares until none can be lower by more
 * than the precision; squares in which a wall hides floor are halved down to 0.1 m.
 */
export function leastOverFloor(floor: SoundFloor, figure: FigureAt, precision: number): { readonly at: PlanPoint; readonly figure: number } | undefined {
  let best: { at: PlanPoint; figure: number } | undefined;
  const take = (at: PlanPoint): void => {
    const here = figure(at, 0);
    if (!best || here < best.figure) best = { at, figure: here };
  };
  for (const corner of [...floor.outline, ...floor.holes.flat(), ...floor.tall.flat()]) if (isOnFloor(floor, corner)) take(corner);
  let squares = squaresOver(floor);
  while (squares.length > 0 && best?.figure !== -Infinity) {
    const halved: Square[] = [];
    for (const square of squares) {
      const probe = probeOf(floor, square);
      if (!probe) continue;
      if (!probe.isInCrack) take(probe.at);
      if (probe.isOpen && best && figure(probe.at, probe.around_m) >= best.figure - precision) continue;
      if (square.half_m * 2 > (probe.isOpen ? FINEST_OPEN_m : FINEST_m)) halved.push(...quarters(square));
    }
    squares = halved;
  }
  return best;
}

/** The open floor as a region. */
export const openFloor = ({ outline, holes, tall }: SoundFloor): Region => differenceOf(fillOf([outline]), [fillOf(holes), fillOf(tall)]);

/** A ring whose stairs along the border of squares are drawn slantwise, through the middle of every step; long sides stay. */
const withoutStairs = (ring: Outline, step_m: number): Outline =>
  sidesOf(ring).flatMap(({ a, b }) => (distance_m(a, b) <= step_m * LONGEST_STEP ? [midpoint(a, b)] : [a, b]));

/**
 * The part of a floor where a figure is below a limit, for showing: its border is found to within the finest square, by the
 * figure in the middle of each.
 */
export function floorBelow(floor: SoundFloor, figure: FigureAt, limit: number): Region {
  const { minX, minY, maxX, maxY } = boundsOf(floor.outline);
  const finest_m = Math.max(FINEST_m, Math.max(maxX - minX, maxY - minY) * SHOWN_SHARE);
  const enough: Region[] = [];
  const keep = ({ at: { x, y }, half_m }: Square): void => {
    // A little over, so that the grid of the polygon sums leaves no crack between two squares.
    const by_m = half_m + SAME_PLACE_m * 4;
    enough.push([[planPoint(x - by_m, y - by_m), planPoint(x + by_m, y - by_m), planPoint(x + by_m, y + by_m), planPoint(x - by_m, y + by_m)]]);
  };
  let squares = squaresOver(floor);
  while (squares.length > 0) {
    const halved: Square[] = [];
    for (const square of squares) {
      const probe = probeOf(floor, square);
      if (!probe) continue;
      if (probe.isOpen && figure(probe.at, -probe.around_m) < limit) continue;
      if (probe.isOpen && figure(probe.at, probe.around_m) >= limit) keep(square);
      else if (square.half_m * 2 > finest_m) halved.push(...quarters(square));
      else if (!probe.isInCrack && figure(probe.at, 0) >= limit) keep(square);
    }
    squares = halved;
  }
  const open = openFloor(floor);
  return intersectionOf(open, differenceOf(open, enough).map((ring) => withoutStairs(ring, finest_m)));
}
