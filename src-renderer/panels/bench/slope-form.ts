import type { PlanPoint } from '#shared/geometry/point';
import type { Enclosure } from '#shared/model/plan';

type Slope = NonNullable<Enclosure['slope']>;
type Sloped = Pick<Enclosure, 'outline' | 'height_m' | 'slope'>;

/** How far a sloped ceiling has risen at a place above where its height was given [m]. */
const risenAt_m = ({ at, direction_rad, rise }: Slope, { x, y }: PlanPoint): number => rise * ((x - at.x) * Math.cos(direction_rad) + (y - at.y) * Math.sin(direction_rad));

/** The corner of the outline over which a sloped ceiling is lowest. */
function lowCorner(outline: Enclosure['outline'], slope: Slope): PlanPoint {
  const low = [...outline].sort((a, b) => risenAt_m(slope, a) - risenAt_m(slope, b))[0];
  return low ? { x: low.x, y: low.y } : slope.at;
}

/** Height of the ceiling where it is lowest [m]; null while it is not known. */
export function lowHeight_m({ outline, height_m, slope }: Sloped): number | null {
  return height_m === null || !slope ? height_m : height_m + risenAt_m(slope, lowCorner(outline, slope));
}

/**
 * A ceiling with another height at its lowest place, another slope, or both. The height is always that of the
 * lowest corner, whichever corner was drawn first and whatever was moved since.
 */
export function withSlope(enclosure: Sloped, change: { readonly low_m?: number; readonly direction_rad?: number; readonly rise?: number }): Pick<Enclosure, 'height_m' | 'slope'> {
  const { low_m = lowHeight_m(enclosure), ...turned } = change;
  const [first] = enclosure.outline;
  const slope: Slope = { at: { x: first?.x ?? 0, y: first?.y ?? 0 }, direction_rad: 0, rise: 0, ...enclosure.slope, ...turned };
  return { height_m: low_m, slope: { ...slope, at: lowCorner(enclosure.outline, slope) } };
}
