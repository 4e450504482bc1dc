import type { Cylinder } from '../../model/plan.ts';
import { defineRule, notChecked } from '../rule.ts';
import { type NetworkCylinder, cylinderSubjects, placeOfCylinder } from './cylinders.ts';

type Exposure = NonNullable<Cylinder['exposedTo']>[number];

/** What harms a cylinder, as a sentence names it. */
const WORDS: Readonly<Record<Exposure, string>> = { sun: 'direct sun', heat: 'a source of heat', water: 'water', vehicles: 'moving vehicles', weather: 'weather' };

const listed = (words: readonly string[]): string => (words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`);

/**
 * C10: nothing harms a cylinder where it stands: no sun, heat, water, vehicles or weather.
 * Measure: what somebody saw there.
 * Not checked: nobody has looked yet.
 */
export const c10Exposure = defineRule<NetworkCylinder>({
  id: 'C10',
  title: 'Exposed place',
  severity: 'warn',
  measure: 'count',
  basis: { formula: 'exposed to none of: sun, heat, water, vehicles, weather', source: 'NFPA 2001, location of agent storage (memory: confirm in the adopted edition)' },
  subjects: cylinderSubjects(() => ({})),
  check(subject) {
    const { exposedTo } = subject.cylinder;
    const place = placeOfCylinder(subject);
    if (exposedTo === null) return notChecked('nobody has looked whether it is exposed to sun, heat, water, vehicles or weather.', place);
    const isKept = exposedTo.length === 0;
    return {
      kind: 'judged',
      isKept,
      text: isKept ? 'Looked at: exposed to no sun, heat, water, vehicles or weather.' : `Exposed to ${listed(exposedTo.map((each) => WORDS[each]))}. Shield it, or stand it elsewhere.`,
      place,
      cure: isKept ? undefined : { kind: 'advice', text: 'Shield the cylinder, or stand it elsewhere.' },
    };
  },
});
