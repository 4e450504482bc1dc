import { SPENT_FREE_JETS } from '../../derived/jet-cone.ts';
import { findLeastTurn } from '../../derived/least-turn.ts';
import { type Struck, isForbidden, isUnknownShelf, struckBy } from '../../derived/struck-things.ts';
import { planPoint } from '../../geometry/point.ts';
import type { Cure, FindingInput, Place } from '../finding.ts';
import { type Answer, type CheckContext, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzleSubject, placeOfNozzle } from '../subjects.ts';
import { type NozzleInSpace, ROOM_NOZZLES } from './nozzles-in-spaces.ts';
import { turnBy } from './turn-by.ts';

const placeOf = (nozzle: NozzleSubject, struck: readonly Struck[], first: Struck): Place => ({
  ...placeOfNozzle(nozzle, first.cone.from),
  rays: struck.map(({ cone, at }) => ({ from: planPoint(cone.from.x, cone.from.y), to: planPoint(at.x, at.y) })),
  areas: [[first.solid.footprint]],
  heights: [first.cone.from, first.at],
});

/** The smallest turn after which no jet comes to people or loose things. */
function cureOf({ nozzle, nozzles }: NozzleInSpace, { solid }: Struck, { say }: Pick<CheckContext, 'say'>): Cure {
  const turn_rad = findLeastTurn(nozzle, nozzles, (turned) => struckBy(turned, isForbidden).length === 0);
  if (turn_rad !== undefined) return turnBy(nozzle, turn_rad, say);
  const what = solid.obstruction.kind === 'work-place' ? 'Move the nozzle or the work place' : 'Move the nozzle, or keep loose things off it';
  return { kind: 'advice', text: `${what}: no turn clears it without bringing a new stop.` };
}

/**
 * N8: no jet reaches people at their work, nor anything loose on a rack, cabinet or other shelf.
 * Measure: along the jet from the orifice to where its cone first comes to the place [m].
 * Limit: none within the length of the jet: to the first wall or thing, at most four times the least free jet, where its
 * push has fallen to a sixteenth (common practice, memory).
 * Not checked: spread or free jet is blank, holes are not drawn, or a jet comes to a shelf of which nobody has looked
 * whether loose things lie on it.
 */
export const n08JetAtPeople = defineRule<NozzleInSpace>({
  id: 'N8',
  title: 'Jet at people or loose things',
  severity: 'warn',
  measure: 'length',
  basis: {
    formula: `cone about each hole, half angle = spread of a jet + tilt, as far as the first wall or thing and at most ${SPENT_FREE_JETS} × least free jet, meets no work place and no rack or cabinet with loose things`,
    source: 'NFPA 2001 7.7.2.2.7, nozzles not at personnel, loose items, shelves or cabinet tops (memory: check the edition); length of the jet common practice, memory',
    caution: 'Beyond that length a jet still stirs the air: paper and dust may lift.',
  },
  limitKeys: ['jetSpread_rad', 'freeJet_m'],
  isHeavy: true,
  subjects: ROOM_NOZZLES,
  check(asked, { say }): Answer {
    const { nozzle } = asked;
    const { at, space, profile } = nozzle;
    if (!at || !space) return notChecked('the nozzle hangs in no enclosure.');
    const place = placeOfNozzle(nozzle, at);
    const concerned = space.solids.filter((solid) => isForbidden(solid) || isUnknownShelf(solid));
    if (concerned.length === 0) return { kind: 'judged', isKept: true, text: 'No work place and no shelf with loose things is near its jets.', place };
    const spread = limitOrBlank(profile, 'jetSpread_rad');
    if (!spread.limit) return spread.blank;
    const free = limitOrBlank(profile, 'freeJet_m');
    if (!free.limit) return free.blank;
    if (nozzle.holes_rad.length === 0) return notChecked('its holes are not drawn.', place);
    const inputs: FindingInput[] = [
      { label: 'Spread of a jet, half its angle', value: say.angle(spread.limit.value), source: spread.limit.source },
      { label: 'Length of a jet at most', value: say.length(free.limit.value * SPENT_FREE_JETS), source: `${SPENT_FREE_JETS} × least free jet; common practice` },
    ];
    const struck = struckBy(nozzle, isForbidden);
    const [first] = struck;
    if (first) {
      const { obstruction } = first.solid;
      const what = obstruction.kind === 'work-place' ? `people at ${obstruction.name}` : `the loose things on ${obstruction.name}`;
      return {
        kind: 'judged',
        isKept: false,
        measured: first.along_m,
        limit: first.cone.reach_m,
        limitSource: 'length of the jet: to the first wall or thing, at most four times the least free jet',
        margin: first.along_m - first.cone.reach_m,
        text: `The jet at ${say.angle(first.cone.azimuth_rad)} reaches ${what} after ${say.length(first.along_m)}. Turn the nozzle.`,
        inputs,
        place: placeOf(nozzle, struck, first),
        cure: cureOf(asked, first, { say }),
      };
    }
    const unknown = struckBy(nozzle, isUnknownShelf);
    const [doubtful] = unknown;
    if (doubtful) return notChecked(`its jet at ${say.angle(doubtful.cone.azimuth_rad)} comes to ${doubtful.solid.obstruction.name}, and nobody has said whether loose things lie on it.`, placeOf(nozzle, unknown, doubtful));
    return { kind: 'judged', isKept: true, text: 'Its jets reach no work place and no shelf with loose things.', inputs, place };
  },
});
