import { type Outline, isInside } from '../geometry/outline.ts';
import type { PlanPoint, PlanPoint3 } from '../geometry/point.ts';
import type { Enclosure } from '../model/plan.ts';
import type { Space } from './derived.ts';
import { type Region, differenceOf, fillOf } from './polygon-sums.ts';

/** A part of a ceiling that hangs lower than an orifice beside it, like a beam. */
export interface LowCeiling {
  readonly region: Region;
  readonly bottom_m: number;
}

const NONE: readonly LowCeiling[] = [];

/** Height of the slab or slope over a place [m]; undefined while unknown. */
const slab_m = ({ height_m, slope }: Enclosure, p: PlanPoint): number | undefined =>
  height_m === null ? undefined : height_m + (slope ? slope.rise * ((p.x - slope.at.x) * Math.cos(slope.direction_rad) + (p.y - slope.at.y) * Math.sin(slope.direction_rad)) : 0);

/** The lowest that the slab comes down in a room [m]. */
const lowestSlab_m = (enclosure: Enclosure, outline: Outline): number | undefined => {
  const heights = outline.map((p) => slab_m(enclosure, p));
  return heights.includes(undefined) ? undefined : Math.max(0, Math.min(...heights.map((height) => height ?? 0)));
};

/**
 * Parts of the ceiling that hang lower than an orifice: zones, and round a raised zone the slab or slope beside it. A slab
 * or slope that the orifice itself hangs under is none, since no straight line from below a plane to the floor meets it.
 * In a ceiling void the same parts, as much higher as the void is deep.
 */
export function lowCeilingsOf({ kind, enclosure, outline, holes }: Space, at: PlanPoint3): readonly LowCeiling[] {
  const zones = Object.values(enclosure.ceilingZones);
  if (kind === 'under-floor' || zones.length === 0) return NONE;
  const lift_m = kind === 'ceiling-void' ? (enclosure.ceilingVoid?.depth_m ?? 0) : 0;
  const low = zones.filter(({ height_m }) => height_m + lift_m < at.z).map((zone): LowCeiling => ({ region: fillOf([zone.outline]), bottom_m: zone.height_m + lift_m }));
  const over_m = slab_m(enclosure, at);
  const isUnderZone = zones.some((zone) => isInside(at, zone.outline));
  const lowest_m = lowestSlab_m(enclosure, outline);
  if (!isUnderZone || over_m === undefined || lowest_m === undefined || over_m + lift_m >= at.z) return low;
  const beside = differenceOf(fillOf([outline]), [fillOf(holes), fillOf(zones.map((zone) => zone.outline))]);
  return [...low, { region: beside, bottom_m: lowest_m + lift_m }];
}

/** All the low parts as one, so that where two of them meet nothing ends. */
export const joinedOf = (low: readonly LowCeiling[], { outline }: Space): Region => {
  const [first] = low;
  if (!first) return [];
  if (low.length === 1) return first.region;
  const room = fillOf([outline]);
  return differenceOf(room, [differenceOf(room, low.map(({ region }) => region))]);
};
