import type { Path64, Paths64 } from 'clipper2-ts';
import { type Box, boxesTouch } from '../geometry/outline.ts';
import type { BoxedPath } from './untouched-rings.ts';

/** Whether a ring on the grid is a rectangle along both axes: the box around it. */
export function isBox({ path }: BoxedPath): boolean {
  const [a, b, c, d] = path;
  if (path.length !== 4 || !a || !b || !c || !d) return false;
  return (a.x === b.x && b.y === c.y && c.x === d.x && d.y === a.y) || (a.y === b.y && b.x === c.x && c.y === d.y && d.x === a.x);
}

/** A box as the polygon library gives it back: counter-clockwise from the upper right. */
const ringOf = ({ minX, minY, maxX, maxY }: Box): Path64 => [
  { x: maxX, y: maxY },
  { x: minX, y: maxY },
  { x: minX, y: minY },
  { x: maxX, y: minY },
];

/**
 * What the polygon library would give, digit for digit and in its order, for boxes that lie apart within another box; the
 * highest first. Undefined where they are no such boxes, or where two are cut off at one height, which says nothing.
 */
export function boxesInBox(rings: readonly BoxedPath[], region: readonly BoxedPath[]): Paths64 | undefined {
  const [around] = region;
  if (!around || region.length !== 1 || !isBox(around) || !rings.every(isBox)) return undefined;
  for (const [i, { box }] of rings.entries()) for (let j = i + 1; j < rings.length; j += 1) if (rings[j] && boxesTouch(box, rings[j]?.box ?? box)) return undefined;
  const within = rings
    .map(({ box }): Box => ({ minX: Math.max(box.minX, around.box.minX), minY: Math.max(box.minY, around.box.minY), maxX: Math.min(box.maxX, around.box.maxX), maxY: Math.min(box.maxY, around.box.maxY) }))
    .filter(({ minX, minY, maxX, maxY }) => minX < maxX && minY < maxY);
  if (new Set(within.map(({ maxY }) => maxY)).size < within.length) return undefined;
  return within.sort((a, b) => b.maxY - a.maxY).map(ringOf);
}

const isClockwise = (path: Path64): boolean => path.reduce((sum, { x, y }, i) => sum + x * (path[(i + 1) % path.length]?.y ?? y) - y * (path[(i + 1) % path.length]?.x ?? x), 0) < 0;

/** More boxes are left to the polygon library. */
const MOST_BOXES = 24;

/** Whether boxes together plainly cover a box: looked up between all their sides. Rings that are no boxes are passed over; no says nothing. */
export function leavesNothing(rings: readonly BoxedPath[], covers: readonly BoxedPath[]): boolean {
  const [first] = rings;
  if (!first || rings.length !== 1 || !isBox(first)) return false;
  // A hole in what covers leaves something.
  if (covers.some(({ path }) => isClockwise(path))) return false;
  const boxes = covers.filter(isBox).map(({ box }) => box);
  if (boxes.length === 0 || boxes.length > MOST_BOXES) return false;
  const { minX, minY, maxX, maxY } = first.box;
  const cutsOf = (least: number, most: number, sides: readonly number[]): number[] => [...new Set([least, ...sides.filter((side) => side > least && side < most), most])].sort((a, b) => a - b);
  const across = cutsOf(minX, maxX, boxes.flatMap((box) => [box.minX, box.maxX]));
  const up = cutsOf(minY, maxY, boxes.flatMap((box) => [box.minY, box.maxY]));
  for (let i = 0; i + 1 < across.length; i += 1) {
    for (let j = 0; j + 1 < up.length; j += 1) {
      const [west = 0, east = 0, south = 0, north = 0] = [across[i], across[i + 1], up[j], up[j + 1]];
      if (!boxes.some((box) => box.minX <= west && box.maxX >= east && box.minY <= south && box.maxY >= north)) return false;
    }
  }
  return true;
}
