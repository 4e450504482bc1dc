import { openingFace } from '../derived/behind-opening.ts';
import { type Region, differenceOf, fillOf, intersectionOf } from '../derived/polygon-sums.ts';
import { convexHull } from '../geometry/convex-hull.ts';
import { ringAround, ringInside, wedge } from '../geometry/round-rings.ts';
import { VENT_CLEAR_m, opensFrom } from '../rules/enclosure/e11-vent-clear-of-jet.ts';
import { isAsDrawn } from './is-as-drawn.ts';
import { type Forbidden, HAIR_m, HAIR_rad, type Site } from './site.ts';

/** Nothing blows wider than this [rad]. */
const WIDEST_rad = 1.5;

/**
 * E11: the places from which a hole, as it points now, blows at a relief vent from too near. Walls that stand between count as no
 * help. A vent that the nozzle blows at as it is drawn is not asked.
 */
export function blownVents(site: Site): Forbidden {
  const { space, nozzle, at } = site;
  const vents = Object.values(space.enclosure.openings).filter((opening) => opening.kind === 'relief-vent' && opensFrom(opening, space));
  const half_rad = Math.min((nozzle.profile?.limits.jetSpread_rad?.value ?? 0) + HAIR_rad, WIDEST_rad);
  const region = vents.flatMap((vent): Region => {
    const face = openingFace(space.enclosure, vent);
    const away_m = Math.max(0, vent.bottom_m - at.z, at.z - vent.bottom_m - vent.height_m);
    if (!face || away_m >= VENT_CLEAR_m) return [];
    const level_m = Math.sqrt(VENT_CLEAR_m ** 2 - away_m ** 2) + HAIR_m;
    // Cones against the jet from every place of the vent: all of them lie in the hull of those from its two ends.
    const near = nozzle.holes_rad.flatMap((hole_rad): Region => {
      const ends = [face.a, face.b].flatMap((end) => intersectionOf(fillOf([ringAround(end, level_m)]), fillOf([wedge(end, hole_rad + Math.PI, half_rad, level_m)])));
      const ring = convexHull(ends.flat());
      return ring.length > 2 ? fillOf([ring]) : [];
    });
    // So near that the jet has not widened to the height of any part of it.
    const low_m = away_m / Math.tan(half_rad) - HAIR_m;
    const under = low_m > 0 ? intersectionOf(fillOf([ringInside(face.a, low_m)]), fillOf([ringInside(face.b, low_m)])) : [];
    const blown = differenceOf(near, [under]);
    return isAsDrawn(site, blown) ? [] : blown;
  });
  return { rule: 'E11', region };
}
