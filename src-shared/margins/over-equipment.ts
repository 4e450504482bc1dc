import { intakesIn } from '../derived/air-intakes.ts';
import { SPENT_FREE_JETS } from '../derived/jet-cone.ts';
import { type Region, fillOf } from '../derived/polygon-sums.ts';
import { isThere } from '../derived/solids.ts';
import { sidesOf } from '../geometry/outline.ts';
import { ringAroundSegment } from '../geometry/round-rings.ts';
import { LENGTH_SLACK_m } from '../geometry/tolerance.ts';
import { CLEAR_ABOVE } from '../rules/nozzle/n15-above-equipment.ts';
import { coneOnPlan } from './cone-on-plan.ts';
import { isAsDrawn } from './is-as-drawn.ts';
import { type Forbidden, HAIR_m, type Site } from './site.ts';

/**
 * N15: everything right above a thing that reaches too near up to the orifice, and the places from which a hole, as it points now,
 * blows at an air intake whose height is known; what may stand between the two counts as no help. Not asked where the rule warns
 * as it is drawn.
 */
export function overEquipment(site: Site): Forbidden {
  const { space, nozzle, at, limits } = site;
  if (space.kind !== 'room') return { rule: 'N15', region: [] };
  const under = space.solids.filter((solid) => isThere(solid) && solid.top_m <= at.z && at.z - solid.top_m < CLEAR_ABOVE.value - LENGTH_SLACK_m);
  const above = under.flatMap(({ footprint }): Region => fillOf([footprint, ...sidesOf(footprint).map((side) => ringAroundSegment(side, HAIR_m))]));
  const { jetSpread_rad } = nozzle.profile?.limits ?? {};
  const intakes = jetSpread_rad ? intakesIn(space) : [];
  const blown = intakes.flatMap(({ at: intake, height_m }) =>
    height_m === null
      ? []
      : nozzle.holes_rad
          .map((hole_rad) => coneOnPlan(intake, hole_rad, (jetSpread_rad?.value ?? 0) + nozzle.nozzle.tilt_rad, Math.abs(height_m - at.z), limits.freeJet_m * SPENT_FREE_JETS))
          .filter((ring) => ring.length > 2),
  );
  const region = [...above, ...fillOf(blown)];
  return { rule: 'N15', region: isAsDrawn(site, region) ? [] : region };
}
