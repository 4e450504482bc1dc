import { fittingsOf } from '../derived/fittings.ts';
import { pipeTreeOf } from '../derived/pipe-tree.ts';
import { type Region, differenceOf } from '../derived/polygon-sums.ts';
import { type PlanPoint, bearing_rad, distance_m, planPoint, polar } from '../geometry/point.ts';
import { wedge } from '../geometry/round-rings.ts';
import { halfWindow } from './half-window.ts';
import { lastKept } from './last-kept.ts';
import { type MovedPipe, isParallel } from './moved-pipes.ts';
import { type NozzleMotion, networkAt } from './nozzle-motion.ts';
import { type Forbidden, type Site, acrossOf_m, windowOf } from './site.ts';

/** Turns are looked at as far as this [rad]; made fittings take up one degree. */
const MOST_rad = 0.06;
const FINE_rad = 1e-8;
/** Shifts are found to this [m]. */
const FINE_m = 1e-5;

/**
 * P1: the places to which a nozzle cannot be moved because a run would leave a fitting at an angle that no fitting is made
 * for. A run that stays square is nowhere; one that goes askew, since a tee holds its far end, keeps within the degree that
 * made fittings take up. Places farther round, where the run would leave at 45°, are left out.
 */
export function oddTurns(site: Site, motion: NozzleMotion, moved: readonly MovedPipe[]): Forbidden {
  const { at } = motion;
  const odd = (to: PlanPoint): number => {
    const network = networkAt(motion, to);
    return fittingsOf(network, pipeTreeOf(network)).filter(({ kind }) => kind === 'odd-bend').length;
  };
  const now = odd(at);
  const isKept = (to: PlanPoint): boolean => odd(to) <= now;
  const window = windowOf(site);
  const region = moved.flatMap(({ from, to, stretch, way }): Region => {
    if (!way) return [];
    if (stretch.kind === 'goes' || stretch.kind === 'backs') {
      const sign = stretch.kind === 'goes' ? 1 : -1;
      const apex = planPoint(at.x + sign * (from.x - to.x), at.y + sign * (from.y - to.y));
      const [start_rad, far_m] = [bearing_rad(apex, at), distance_m(apex, at)];
      const [left_rad, right_rad] = [1, -1].map((side) => lastKept((turn_rad) => isKept(polar(apex, start_rad + side * turn_rad, far_m)), MOST_rad, FINE_rad));
      if (left_rad === undefined || right_rad === undefined) return window;
      const half_rad = (left_rad + right_rad) / 2;
      return differenceOf(window, [[wedge(apex, start_rad + (left_rad - right_rad) / 2, half_rad, 2 * acrossOf_m(site.space) + far_m)]]);
    }
    if ((stretch.kind !== 'slides' && stretch.kind !== 'shrinks') || isParallel(stretch.along, way)) return [];
    const { x, y } = stretch.along;
    const here = x * at.x + y * at.y;
    const [fore_m, back_m] = [1, -1].map((side) => lastKept((by_m) => isKept(planPoint(at.x + side * by_m * x, at.y + side * by_m * y)), acrossOf_m(site.space), FINE_m) ?? 0);
    return [...halfWindow(site, { x: -x, y: -y, limit: -(here + (fore_m ?? 0)) }), ...halfWindow(site, { x, y, limit: here - (back_m ?? 0) })];
  });
  return { rule: 'P1', region };
}
