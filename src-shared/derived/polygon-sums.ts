import { Clipper64, ClipType, FillRule, type Path64, type Paths64, type PolyPath64, PolyTree64 } from 'clipper2-ts';
import type { Outline } from '../geometry/outline.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';

/** An area with holes and of several parts: outer rings counter-clockwise, holes clockwise, no ring crosses another. */
export type Region = readonly Outline[];

/** Polygon sums run on a grid as wide as `SAME_PLACE_m`, so that they are exact in integers and never fail on float noise. */
const perMetre = Math.round(1 / SAME_PLACE_m);

const toGrid = (ring: Outline): Path64 => ring.map(({ x, y }) => ({ x: Math.round(x * perMetre), y: Math.round(y * perMetre) }));
const fromGrid = (path: Path64): Outline => path.map(({ x, y }) => ({ x: x / perMetre, y: y / perMetre }));

function summed(kind: ClipType, rule: FillRule, subject: readonly Outline[], clip: readonly Outline[]): Region {
  const sums = new Clipper64();
  const solution: Paths64 = [];
  sums.addSubject(subject.map(toGrid));
  if (clip.length > 0) sums.addClip(clip.map(toGrid));
  sums.execute(kind, rule, solution);
  return solution.map(fromGrid);
}

/** Everything inside any of the rings, whichever way they wind, self-crossing ones included. */
export const fillOf = (rings: readonly Outline[]): Region => (rings.length === 0 ? [] : summed(ClipType.Union, FillRule.NonZero, rings, []));

/** Everything inside any of the regions. */
export const unionOf = (regions: readonly Region[]): Region => {
  const rings = regions.flat();
  return rings.length === 0 ? [] : summed(ClipType.Union, FillRule.Positive, rings, []);
};

/** What of the first region lies in none of the others. */
export const differenceOf = (region: Region, others: readonly Region[]): Region =>
  region.length === 0 ? [] : summed(ClipType.Difference, FillRule.Positive, region, others.flat());

/** What lies in both regions. */
export const intersectionOf = (first: Region, second: Region): Region =>
  first.length === 0 || second.length === 0 ? [] : summed(ClipType.Intersection, FillRule.Positive, first, second);

/** The parts of a region that do not hang together, each as its outer ring followed by its holes. */
export function partsOf(region: Region): Region[] {
  if (region.length === 0) return [];
  const sums = new Clipper64();
  const tree = new PolyTree64();
  sums.addSubject(region.map(toGrid));
  sums.execute(ClipType.Union, FillRule.Positive, tree);
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
