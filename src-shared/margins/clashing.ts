import { type Region, fillOf } from '../derived/polygon-sums.ts';
import { convexHull } from '../geometry/convex-hull.ts';
import { clipToHalfPlane } from '../geometry/half-plane.ts';
import { type Outline, boundsOf, boxesTouch } from '../geometry/outline.ts';
import type { PlanPoint } from '../geometry/point.ts';
import { ringAround } from '../geometry/round-rings.ts';
import { followKindOf } from './follow-kind.ts';
import { halfWindow } from './half-window.ts';
import { type MovedPipe, isParallel } from './moved-pipes.ts';
import { type PipeScreen, livePartsFor, pipeReach_m, pipeScreensOf } from './pipe-screens.ts';
import type { NozzleMotion } from './nozzle-motion.ts';
import { type Forbidden, HAIR_m, type Site, acrossOf_m, windowOf } from './site.ts';

const shifted = (ring: Outline, dx: number, dy: number): PlanPoint[] => ring.map(({ x, y }) => ({ x: x + dx, y: y + dy }));
const dot = (one: PlanPoint, other: PlanPoint): number => one.x * other.x + one.y * other.y;

/** How far along a direction a convex ring reaches on the line through a place, as shares of the way from there [m]; undefined where the line passes it. */
function reachOnLine(ring: Outline, at: PlanPoint, way: PlanPoint): readonly [number, number] | undefined {
  const met: number[] = [];
  for (const [i, a] of ring.entries()) {
    const b = ring[(i + 1) % ring.length] ?? a;
    const [offA, offB] = [a, b].map((p) => (p.x - at.x) * way.y - (p.y - at.y) * way.x);
    if (offA === undefined || offB === undefined || (offA > 0 && offB > 0) || (offA < 0 && offB < 0)) continue;
    const share = offA === offB ? [0, 1] : [offA / (offA - offB)];
    for (const s of share) met.push((a.x + (b.x - a.x) * s - at.x) * way.x + (a.y + (b.y - a.y) * s - at.y) * way.y);
  }
  return met.length > 0 ? [Math.min(...met), Math.max(...met)] : undefined;
}

/** The part of what is looked at where a shift along a direction lies between two figures. */
function strip(site: Site, { at }: NozzleMotion, way: PlanPoint, from_m: number, to_m: number): Region {
  const here = dot(way, at);
  return halfWindow(site, { x: way.x, y: way.y, limit: here + to_m })
    .map((ring) => clipToHalfPlane(ring, { x: -way.x, y: -way.y, limit: -(here + from_m) }))
    .filter((ring) => ring.length > 0);
}

/** Places of the nozzle at which a pipe that goes as this one does meets a convex thing grown by its radius. */
function meets(site: Site, motion: NozzleMotion, pipe: MovedPipe, grown: Outline): Region {
  const { at } = motion;
  const far_m = 4 * acrossOf_m(site.space);
  const [fromKind, toKind] = [followKindOf(pipe.fromFollow), followKindOf(pipe.toFollow)];
  if (fromKind.kind === 'goes' && toKind.kind === 'goes') {
    return fillOf([convexHull([pipe.from, pipe.to].flatMap((end) => shifted(grown, at.x - end.x, at.y - end.y)))]);
  }
  if (fromKind.kind === 'slides' && toKind.kind === 'slides' && isParallel(fromKind.along, toKind.along)) {
    const all = convexHull([pipe.from, pipe.to].flatMap((end) => shifted(grown, -end.x, -end.y)));
    const reach = reachOnLine(all, { x: 0, y: 0 }, fromKind.along);
    return reach ? strip(site, motion, fromKind.along, ...reach) : [];
  }
  // The end that goes farther is the near one: its other end stays, or slides across the pipe.
  const isTurned = fromKind.kind === 'goes' || (fromKind.kind === 'slides' && toKind.kind === 'stays');
  const [far, near, farKind, nearKind] = isTurned ? [pipe.to, pipe.from, toKind, fromKind] : [pipe.from, pipe.to, fromKind, toKind];
  if (!pipe.way) return [];
  const way = isTurned ? { x: -pipe.way.x, y: -pipe.way.y } : pipe.way;
  if (nearKind.kind === 'goes' && farKind.kind === 'stays') {
    const beyond = grown.map((p) => {
      const away_m = Math.max(1e-9, Math.hypot(p.x - far.x, p.y - far.y));
      return { x: p.x + ((p.x - far.x) / away_m) * far_m, y: p.y + ((p.y - far.y) / away_m) * far_m };
    });
    return fillOf([shifted(convexHull([...grown, ...beyond]), at.x - near.x, at.y - near.y)]);
  }
  const ahead = clipToHalfPlane(grown, { x: -way.x, y: -way.y, limit: -dot(way, far) });
  if (nearKind.kind === 'goes' && farKind.kind === 'slides' && Math.abs(dot(farKind.along, way)) < 1e-6) {
    // Beyond its far end the run leads the other way.
    const behind = clipToHalfPlane(grown, { x: way.x, y: way.y, limit: dot(way, far) });
    return [ahead, behind].flatMap((part, i) => {
      const out_m = i === 0 ? far_m : -far_m;
      return part.length === 0 ? [] : fillOf([shifted(convexHull([...part, ...shifted(part, way.x * out_m, way.y * out_m)]), at.x - near.x, at.y - near.y)]);
    });
  }
  if (ahead.length === 0) return [];
  if (nearKind.kind === 'slides' && farKind.kind === 'stays' && isParallel(nearKind.along, way)) {
    const reach = reachOnLine(ahead, near, way);
    return reach ? strip(site, motion, way, reach[0], 2 * far_m) : [];
  }
  return [];
}

/** How far on the plan a pipe must keep its axis from a thing [m]; undefined where their heights are too far apart to meet. */
function apart_m(pipe: MovedPipe, { bottom_m, top_m, radius_m }: PipeScreen): number | undefined {
  const { from, to } = pipe;
  const reach_m = pipeReach_m(pipe) + radius_m;
  const [low_m, high_m] = [Math.min(from.z, to.z), Math.max(from.z, to.z)];
  const over_m = Math.max(0, bottom_m - high_m, low_m - top_m);
  return over_m <= reach_m ? Math.sqrt(reach_m ** 2 - over_m ** 2) : undefined;
}

/**
 * The places at which a pipe that follows the nozzle comes to things. A pipe that goes along keeps its direction, so that what it
 * sweeps is the thing grown by its radius, drawn out by the pipe and along its way. Sloping pipe counts over all its heights.
 */
function comesTo(site: Site, motion: NozzleMotion, moved: readonly MovedPipe[], screensOf: (pipe: MovedPipe) => readonly PipeScreen[]): Region {
  const bounds = boundsOf(windowOf(site).flat());
  return moved.flatMap((pipe) =>
    screensOf(pipe).flatMap((each): Region => {
      const off_m = apart_m(pipe, each);
      if (off_m === undefined) return [];
      return meets(site, motion, pipe, convexHull(each.corners.flatMap((corner) => ringAround(corner, off_m + HAIR_m)))).filter((ring) => boxesTouch(boundsOf(ring), bounds));
    }),
  );
}

/** P27: the places at which a pipe that follows runs into a beam, a box, a ceiling, a wall or other pipe. Pipe that the thing touches, crosses or joins as it is drawn is not asked. */
export const clashing = (site: Site, motion: NozzleMotion, moved: readonly MovedPipe[]): Forbidden => ({ rule: 'P27', region: comesTo(site, motion, moved, pipeScreensOf(site, motion)) });

/** N19: the places at which a pipe that follows, and with it the nozzle at its end, comes nearer to a live part than its voltage asks for. One that is too near as it is drawn is not asked. */
export function liveNear(site: Site, motion: NozzleMotion, moved: readonly MovedPipe[]): Forbidden {
  const screens = livePartsFor(site);
  return { rule: 'N19', region: screens.length === 0 ? [] : comesTo(site, motion, moved, () => screens) };
}
