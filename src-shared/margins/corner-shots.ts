import { type Region, fillOf, intersectionOf } from '../derived/polygon-sums.ts';
import { wedge } from '../geometry/round-rings.ts';
import type { CornerZone } from './corner-zones.ts';
import { type Forbidden, HAIR_rad, type Site, acrossOf_m } from './site.ts';

/** N5: the places in a corner from which a hole, as it points now, blows at the corner or beside it by less than the limit. */
export const cornerShots = ({ space, nozzle, limits }: Site, zones: readonly CornerZone[]): Forbidden => ({
  rule: 'N5',
  region: zones.flatMap(({ corner, outer }): Region => {
    // From the corner itself the bearing is another one; a place there is too near to its walls in any case.
    const shots = nozzle.holes_rad.map((hole_rad) => wedge(corner.at, hole_rad + Math.PI, Math.min(limits.cornerAngle_rad + HAIR_rad, 1.5), acrossOf_m(space)));
    return intersectionOf(outer, fillOf(shots));
  }),
});
