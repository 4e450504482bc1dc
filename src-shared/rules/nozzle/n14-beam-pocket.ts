import { findLeastTurn } from '../../derived/least-turn.ts';
import { type PocketJet, longAxis_rad, pocketJetsOf, turnsAlong_rad } from '../../derived/pocket-jets.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { Cure, FindingInput } from '../finding.ts';
import { type CheckContext, defineRule, notChecked } from '../rule.ts';
import { placeOfNozzle } from '../subjects.ts';
import { stoppedHoles } from './hole-faults.ts';
import { type NozzleInSpace, nozzlesInSpaces } from './nozzles-in-spaces.ts';
import { turnBy } from './turn-by.ts';

/** Along the beam if that clears it, else the smallest turn that does. */
function cureOf({ nozzle, nozzles }: NozzleInSpace, { solid }: PocketJet, { say }: Pick<CheckContext, 'say'>): Cure {
  const along_rad = turnsAlong_rad(nozzle.holes_rad, longAxis_rad(solid));
  const turn_rad = findLeastTurn(nozzle, nozzles, (turned) => pocketJetsOf(turned).length === 0, along_rad);
  if (turn_rad === undefined) return { kind: 'advice', text: 'Hang a nozzle in each bay, or move this one: no turn clears it without bringing a new stop.' };
  return turnBy(nozzle, turn_rad, say, along_rad.includes(turn_rad) ? `, along ${solid.obstruction.name}` : '');
}

/**
 * N14: no jet blows at a beam, or at another thing that hangs below the orifice.
 * Measure: along the jet to the beam [m]. Limit: none; a beam that hangs no lower than the orifice is none.
 * A hole that N5 or N6 stops, or whose jet N7 stops at the beam already, is not judged again: turning cures both.
 * Not checked: holes are not drawn, or all of them are stopped already.
 */
export const n14BeamPocket = defineRule<NozzleInSpace>({
  id: 'N14',
  title: 'Beam pocket',
  severity: 'warn',
  measure: 'length',
  basis: {
    formula: 'no jet first meets a beam or hanging thing whose underside is below the orifice',
    source: 'common practice; the manual of the unit may allow some depth of beam',
    caution: 'Agent that a beam turns down fills one bay and leaves the next lean.',
  },
  isHeavy: true,
  subjects: nozzlesInSpaces(['room', 'ceiling-void']),
  check(asked, { say }) {
    const { nozzle } = asked;
    const { at, space, profile } = nozzle;
    if (!at || !space) return notChecked('the nozzle hangs in no enclosure.');
    const place = placeOfNozzle(nozzle, at);
    if (nozzle.holes_rad.length === 0) return notChecked('its holes are not drawn.', place);
    const stopped = stoppedHoles(nozzle);
    const free_m = profile?.limits.freeJet_m?.value ?? 0;
    const across = pocketJetsOf(nozzle);
    const met = across.filter(({ jet }) => !stopped.has(jet.azimuth_rad) && jet.length_m >= free_m - LENGTH_SLACK_m);
    const [first] = met;
    if (!first) {
      if (across.length > 0) return notChecked('its jets already stop too near. Turn it first.', place);
      return { kind: 'judged', isKept: true, text: 'No beam hangs across its jets.', place };
    }
    const { jet, solid } = first;
    const below_m = at.z - solid.bottom_m;
    const inputs: FindingInput[] = [
      { label: 'Orifice', value: say.length(at.z) },
      { label: `Underside of ${solid.obstruction.name}`, value: say.length(solid.bottom_m) },
    ];
    return {
      kind: 'judged',
      isKept: false,
      measured: jet.length_m,
      text: `The jet at ${say.angle(jet.azimuth_rad)} meets ${solid.obstruction.name} after ${say.length(jet.length_m)}, which hangs ${say.off(below_m)} below the orifice. Turn the nozzle along it.`,
      inputs,
      place: { ...place, rays: met.map((each) => ({ from: each.jet.from, to: each.jet.to })), heights: [at, { ...jet.to, z: solid.bottom_m }] },
      cure: cureOf(asked, first, { say }),
    };
  },
});
