import { type Answer, defineRule, notChecked } from '../rule.ts';
import { together } from '../together.ts';
import { type DrawnCircuit, drawnCircuitSubjects } from './drawn-circuits.ts';

const SOURCE = 'plan';
const yesNo = (known: boolean | null): string => (known === null ? 'not known' : known ? 'yes' : 'no');

const asked = (known: boolean | null, open: string, kept: string, fault: string): Answer =>
  known === null ? notChecked(open) : { kind: 'judged', isKept: known, text: known ? kept : fault };

/**
 * L8: the panel is listed for releasing, and together with the solenoid of this unit.
 * Measure: what the plan says of it.
 * Not checked: nobody has looked, or nobody wrote down which listing says so. A fault of the other is reported even then.
 */
export const l08PanelListing = defineRule<DrawnCircuit>({
  id: 'L8',
  title: 'Listing of the panel',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'panel listed for releasing, and with this solenoid',
    source: 'NFPA 72 and NFPA 2001: control units that release are listed for it, and their releasing devices for use with them (memory)',
    caution: 'Only the listing itself can answer this. Keep the page of it with the plan.',
  },
  subjects: drawnCircuitSubjects,
  check({ release: { panel }, place }) {
    const { isListed, isCompatible } = panel;
    const listing = panel.listing.trim();
    const answer = together([
      asked(isListed, 'nobody has said whether the panel is listed for releasing.', 'The panel is listed for releasing.', 'The panel is not listed for releasing. Take one that is.'),
      asked(
        isCompatible,
        'nobody has said whether the panel is listed together with this solenoid.',
        'It is listed together with this solenoid.',
        'The panel is not listed together with this solenoid. Take one that is.',
      ),
    ]);
    if (answer.kind === 'not-checked') return { ...answer, place };
    if (answer.isKept && listing === '') return notChecked('nobody has written down which listing says that the panel is listed for releasing with this solenoid.', place);
    return {
      ...answer,
      inputs: [
        { label: 'Listed for releasing', value: yesNo(isListed), source: SOURCE },
        { label: 'Listed with this solenoid', value: yesNo(isCompatible), source: SOURCE },
        { label: 'Listing', value: listing || 'not written down', source: SOURCE },
      ],
      place,
      cure: answer.isKept ? undefined : { kind: 'advice', text: 'Take a panel that is listed for releasing with this solenoid, or add a listed releasing module.' },
    };
  },
});
