import { distance_m } from '../geometry/point.ts';
import type { Space } from './derived.ts';

/**
 * Floor, ceiling and walls of a space together [m²], walls at its mean height, a slope counted flat; undefined while its
 * height is unknown. Never more than there is, but for what openings take away.
 */
export function roomSurface_m2({ area_m2, grossVolume_m3, walls }: Space): number | undefined {
  if (grossVolume_m3 === undefined || area_m2 <= 0) return undefined;
  const around_m = walls.reduce((sum, { segment }) => sum + distance_m(segment.a, segment.b), 0);
  return 2 * area_m2 + around_m * (grossVolume_m3 / area_m2);
}
