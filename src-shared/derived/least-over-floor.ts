import { boundsOf } from '../geometry/outline.ts';
import { type PlanPoint, planPoint } from '../geometry/point.ts';
import { distanceToSegment_m } from '../geometry/segment.ts';
import { type Region, differenceOf, fillOf } from './polygon-sums.ts';
import { type SoundFloor, isOnFloor } from './sound-ways.ts';

/** Squares that a wall crosses are not halved below this, and others not below the second [m]. */
const FINEST_m = 0.1;
const FINEST_CLEAR_m = 0.01;
/** Squares of a zone that is shown are no finer than a share of the room. */
const SHOWN_SHARE = 0.01;

/**
 * A figure at a place; and what it is at least anywhere within `around_m` of it, as far as nothing but distance makes the
 * difference.
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

/** Whether all of a square lies on one side of every wall, so that nothing but distance makes a difference in it. */
const isClear = (floor: SoundFloor, { at, half_m }: Square): boolean => floor.sides.every((side) => distanceToSegment_m(at, side) > half_m * Math.SQRT2);

/**
 * The place of a floor where a figure is least: at a corner, or found by halving squares until none can be lower by more
 * than the precision; squares that a wall crosses are halved down to 0.1 m.
 */
export function leastOverFloor(floor: SoundFloor, figure: FigureAt, precision: number): { readonly at: PlanPoint; readonly figure: number } | undefined {
  const corners = [...floor.outline, ...floor.holes.flat(), ...floor.tall.flat()].filter((at) => isOnFloor(floor, at));
  let best: { at: PlanPoint; figure: number } | undefined;
  const take = (at: PlanPoint): void => {
    const here = figure(at, 0);
    if (!best || here < best.figure) best = { at, figure: here };
  };
  corners.forEach(take);
  let squares = squaresOver(floor);
  while (squares.length > 0) {
    const halved: Square[] = [];
    for (const square of squares) {
      const isOn = isOnFloor(floor, square.at);
      const clear = isClear(floor, square);
      if (!isOn && clear) continue;
      if (isOn) take(square.at);
      // In a room without corners to bend round every way is straight, and a wall across the square changes nothing.
      const isBound = isOn && (clear || floor.bends.length === 0);
      if (isBound && best && figure(square.at, square.half_m * Math.SQRT2) >= best.figure - precision) continue;
      if (square.half_m * 2 > (isBound ? FINEST_CLEAR_m : FINEST_m)) halved.push(...quarters(square));
    }
    if (best?.figure === -Infinity) break;
    squares = halved;
  }
  return best;
}

/** The open floor as a region. */
export const openFloor = ({ outline, holes, tall }: SoundFloor): Region => differenceOf(fillOf([outline]), [fillOf(holes), fillOf(tall)]);

/**
 * The part of a floor where a figure is below a limit, for showing: its border is found to within the finest square, and the
 * part is rather shown too small by that, so that no seam appears along the walls.
 */
export function floorBelow(floor: SoundFloor, figure: FigureAt, limit: number): Region {
  const { minX, minY, maxX, maxY } = boundsOf(floor.outline);
  const finest_m = Math.max(FINEST_m, Math.max(maxX - minX, maxY - minY) * SHOWN_SHARE);
  const enough: Region[] = [];
  const keep = ({ at: { x, y }, half_m }: Square): void => {
    const by_m = half_m + finest_m;
    enough.push([[planPoint(x - by_m, y - by_m), planPoint(x + by_m, y - by_m), planPoint(x + by_m, y + by_m), planPoint(x - by_m, y + by_m)]]);
  };
  let squares = squaresOver(floor);
  while (squares.length > 0) {
    const halved: Square[] = [];
    for (const square of squares) {
      const isOn = isOnFloor(floor, square.at);
      const clear = isClear(floor, square);
      if (!isOn && clear) continue;
      if (isOn && clear && figure(square.at, square.half_m * Math.SQRT2) >= limit) keep(square);
      else if (square.half_m * 2 > finest_m) halved.push(...quarters(square));
      else if (isOn && figure(square.at, 0) >= limit) keep(square);
    }
    squares = halved;
  }
  return differenceOf(openFloor(floor), enough);
}
