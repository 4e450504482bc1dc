import { fittingsOf } from '../derived/fittings.ts';
import { pipeTreeOf } from '../derived/pipe-tree.ts';
import { type Region, differenceOf, fillOf } from '../derived/polygon-sums.ts';
import { type PlanPoint, bearing_rad, distance_m, planPoint, polar } from '../geometry/point.ts';
import { wedge } from '../geometry/round-rings.ts';
import { halfWindow } from './half-window.ts';
import { lastKept } from './last-kept.ts';
import { type MovedPipe, isParallel } from './moved-pipes.ts';
import { type NozzleMotion, networkAt } from './nozzle-motion.ts';
import { type Forbidden, type Site, acrossOf_m, windowOf } from './site.ts';

/** Turns are tried in strides of half a degree, for fittings take up one degree to either side of what they are made for [rad]. */
const STRIDES = 720;
const STRIDE_rad = (2 * Math.PI) / STRIDES;
const FINE_rad = 1e-8;
/** Shifts are found to this [m]. */
const FINE_m = 1e-5;

/** Where between a turn that is kept and one that is not the last kept one lies. */
function lastBetween(keeps: (turn_rad: number) => boolean, kept_rad: number, broken_rad: number): number {
  let [kept, broken] = [kept_rad, broken_rad];
  while (Math.abs(broken - kept) > FINE_rad) {
    const middle = (kept + broken) / 2;
    if (keeps(middle)) kept = middle;
    else broken = middle;
  }
  return kept;
}

/** Arcs of turns, from and to, that are kept all round. */
function keptArcs(keeps: (turn_rad: number) => boolean): (readonly [number, number])[] {
  const tried = Array.from({ length: STRIDES + 1 }, (_, i) => ({ turn_rad: i * STRIDE_rad, isKept: keeps(i * STRIDE_rad) }));
  const arcs: (readonly [number, number])[] = [];
  let from_rad: number | undefined;
  for (const [i, { turn_rad, isKept }] of tried.entries()) {
    const before = tried[i - 1];
    if (isKept) from_rad ??= before ? lastBetween(keeps, turn_rad, before.turn_rad) : turn_rad;
    if (from_rad !== undefined && (!isKept || i === STRIDES)) {
      arcs.push([from_rad, isKept ? turn_rad : lastBetween(keeps, before?.turn_rad ?? turn_rad, turn_rad)]);
      from_rad = undefined;
    }
  }
  return arcs;
}

/** The places seen from an apex between two directions, as far as `far_m` at least. */
function fan(apex: PlanPoint, from_rad: number, to_rad: number, far_m: number): Region {
  const steps = Math.max(1, Math.ceil(to_rad - from_rad));
  const half_rad = (to_rad - from_rad) / steps / 2;
  // What lies between two parts of it is no border.
  return fillOf(Array.from({ length: steps }, (_, i) => wedge(apex, from_rad + (2 * i + 1) * half_rad, half_rad + (steps > 1 ? 1e-7 : 0), far_m)));
}

/**
 * P1: the places to which a nozzle cannot be moved because a run would leave a fitting at an angle that no fitting is made
 * for. A run that stays square is nowhere; one that goes askew, since a tee holds its far end, keeps within the degree that
 * made fittings take up, there and farther round where it would leave at an angle that is made as well.
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
      const keeps = (turn_rad: number): boolean => isKept(polar(apex, start_rad + turn_rad, far_m));
      if (!keeps(0)) return window;
      return differenceOf(window, keptArcs(keeps).map(([from_rad, to_rad]) => fan(apex, start_rad + from_rad, start_rad + to_rad, 2 * acrossOf_m(site.space) + far_m)));
    }
    if ((stretch.kind !== 'slides' && stretch.kind !== 'shrinks') || isParallel(stretch.along, way)) return [];
    const { x, y } = stretch.along;
    const here = x * at.x + y * at.y;
    const [fore_m, back_m] = [1, -1].map((side) => lastKept((by_m) => isKept(planPoint(at.x + side * by_m * x, at.y + side * by_m * y)), acrossOf_m(site.space), FINE_m) ?? 0);
    return [...halfWindow(site, { x: -x, y: -y, limit: -(here + (fore_m ?? 0)) }), ...halfWindow(site, { x, y, limit: here - (back_m ?? 0) })];
  });
  return { rule: 'P1', region };
}
