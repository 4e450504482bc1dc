import { type Box, isInside } from '../geometry/outline.ts';
import { type PlanPoint, type PlanPoint3, planPoint } from '../geometry/point.ts';
import type { Prism } from '../geometry/prism.ts';
import { LENGTH_SLACK_m, SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { LimitKey } from '../profile/limit-catalogue.ts';
import type { HungNozzle } from './derived.ts';
import { jetsOf } from './jets.ts';

/** A jet as it widens in space: a cone about the level direction of its hole, cut off square where it is spent. */
export interface JetCone {
  readonly azimuth_rad: number;
  /** The orifice, its tip. */
  readonly from: PlanPoint3;
  /** Half its angle [rad], below π/2. */
  readonly half_rad: number;
  /** Along its axis [m], ≥ 0: to the first wall or thing, or to where the jet is spent. */
  readonly reach_m: number;
}

/** Where a jet comes to a thing first. */
export interface ConeHit {
  readonly at: PlanPoint3;
  /** Along the axis of the jet [m]. */
  readonly along_m: number;
}

/** Limits without which the cones of a nozzle are not known. */
export const CONE_LIMITS = ['jetSpread_rad', 'freeJet_m'] as const satisfies readonly LimitKey[];

/**
 * A jet is taken as spent at this many times the least free jet. Its speed falls as one over the distance and its push as
 * the square of that (round free jet, memory): there it pushes a sixteenth as hard as on the nearest thing that the
 * manual lets it meet. Common practice.
 */
export const SPENT_FREE_JETS = 4;

/** A wider half angle has no meaning for a jet, and its tangent none for a cone [rad]. */
const WIDEST_rad = (80 * Math.PI) / 180;

/**
 * The cones of a nozzle's jets, one a hole. A nozzle that leans has its cones wider by as much as it leans, whichever
 * way that is. Empty while a limit in `CONE_LIMITS` is blank, and for a nozzle that hangs in no space.
 */
export function conesOf(nozzle: HungNozzle): JetCone[] {
  const { jetSpread_rad, freeJet_m } = nozzle.profile?.limits ?? {};
  const { at } = nozzle;
  if (!at || !jetSpread_rad || !freeJet_m) return [];
  const half_rad = Math.min(jetSpread_rad.value + nozzle.nozzle.tilt_rad, WIDEST_rad);
  return jetsOf(nozzle).map(({ azimuth_rad, length_m }) => ({ azimuth_rad, from: at, half_rad, reach_m: Math.min(length_m, freeJet_m.value * SPENT_FREE_JETS) }));
}

/** Whether a cone may come to what stands in a box on the plan: no says that it does not. */
export function mayReach({ azimuth_rad, from, half_rad, reach_m }: JetCone, { minX, minY, maxX, maxY }: Box): boolean {
  const [x, y] = [Math.cos(azimuth_rad), Math.sin(azimuth_rad)];
  const [dx, dy] = [(minX + maxX) / 2 - from.x, (minY + maxY) / 2 - from.y];
  const [halfX, halfY] = [(maxX - minX) / 2, (maxY - minY) / 2];
  const along_m = dx * x + dy * y;
  const halfAlong_m = halfX * Math.abs(x) + halfY * Math.abs(y) + SAME_PLACE_m;
  if (along_m + halfAlong_m < 0 || along_m - halfAlong_m > reach_m) return false;
  const halfAside_m = halfX * Math.abs(y) + halfY * Math.abs(x) + SAME_PLACE_m;
  return Math.abs(dy * x - dx * y) - halfAside_m <= Math.min(reach_m, along_m + halfAlong_m) * Math.tan(half_rad);
}

/**
 * Where a cone comes to an upright solid first, touching included; undefined when it passes. Exact: beside the axis only
 * the height of the solid that is nearest to the axis counts, so that the cone is cut as a hyperbola on the plan.
 */
export function findConeHit({ azimuth_rad, from, half_rad, reach_m }: JetCone, { footprint, bottom_m, top_m }: Prism): ConeHit | undefined {
  const spread = Math.tan(half_rad);
  const [x, y] = [Math.cos(azimuth_rad), Math.sin(azimuth_rad)];
  const z = Math.min(Math.max(from.z, bottom_m), top_m);
  const off_m = Math.abs(z - from.z);
  if (reach_m * spread < off_m - LENGTH_SLACK_m) return undefined;
  const alongOf_m = (p: PlanPoint): number => (p.x - from.x) * x + (p.y - from.y) * y;
  const asideOf_m = (p: PlanPoint): number => (p.y - from.y) * x - (p.x - from.x) * y;
  const place = (along_m: number, aside_m: number): PlanPoint => planPoint(from.x + along_m * x - aside_m * y, from.y + along_m * y + aside_m * x);
  const tip_m = spread > 0 ? off_m / spread : 0;
  const tip = place(tip_m, 0);
  if (tip_m <= reach_m + LENGTH_SLACK_m && isInside(tip, footprint)) return { at: { ...tip, z }, along_m: tip_m };
  let first: ConeHit | undefined;
  const look = (share: number, startAlong_m: number, startAside_m: number, along_m: number, aside_m: number): void => {
    if (!(share >= 0 && share <= 1)) return;
    const hereAlong_m = startAlong_m + along_m * share;
    if (first && !(hereAlong_m < first.along_m)) return;
    const hereAside_m = startAside_m + aside_m * share;
    const isWithin = hereAlong_m >= -LENGTH_SLACK_m && hereAlong_m <= reach_m + LENGTH_SLACK_m && Math.hypot(hereAside_m, off_m) <= hereAlong_m * spread + LENGTH_SLACK_m;
    if (isWithin) first = { at: { ...place(hereAlong_m, hereAside_m), z }, along_m: Math.max(0, hereAlong_m) };
  };
  for (const [i, a] of footprint.entries()) {
    const b = footprint[(i + 1) % footprint.length] ?? a;
    const [startAlong_m, startAside_m] = [alongOf_m(a), asideOf_m(a)];
    const [along_m, aside_m] = [alongOf_m(b) - startAlong_m, asideOf_m(b) - startAside_m];
    look(0, startAlong_m, startAside_m, along_m, aside_m);
    look(1, startAlong_m, startAside_m, along_m, aside_m);
    const roots = rootsOf(
      (along_m * spread) ** 2 - aside_m ** 2,
      2 * (startAlong_m * along_m * spread ** 2 - startAside_m * aside_m),
      (startAlong_m * spread) ** 2 - startAside_m ** 2 - off_m ** 2,
    );
    for (const root of roots) look(root, startAlong_m, startAside_m, along_m, aside_m);
    if (along_m !== 0) look((reach_m - startAlong_m) / along_m, startAlong_m, startAside_m, along_m, aside_m);
  }
  return first;
}

/** How far along its axis a cone passes a place [m]; undefined when the place is outside it, its face being inside. */
export function alongCone_m({ azimuth_rad, from, half_rad, reach_m }: JetCone, p: PlanPoint3): number | undefined {
  const along_m = (p.x - from.x) * Math.cos(azimuth_rad) + (p.y - from.y) * Math.sin(azimuth_rad);
  const aside_m = (p.y - from.y) * Math.cos(azimuth_rad) - (p.x - from.x) * Math.sin(azimuth_rad);
  const isWithin = along_m >= -LENGTH_SLACK_m && along_m <= reach_m + LENGTH_SLACK_m && Math.hypot(aside_m, p.z - from.z) <= along_m * Math.tan(half_rad) + LENGTH_SLACK_m;
  return isWithin ? Math.max(0, along_m) : undefined;
}

/** Real roots of a·u² + b·u + c; those of a line where `a` is 0. */
function rootsOf(a: number, b: number, c: number): number[] {
  if (a === 0) return b === 0 ? [] : [-c / b];
  const root = b * b - 4 * a * c;
  if (root < 0) return [];
  // The sum that cancels nothing first: the other root follows from the product of both.
  const q = -(b + (b < 0 ? -1 : 1) * Math.sqrt(root)) / 2;
  return q === 0 ? [0] : [q / a, c / q];
}
