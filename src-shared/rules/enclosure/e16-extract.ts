import type { Worked } from '../../calculations/design/worked.ts';
import type { VolumeSums } from '../../calculations/design/design.ts';
import { airChangeBasis, airChangeTime_s, leftAfterChanges } from '../../calculations/formulas/air-changes.ts';
import type { Enclosure } from '../../model/plan.ts';
import { defineRule, notChecked } from '../rule.ts';
import { type ServedRoom, perServedRoom, placeOfRoom } from '../served-rooms.ts';

interface AskedExtract extends Pick<ServedRoom, 'ref' | 'enclosure'> {
  readonly volume: Worked<VolumeSums>;
}

/** Changes of air after which little of the gas is left. */
const CHANGES = 4;
const WORDS: Readonly<Record<Enclosure['afterDischarge']['extract'], string>> = { unknown: 'not said', 'not-required': 'none', fixed: 'a fixed extract', portable: 'a portable fan' };

/**
 * E16: where the authority asks for extract after a discharge, the room has one.
 * Measure: none; the time of four changes of air is told where flow and volume are known.
 * Not checked: whether extract is asked for, or what there is, is not said.
 */
export const e16Extract = defineRule<AskedExtract>({
  id: 'E16',
  title: 'Extract after discharge',
  severity: 'note',
  measure: 'time',
  basis: {
    formula: `where required: a fixed or portable extract; time of ${CHANGES} changes of air, ${airChangeBasis.formula}`,
    source: `project and authority having jurisdiction; four changes: common practice; ${airChangeBasis.source}`,
    caution: `${airChangeBasis.caution} The outlet must not lie where people or intakes are.`,
  },
  subjects: perServedRoom(({ ref, name, enclosure, sums }) => [{ subject: { ref, enclosure, volume: sums.volume }, ref, name }]),
  check(asked, { basis, say }) {
    const { extract, extractFlow_m3_s } = asked.enclosure.afterDischarge;
    const place = placeOfRoom(asked);
    if (basis.extract === 'unknown') return notChecked('whether the authority asks for extract after a discharge is not said in the basis of design.', place);
    if (extract === 'unknown') {
      if (basis.extract === 'not-required') return { kind: 'judged', isKept: true, text: 'The authority asks for no extract.', place };
      return notChecked('extract is required, and what the room has is not said.', place);
    }
    const { volume } = asked;
    const timed = extractFlow_m3_s && volume.isKnown && volume.sums.net_m3 > 0 ? airChangeTime_s(volume.sums.net_m3, extractFlow_m3_s, CHANGES) : undefined;
    const inputs = [
      { label: 'Extract', value: WORDS[extract] },
      ...(extractFlow_m3_s === null ? [] : [{ label: 'Flow of the extract', value: say.quantity(extractFlow_m3_s, 'volumeFlow') }]),
      ...(timed === undefined ? [] : [{ label: `Time of ${CHANGES} changes of air`, value: `${(timed / 3600).toFixed(1)} h`, source: airChangeBasis.source }, { label: 'Gas left then, well mixed', value: say.quantity(leftAfterChanges(CHANGES), 'ratio') }]),
    ];
    if (basis.extract === 'not-required') return { kind: 'judged', isKept: true, text: 'The authority asks for no extract.', inputs, place };
    if (extract === 'not-required') return { kind: 'judged', isKept: false, text: 'The authority asks for extract after a discharge, but the room has none.', inputs, place, cure: { kind: 'advice', text: 'Plan a fixed extract, or a portable fan with a way outdoors for its hose.' } };
    const long = timed === undefined ? '' : ` Four changes of air take ${(timed / 3600).toFixed(1)} h.`;
    return { kind: 'judged', isKept: true, ...(timed === undefined ? {} : { measured: timed }), text: `Has ${WORDS[extract]} for after a discharge.${long}`, inputs, place };
  },
});
