import type { DerivedNetwork } from '../../derived/derived.ts';
import { defineRule, notChecked } from '../rule.ts';
import { networksWithPipe } from '../subjects.ts';

/**
 * P26: the pipe is joined to the building's earth, so that gas that rushes through it builds up no charge and a fault
 * leaves it without voltage.
 * Measure: what the plan says of it. Not checked: nobody has said.
 */
export const p26Bonding = defineRule<DerivedNetwork>({
  id: 'P26',
  title: 'Bonding',
  severity: 'warn',
  measure: 'count',
  basis: { formula: 'pipe bonded to the earth of the building', source: 'NFPA 2001, memory; ISO 14520-1, memory', caution: 'How it is bonded, the electrical code and a licensed electrician decide.' },
  subjects: networksWithPipe,
  check({ network }) {
    const { bonding } = network.installation;
    if (bonding === 'unknown') return notChecked('nobody has said yet whether the pipe is bonded to the earth of the building.');
    if (bonding === 'bonded') return { kind: 'judged', isKept: true, text: 'The pipe is bonded to the earth of the building.' };
    return { kind: 'judged', isKept: false, text: 'The pipe is not bonded to the earth of the building. Have it bonded.', cure: { kind: 'advice', text: 'Have an electrician bond it, and say so on the plan.' } };
  },
});
