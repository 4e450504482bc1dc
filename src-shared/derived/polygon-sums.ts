import { Clipper64, ClipType, FillRule, type Path64, type Paths64, type Point64, type PolyPath64, PolyTree64 } from 'clipper2-ts';
import { type Outline, boxesTouch } from '../geometry/outline.ts';
import type { PlanPoint } from '../geometry/point.ts';
import { counterClockwise } from '../geometry/ring-order.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { boxesInBox, isBox, leavesNothing } from './box-rings.ts';
import { boxedOf, untouched } from './untouched-rings.ts';

/** An area with holes and of several parts: outer rings counter-clockwise, holes clockwise, no ring crosses another. */
export type Region = readonly Outline[];

/** Polygon sums run on a grid as wide as `SAME_PLACE_m`, so that they are exact in integers and never fail on float noise. */
const perMetre = Math.round(1 / SAME_PLACE_m);

const isStraight = (a: Point64 | undefined, b: Point64 | undefined, c: Point64 | undefined): boolean =>
  a !== undefined && b !== undefined && c !== undefined && (b.x - a.x) * (c.y - b.y) === (b.y - a.y) * (c.x - b.x);

/**
 * A ring on the grid without doubled corners, corners in a straight line and spikes that go there and back on one line:
 * the polygon library never returns from some of those. Empty when nothing is left.
 */
function toGrid(ring: Outline): Path64 {
  const path: Path64 = [];
  for (const { x, y } of ring) {
    const next = { x: Math.round(x * perMetre), y: Math.round(y * perMetre) };
    while (isStraight(path[path.length - 2], path[path.length - 1], next)) path.pop();
    path.push(next);
  }
  for (;;) {
    if (path.length < 3) return [];
    if (isStraight(path[path.length - 2], path[path.length - 1], path[0])) path.pop();
    else if (isStraight(path[path.length - 1], path[0], path[1])) path.shift();
    else return path;
  }
}

function fromGrid(path: Path64): Outline {
  const ring: PlanPoint[] = [];
  for (const { x, y } of path) ring.push({ x: x / perMetre, y: y / perMetre });
  return ring;
}
const pathsOf = (rings: readonly Outline[]): Paths64 => rings.map(toGrid).filter((path) => path.length > 0);

/**
 * Everything inside any of the rings as they were drawn: each is wound so that its inside counts. They may overlap and even
 * cross themselves, so the answer is to be summed with, not to be measured.
 */
export const fillOf = (rings: readonly Outline[]): Region => rings.map(counterClockwise);

function summed(kind: ClipType, first: readonly Outline[], second: readonly Outline[]): Region {
  const subject = boxedOf(pathsOf(first));
  if (subject.length === 0) return [];
  // Of the second what lies far from all of the first takes no part.
  const clip = boxedOf(pathsOf(second)).filter(({ box }) => subject.some((each) => boxesTouch(each.box, box)));
  if (kind === ClipType.Intersection && clip.length === 0) return [];
  if (clip.length === 0 || kind === ClipType.Intersection) {
    const plain = boxesInBox(subject, clip) ?? untouched(subject, clip);
    if (plain) return plain.map(fromGrid);
  } else if (leavesNothing(subject, clip)) return [];
  const sums = new Clipper64();
  const solution: Paths64 = [];
  sums.addSubject(subject.map(({ path }) => path));
  if (clip.length > 0) sums.addClip(clip.map(({ path }) => path));
  sums.execute(kind, FillRule.NonZero, solution);
  return solution.map(fromGrid);
}

/**
 * What of the first area lies in none of the others; the others may overlap each other.
 * There is no union beside it on purpose: where many sides meet in one place the library's union now and then
 * fills what lies between the areas, its difference does not.
 */
export const differenceOf = (area: Region, others: readonly Region[]): Region => summed(ClipType.Difference, area, others.flat());

/** Whether a ring is a rectangle along both axes on the grid. */
export const isRectangular = (ring: Outline): boolean => boxedOf(pathsOf([ring])).some(isBox);

/** What lies in both areas. */
export const intersectionOf = (first: Region, second: Region): Region => summed(ClipType.Intersection, first, second);

/** The parts of a region that do not hang together, each as its outer ring followed by its holes. */
export function partsOf(region: Region): Region[] {
  const paths = pathsOf(region);
  if (paths.length === 0) return [];
  const sums = new Clipper64();
  const tree = new PolyTree64();
  sums.addSubject(paths);
  sums.execute(ClipType.Difference, FillRule.NonZero, tree);
  const parts: Region[] = [];
  const take = (outer: PolyPath64): void => {
    const holes = childrenOf(outer);
    parts.push([outer, ...holes].map(({ poly }) => fromGrid(poly ?? [])));
    for (const hole of holes) childrenOf(hole).forEach(take);
  };
  childrenOf(tree).forEach(take);
  return parts;
}

const childrenOf = (path: PolyPath64): PolyPath64[] => Array.from({ length: path.count }, (_, i) => path.child(i));
