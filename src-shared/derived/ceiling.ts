import { sideOfOutline } from '../geometry/inside.ts';
import { momentsOf } from '../geometry/moments.ts';
import { type Outline, boundsOf } from '../geometry/outline.ts';
import type { PlanPoint } from '../geometry/point.ts';
import { clipToHalfPlane } from '../geometry/half-plane.ts';
import type { Enclosure } from '../model/plan.ts';
import { type Region, differenceOf, fillOf, intersectionOf } from './polygon-sums.ts';

/** The finished ceiling of a room. */
export interface Ceiling {
  /** Height above the finished floor [m]; undefined while unknown. */
  readonly at_m: (at: PlanPoint) => number | undefined;
  /** Lowest and greatest height over the room [m]; undefined while any part of it is unknown. */
  readonly lowest_m: number | undefined;
  readonly tallest_m: number | undefined;
  /** Volume between floor and ceiling [m³]; undefined while any part of the ceiling is unknown. */
  readonly volume_m3: number | undefined;
}

/**
 * The ceiling of a room: a zone beats the slab or slope, the lowest zone wins where several overlap, and on the side
 * of a zone the lower of both counts. A slope that dives below the floor ends there.
 * @param floor  floor of the room without its holes
 * @param area_m2 its area [m²]
 */
export function ceilingOf(enclosure: Enclosure, floor: Region, area_m2: number): Ceiling {
  const slab_m = slabOf(enclosure);
  const zones = Object.values(enclosure.ceilingZones).map(({ outline, height_m }) => ({ outline, height_m, bounds: boundsOf(outline) }));

  const at_m = (at: PlanPoint): number | undefined => {
    let lowest: number | undefined;
    let isCovered = false;
    for (const { outline, height_m, bounds } of zones) {
      if (at.x < bounds.minX - 1e-6 || at.x > bounds.maxX + 1e-6 || at.y < bounds.minY - 1e-6 || at.y > bounds.maxY + 1e-6) continue;
      const side = sideOfOutline(at, outline);
      if (side === 'outside') continue;
      isCovered ||= side === 'inside';
      lowest = Math.min(lowest ?? height_m, height_m);
    }
    if (isCovered) return lowest;
    const slab = slab_m?.(at);
    return lowest === undefined ? slab : Math.min(lowest, slab ?? lowest);
  };

  let open = floor;
  const heights: number[] = [];
  let volume_m3: number | undefined = 0;
  for (const { outline, height_m } of zones.toSorted((a, b) => a.height_m - b.height_m)) {
    const zone = fillOf([outline]);
    const under = intersectionOf(open, zone);
    if (under.length === 0) continue;
    heights.push(height_m);
    volume_m3 += momentsOf(under).area_m2 * height_m;
    open = differenceOf(open, [zone]);
  }
  if (open.length > 0) {
    if (slab_m) {
      for (const corner of open.flat()) heights.push(slab_m(corner));
      const openArea_m2 = open === floor ? area_m2 : momentsOf(open).area_m2;
      volume_m3 += enclosure.slope ? underSlope_m3(enclosure, open) : openArea_m2 * (enclosure.height_m ?? 0);
    } else volume_m3 = undefined;
  }
  const isKnown = volume_m3 !== undefined && heights.length > 0;
  return {
    at_m,
    lowest_m: isKnown ? Math.min(...heights) : undefined,
    tallest_m: isKnown ? Math.max(...heights) : undefined,
    volume_m3: isKnown ? volume_m3 : undefined,
  };
}

const slabOf = ({ height_m, slope }: Enclosure): ((at: PlanPoint) => number) | undefined => {
  if (height_m === null) return undefined;
  if (!slope) return () => height_m;
  const { at, direction_rad, rise } = slope;
  return (p) => Math.max(0, height_m + rise * ((p.x - at.x) * Math.cos(direction_rad) + (p.y - at.y) * Math.sin(direction_rad)));
};

/** Volume under a sloped plane over a region [m³]: the plane is linear, so area and first moments give it exactly. */
function underSlope_m3({ height_m, slope }: Enclosure, region: Region): number {
  if (height_m === null || !slope) return 0;
  const east = slope.rise * Math.cos(slope.direction_rad);
  const north = slope.rise * Math.sin(slope.direction_rad);
  const base_m = height_m - east * slope.at.x - north * slope.at.y;
  const above = region.map((ring: Outline) => clipToHalfPlane(ring, { x: -east, y: -north, limit: base_m }));
  const { area_m2, x_m3, y_m3 } = momentsOf(above);
  return base_m * area_m2 + east * x_m3 + north * y_m3;
}
