import { type BentPath, type DirectedEnd, bentPath, cross3, dot3, mixed, squareTo } from './bent-path.ts';
import { curvesInSpace } from './csc-in-space.ts';
import { planarWords } from './planar-bent-path.ts';
import { distance3_m } from './point.ts';
import { type Direction3, direction3, opposite3 } from './vector3.ts';

/** Ends that leave their common plane by less than this, as a component or a share of their distance, lie in it. */
const IN_PLANE = 1e-7;
const ORIGIN = { x: 0, y: 0, z: 0 };

/** Square to the plane in which both ends lie, of many planes any one; undefined when they lie in none. */
export function planeOf(from: DirectedEnd, to: DirectedEnd, size_m: number): Direction3 | undefined {
  const gap = mixed(1 / size_m, to.at, -1 / size_m, from.at);
  const normals = [cross3(from.way, gap), cross3(from.way, to.way), cross3(to.way, gap)].sort((a, b) => dot3(b, b) - dot3(a, a));
  const rough = direction3(ORIGIN, normals[0] ?? ORIGIN, IN_PLANE) ?? squareTo(from.way);
  const normal = direction3(ORIGIN, mixed(1, rough, -dot3(rough, from.way), from.way), 0.5) ?? squareTo(from.way);
  const off = [from.way, to.way, gap].map((each) => Math.abs(dot3(each, normal)));
  return Math.max(...off) <= IN_PLANE ? normal : undefined;
}

/** All planar curves between two ends of one plane. */
function curvesInPlane(from: DirectedEnd, to: DirectedEnd, radius_m: number, normal: Direction3): BentPath[] {
  const left = cross3(normal, from.way);
  const gap = mixed(1 / radius_m, to.at, -1 / radius_m, from.at);
  const words = planarWords(dot3(gap, from.way), dot3(gap, left), Math.atan2(dot3(to.way, left), dot3(to.way, from.way)));
  return words.map(({ word, lengths }) =>
    bentPath(
      from,
      radius_m,
      word.map((turn, i) => {
        const length_m = (lengths[i] ?? 0) * radius_m;
        if (turn === 'S') return { length_m };
        return { normal: (way: Direction3) => (turn === 'L' ? cross3(normal, way) : opposite3(cross3(normal, way))), length_m };
      }),
    ),
  );
}

/**
 * The shortest curve that nowhere bends more sharply than a radius between two directed ends.
 * In a plane it is the exact one (Dubins 1957). In space it is the shortest of arc, straight and arc: exact where the
 * ends are not near each other; where they are, a helix or three arcs may be a little shorter, so that what is said of
 * a hose errs toward too short a hose.
 *
 * @param radius_m  least radius of any bend [m], > 0
 * @returns undefined when no curve was found, which happens for ends that are not numbers
 */
export function shortestBentPath(from: DirectedEnd, to: DirectedEnd, radius_m: number): BentPath | undefined {
  const plane = planeOf(from, to, Math.max(radius_m, distance3_m(from.at, to.at)));
  const curves = plane ? curvesInPlane(from, to, radius_m, plane) : curvesInSpace(from, to, radius_m);
  return curves.reduce<BentPath | undefined>((best, each) => (best && best.length_m <= each.length_m ? best : each), undefined);
}
