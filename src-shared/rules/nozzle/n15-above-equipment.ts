import { type IntakeJet, intakesIn, intakesInJets } from '../../derived/air-intakes.ts';
import { findUnder, placesBeside } from '../../derived/below-nozzle.ts';
import { CONE_LIMITS, SPENT_FREE_JETS } from '../../derived/jet-cone.ts';
import { findLeastTurn } from '../../derived/least-turn.ts';
import { bringsNoStop, movedTo } from '../../derived/nozzle-changes.ts';
import { planPoint } from '../../geometry/point.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { inches_m } from '../../units/convert.ts';
import type { Cure, FindingInput } from '../finding.ts';
import { moveWords } from '../move-words.ts';
import { type Answer, type CheckContext, atLeast, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { placeOfNozzle } from '../subjects.ts';
import { type NozzleInSpace, ROOM_NOZZLES } from './nozzles-in-spaces.ts';
import { turnBy } from './turn-by.ts';

/** From the orifice down to what is under it. */
export const CLEAR_ABOVE = { value: inches_m(12), source: 'common practice' };

/** Raises the nozzle, or moves it off what it hangs over, where that brings no new stop. */
function clearOf({ nozzle, nozzles }: NozzleInSpace, short_m: number, { say }: Pick<CheckContext, 'say'>): Cure {
  const { at } = nozzle;
  const under = findUnder(nozzle);
  const advice: Cure = { kind: 'advice', text: 'Move the nozzle or what is under it by hand: neither raising it nor a straight move off it brings no new stop.' };
  if (!at || !under) return advice;
  for (const to of [{ ...at, z: at.z + short_m }, ...placesBeside(at, under)]) {
    const moved = movedTo(nozzle, to);
    const below = findUnder(moved);
    if (below && to.z - below.top_m < CLEAR_ABOVE.value - LENGTH_SLACK_m) continue;
    if (!bringsNoStop(nozzle, moved, nozzles)) continue;
    return { kind: 'move-nozzle', text: `Move it ${moveWords(at, to, say)}`, nozzle: { network: nozzle.ref.network, id: nozzle.ref.id }, to };
  }
  return advice;
}

/** Turns the nozzle until no jet has an air intake in it. */
function turnOff({ nozzle, nozzles }: NozzleInSpace, { say }: Pick<CheckContext, 'say'>): Cure {
  const turn_rad = findLeastTurn(nozzle, nozzles, (turned) => intakesInJets(turned, true).length === 0);
  return turn_rad === undefined ? { kind: 'advice', text: 'Move the nozzle: no turn clears the air intake without bringing a new stop.' } : turnBy(nozzle, turn_rad, say);
}

const rayTo = ({ at }: IntakeJet, from: { readonly x: number; readonly y: number }) => ({ from: planPoint(from.x, from.y), to: planPoint(at.x, at.y) });

/**
 * N15: a nozzle hangs well above the equipment under it, and no jet blows into an air intake.
 * Measure: orifice down to the highest thing right under it [m]; along the jet to an air intake that stands in it [m].
 * Limit: 12 in (common practice); no intake in a jet.
 * Not checked: an air intake may stand in a jet but its height is not known, or a figure of the jets is blank while the
 * room has one. A nozzle inside a thing is stopped by N1 or N7.
 */
export const n15AboveEquipment = defineRule<NozzleInSpace>({
  id: 'N15',
  title: 'Above equipment',
  severity: 'warn',
  measure: 'length',
  basis: {
    formula: `orifice − top of the highest thing under it ≥ 12 in (305 mm); no air intake in the cone of a jet, as far as the first wall or thing and at most ${SPENT_FREE_JETS} × least free jet`,
    source: 'common practice; the manual of the unit governs',
  },
  limitKeys: [...CONE_LIMITS],
  isHeavy: true,
  subjects: ROOM_NOZZLES,
  check(asked, { say }): Answer {
    const { nozzle } = asked;
    const { at, space, profile } = nozzle;
    if (!at || !space) return notChecked('the nozzle hangs in no enclosure.');
    const place = placeOfNozzle(nozzle, at);
    const under = findUnder(nozzle);
    const gap = under ? { ...atLeast(at.z - under.top_m, CLEAR_ABOVE, LENGTH_SLACK_m), under } : undefined;
    const gapPlace = under ? { ...place, areas: [[under.footprint]], heights: [at, { ...at, z: under.top_m }] } : place;
    const inputs: FindingInput[] = under ? [{ label: 'Orifice', value: say.length(at.z) }, { label: `Top of ${under.obstruction.name}`, value: say.length(under.top_m) }] : [];
    if (gap && !gap.isKept) {
      const { under: thing, ...figures } = gap;
      const { value: high, limit: wanted } = say.against(figures.measured, CLEAR_ABOVE.value);
      return { ...figures, text: `Hangs only ${high} above ${thing.obstruction.name}; ${wanted} is wanted.`, inputs, place: gapPlace, cure: clearOf(asked, -figures.margin, { say }) };
    }
    if (intakesIn(space).length > 0) {
      for (const key of CONE_LIMITS) {
        const found = limitOrBlank(profile, key);
        if (!found.limit) return found.blank;
      }
      const [blown] = intakesInJets(nozzle, true);
      if (blown) {
        return {
          kind: 'judged',
          isKept: false,
          measured: blown.along_m,
          text: `The jet at ${say.angle(blown.azimuth_rad)} blows at the air intake ${blown.intake.name} after ${say.length(blown.along_m)}. Turn the nozzle.`,
          inputs: [{ label: `Height of ${blown.intake.name}`, value: say.length(blown.at.z) }, { label: 'Orifice', value: say.length(at.z) }],
          place: { ...place, rays: intakesInJets(nozzle, true).map((each) => rayTo(each, at)), heights: [at, blown.at] },
          cure: turnOff(asked, { say }),
        };
      }
      const [doubtful] = intakesInJets(nozzle, false);
      if (doubtful) return notChecked(`the air intake ${doubtful.intake.name} may stand in its jet at ${say.angle(doubtful.azimuth_rad)}. Enter its height.`, { ...place, rays: [rayTo(doubtful, at)] });
    }
    if (!gap) return { kind: 'judged', isKept: true, text: 'Hangs over open floor.', place };
    const { under: thing, ...figures } = gap;
    return { ...figures, text: `Hangs ${say.length(figures.measured)} above ${thing.obstruction.name}; ${say.length(CLEAR_ABOVE.value)} is enough.`, inputs, place: gapPlace };
  },
});
