import { defineRule, notChecked } from '../rule.ts';
import { type ServedRoom, perServedRoom, placeOfRoom } from '../served-rooms.ts';

/** Air with less oxygen than this is oxygen-deficient [vol %]. */
export const LEAST_OXYGEN_pct = 19.5;

/** A procedure to begin with; the owner's own words go before it. */
export const USUAL_PROCEDURE = `Nobody goes in until the room has been ventilated. Then test the air from outside with an oxygen meter, first at the door, then at three heights: go in only where it shows ${LEAST_OXYGEN_pct} % oxygen or more, with the meter worn. Silence the alarm and reset the panel last.`;

const namesLimit = (procedure: string): boolean => /19[.,]5\s*%/.test(procedure);

/**
 * S10: how people come back in is written down, with the oxygen that must be there, and a meter is at hand.
 * Measure: none; 19.5 % oxygen by volume must be named.
 * Not checked: no procedure is written, or nobody has said whether a meter is at hand.
 */
export const s10ReEntry = defineRule<Pick<ServedRoom, 'ref' | 'enclosure'>>({
  id: 'S10',
  title: 'Coming back in',
  severity: 'note',
  measure: 'count',
  basis: {
    formula: `a procedure is written: ventilate, measure, go in at ${LEAST_OXYGEN_pct} % oxygen or more; an oxygen meter is at hand`,
    source: 'OSHA 29 CFR 1910.134(b) and 1910.146(b): less than 19.5 % oxygen by volume is oxygen-deficient',
    caution: 'Nitrogen has no smell and gives no warning: only a meter tells.',
  },
  subjects: perServedRoom(({ ref, name, enclosure }) => [{ subject: { ref, enclosure }, ref, name }]),
  check(room) {
    const { procedure, hasMeter } = room.enclosure.afterDischarge;
    const place = placeOfRoom(room);
    const inputs = [
      { label: 'Procedure', value: procedure.trim() || 'not written' },
      { label: 'Oxygen meter at hand', value: hasMeter === null ? 'not known' : hasMeter ? 'yes' : 'no' },
    ];
    if (hasMeter === false) return { kind: 'judged', isKept: false, text: 'No oxygen meter is at hand for coming back in after a discharge.', inputs, place, cure: { kind: 'advice', text: 'Keep an oxygen meter at hand, tested and charged.' } };
    if (procedure.trim() === '') return notChecked('how people come back in after a discharge is not written down.', place);
    if (!namesLimit(procedure)) return { kind: 'judged', isKept: false, text: `How people come back in is written down, but it does not name the ${LEAST_OXYGEN_pct} % oxygen that must be there.`, inputs, place, cure: { kind: 'advice', text: `Write into the procedure: go in only where the meter shows ${LEAST_OXYGEN_pct} % oxygen or more.` } };
    if (hasMeter === null) return notChecked('whether an oxygen meter is at hand is not said.', place);
    return { kind: 'judged', isKept: true, text: `How people come back in is written down, with ${LEAST_OXYGEN_pct} % oxygen as the limit, and a meter is at hand.`, inputs, place };
  },
});
