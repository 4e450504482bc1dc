import { intakesIn, intakesInJets } from '../derived/air-intakes.ts';
import { openingFace } from '../derived/behind-opening.ts';
import type { DerivedNozzle } from '../derived/derived.ts';
import { turnedTo } from '../derived/nozzle-changes.ts';
import { findOpposed } from '../derived/nozzle-pairs.ts';
import { makesPocket, pocketJetsOf } from '../derived/pocket-jets.ts';
import { isForbidden, isUnknownShelf, struckBy } from '../derived/struck-things.ts';
import { jetsAtOpening } from '../derived/vent-in-jet.ts';
import { normalAngle_rad } from '../geometry/angle.ts';
import { LENGTH_SLACK_m } from '../geometry/tolerance.ts';
import { isSameRef } from '../model/plan.ts';
import { VENT_CLEAR_m, opensFrom } from '../rules/enclosure/e11-vent-clear-of-jet.ts';
import type { Site } from './site.ts';

/** Whether a turned nozzle blows at nothing that the program warns of and that it does not blow at as drawn. */
type IsClear = (nozzle: DerivedNozzle) => boolean;

/** What a nozzle could come to blow at when it is turned: people and loose things, beams, other nozzles, air intakes, relief vents (N8, N12, N14, N15, E11). */
function watchesOf({ derived, nozzle, space }: Site): IsClear[] {
  const others = derived.nozzles.filter((each) => each.space?.key === space.key && !isSameRef(each.ref, nozzle.ref));
  const spread_rad = nozzle.profile?.limits.jetSpread_rad?.value ?? 0;
  const vents = Object.values(space.enclosure.openings).filter((opening) => opening.kind === 'relief-vent' && opensFrom(opening, space));
  return [
    ...(nozzle.blockers.some((solid) => makesPocket(nozzle, solid)) ? [(turned: DerivedNozzle) => pocketJetsOf(turned).length === 0] : []),
    // One by one: what a jet comes to as drawn is no reason to let it come to something else.
    ...(space.kind === 'room' ? space.solids.filter((solid) => isForbidden(solid) || isUnknownShelf(solid)) : []).map((solid) => (turned: DerivedNozzle) => struckBy(turned, (each) => each === solid).length === 0),
    ...others.map((other) => (turned: DerivedNozzle) => findOpposed({ one: turned, other }) === undefined),
    ...(space.kind === 'room' && intakesIn(space).length > 0 ? [(turned: DerivedNozzle) => intakesInJets(turned, true).length === 0] : []),
    ...vents.flatMap((vent): IsClear[] => {
      const on = openingFace(space.enclosure, vent);
      const face = on && { wall: vent.wall, on, bottom_m: vent.bottom_m, top_m: vent.bottom_m + vent.height_m };
      return face ? [(turned) => jetsAtOpening(turned, spread_rad, face).every(({ distance_m }) => distance_m >= VENT_CLEAR_m - LENGTH_SLACK_m)] : [];
    }),
  ];
}

/** Tells whether a turn from how the nozzle is drawn brings none of that anew; undefined where there is nothing to look out for. */
export function turnedClear(site: Site): ((turned_rad: number) => boolean) | undefined {
  const { nozzle } = site;
  const watches = watchesOf(site).filter((isClear) => isClear(nozzle));
  if (watches.length === 0) return undefined;
  return (turned_rad) => {
    const turned: DerivedNozzle = { ...nozzle, ...turnedTo(nozzle, normalAngle_rad(nozzle.nozzle.rotation_rad + turned_rad)) };
    return watches.every((isClear) => isClear(turned));
  };
}
