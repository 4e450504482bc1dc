import type { Path64, Paths64, Point64 } from 'clipper2-ts';
import { type Box, boundsOf, boxesTouch } from '../geometry/outline.ts';

/** A ring on the grid of the polygon sums with a box around it. */
export interface BoxedPath {
  readonly path: Path64;
  readonly box: Box;
}

/** Rings of the polygon library, each with the box around it. */
export const boxedOf = (paths: Paths64): BoxedPath[] => paths.map((path) => ({ path, box: boundsOf(path) }));

/** More corners are left to the polygon library. */
const MOST_CORNERS = 12;
/** Longer sides would be told from straight ones too coarsely in floats [grid]. */
const LONGEST = 9e7;
/** What is thinner than about twice this is left to the polygon library, too [grid]. */
const THIN = 100;

const cross = (a: Point64, b: Point64, c: Point64): number => (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);

/**
 * A convex counter-clockwise ring as the polygon library gives it back where nothing comes near it: from the corner after
 * its lowest one, of two as low the right one. Undefined for any other ring.
 */
export function plainRing(path: Path64): Path64 | undefined {
  if (path.length > MOST_CORNERS) return undefined;
  let bottom = 0;
  let tops = 0;
  let doubled = 0;
  let around = 0;
  for (const [i, b] of path.entries()) {
    const a = path[(i + path.length - 1) % path.length];
    const c = path[(i + 1) % path.length];
    const lowest = path[bottom];
    if (!a || !c || !lowest) return undefined;
    if (!(cross(a, b, c) > 0) || Math.abs(c.x - b.x) > LONGEST || Math.abs(c.y - b.y) > LONGEST) return undefined;
    if (b.y > a.y && c.y <= b.y) tops += 1;
    if (b.y < lowest.y || (b.y === lowest.y && b.x > lowest.x)) bottom = i;
    doubled += b.x * c.y - c.x * b.y;
    around += Math.hypot(c.x - b.x, c.y - b.y);
  }
  if (tops !== 1 || !(doubled > THIN * around)) return undefined;
  return path.map((_, i) => path[(bottom + 1 + i) % path.length] ?? { x: 0, y: 0 });
}

/** Whether a side keeps clear of a box: beside it, or with all of it on one hand. */
function isClear(a: Point64, b: Point64, { minX, minY, maxX, maxY }: Box): boolean {
  if (Math.max(a.x, b.x) < minX || Math.min(a.x, b.x) > maxX || Math.max(a.y, b.y) < minY || Math.min(a.y, b.y) > maxY) return true;
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const off = [(minX - a.x) * dy - (minY - a.y) * dx, (maxX - a.x) * dy - (minY - a.y) * dx, (maxX - a.x) * dy - (maxY - a.y) * dx, (minX - a.x) * dy - (maxY - a.y) * dx];
  const far = THIN * Math.hypot(dx, dy);
  return off.every((each) => each > far) || off.every((each) => each < -far);
}

/** Whether a ring lies wholly inside a region and clear of its border. */
function isWellInside({ path, box }: BoxedPath, region: readonly BoxedPath[]): boolean {
  const p = path[0];
  if (!p) return false;
  let isInside = false;
  for (const ring of region) {
    let a = ring.path.at(-1);
    for (const b of ring.path) {
      if (a) {
        if (!isClear(a, b, box)) return false;
        if (a.y > p.y !== b.y > p.y && p.x < ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y) + a.x) isInside = !isInside;
      }
      a = b;
    }
  }
  return isInside;
}

/**
 * What the polygon library would give, digit for digit and in its order, for rings that lie apart, each of them convex and
 * wholly inside a region; the highest first. Undefined where that is not so, which says nothing.
 * @param region  empty: the rings alone
 */
export function untouched(rings: readonly BoxedPath[], region: readonly BoxedPath[]): Paths64 | undefined {
  for (const [i, ring] of rings.entries()) {
    for (let j = i + 1; j < rings.length; j += 1) {
      const other = rings[j];
      if (other && boxesTouch(ring.box, other.box)) return undefined;
    }
  }
  const found: { readonly path: Path64; readonly top: number }[] = [];
  for (const ring of rings) {
    const path = region.length > 0 && !isWellInside(ring, region) ? undefined : plainRing(ring.path);
    if (!path) return undefined;
    found.push({ path, top: ring.box.maxY });
  }
  return found.sort((a, b) => b.top - a.top).map(({ path }) => path);
}
