import { type Outline, rectangle } from '../geometry/outline.ts';
import { type PlanPoint, planPoint, polar } from '../geometry/point.ts';
import type { Footprint } from '../profile/unit-profile.ts';

/** Corners of the polygon inscribed in a round footprint: it loses 1 − sin(2π/n)/(2π/n), 0.07 % of the circle. */
const ROUND_CORNERS = 96;

/** The floor that one nozzle covers where nothing stands in its way. */
export interface PlacedFootprint {
  /** Ring, counter-clockwise, nowhere outside the true footprint. */
  readonly ring: Outline;
  /** Farthest place of the true footprint from the nozzle [m]. */
  readonly reach_m: number;
  /** Area of the true footprint [m²]. */
  readonly area_m2: number;
}

/** A profile's footprint at a nozzle: a circle around it, or a rectangle whose length lies along the nozzle's rotation. */
export function placedFootprint(footprint: Footprint, at: PlanPoint, rotation_rad: number): PlacedFootprint {
  if (footprint.shape === 'circle') {
    const { radius_m } = footprint;
    const ring = Array.from({ length: ROUND_CORNERS }, (_, i) => polar(at, (2 * Math.PI * i) / ROUND_CORNERS, radius_m));
    return { ring, reach_m: radius_m, area_m2: Math.PI * radius_m ** 2 };
  }
  const { length_m, width_m } = footprint;
  const cos = Math.cos(rotation_rad);
  const sin = Math.sin(rotation_rad);
  const ring = rectangle(length_m, width_m, planPoint(-length_m / 2, -width_m / 2)).map(({ x, y }) =>
    planPoint(at.x + x * cos - y * sin, at.y + x * sin + y * cos),
  );
  return { ring, reach_m: Math.hypot(length_m, width_m) / 2, area_m2: length_m * width_m };
}
