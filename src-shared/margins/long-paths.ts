import { differenceOf } from '../derived/polygon-sums.ts';
import { type PlanPoint, distance3_m, polar } from '../geometry/point.ts';
import { lastKept } from './last-kept.ts';
import type { MovedPipe } from './moved-pipes.ts';
import { type NozzleMotion, followed } from './nozzle-motion.ts';
import { type Forbidden, type Site, acrossOf_m, windowOf } from './site.ts';

/** Directions in which the border is looked for. */
const RAYS = 180;
const FINE_m = 1e-4;

/**
 * P2, P3: the places at which a path or all pipe of the network becomes longer than the manual allows. Lengths grow evenly
 * outwards (a sum of distances is a convex function of the place), so that the ring through places of the border lies within it.
 * A budget that is overdrawn as it is drawn is no matter of this nozzle's place.
 */
export function longPaths(site: Site, motion: NozzleMotion, moved: readonly MovedPipe[]): Forbidden {
  const { network, profile } = site.nozzle;
  const { pathLength_m, totalPipeLength_m } = profile?.limits ?? {};
  const change_m = (pipes: readonly MovedPipe[], to: PlanPoint): number =>
    pipes.reduce((sum, { pipe, from, to: end }) => {
      const [a, b] = [followed(motion, pipe.from, to), followed(motion, pipe.to, to)];
      return a && b ? sum + distance3_m(a, b) - distance3_m(from, end) : sum;
    }, 0);
  const budgets = [
    ...(pathLength_m ? network.paths.map(({ pipes, length_m }) => ({ left_m: pathLength_m.value - length_m, pipes: moved.filter(({ pipe }) => pipes.includes(pipe.id)) })) : []),
    ...(totalPipeLength_m ? [{ left_m: totalPipeLength_m.value - network.totalLength_m, pipes: moved }] : []),
  ].filter(({ left_m, pipes }) => left_m >= 0 && pipes.length > 0);
  const far_m = acrossOf_m(site.space);
  // A pipe grows by no more than twice the shift.
  const tight = budgets.filter(({ left_m, pipes }) => left_m < 2 * far_m * pipes.length);
  if (tight.length === 0) return { rule: 'P2', region: [] };
  const ring = Array.from({ length: RAYS }, (_, i) => {
    const way_rad = (2 * Math.PI * i) / RAYS;
    const isKept = (out_m: number): boolean => tight.every(({ left_m, pipes }) => change_m(pipes, polar(site.at, way_rad, out_m)) <= left_m);
    return polar(site.at, way_rad, lastKept(isKept, far_m, FINE_m) ?? 0);
  });
  return { rule: 'P2', region: differenceOf(windowOf(site), [[ring]]) };
}
