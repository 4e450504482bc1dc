import { FILL_K } from '../../calculations/design/flow-input.ts';
import { workOut, worked } from '../../calculations/design/worked.ts';
import { cylinderMass_kg, cylinderMassBasis } from '../../calculations/formulas/cylinder-gas.ts';
import type { DerivedNetwork } from '../../derived/derived.ts';
import { type Answer, type CheckContext, atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { networkSubjects } from '../subjects.ts';

/** Mass of the manual and mass worked out from pressure and volume may differ by this share: common practice. */
const AGREEMENT = 0.02;

type Gone = { readonly blank: Answer };

/** How many cylinders the network has and may have. */
function countAnswer({ profile, network }: DerivedNetwork): Answer | Gone {
  const count = Object.keys(network.cylinders).length;
  const { limit, ...missing } = limitOrBlank(profile, 'cylindersPerNetwork');
  if ('blank' in missing) return { blank: missing.blank };
  if (count === 0 || !limit) return { blank: notChecked('no cylinder is drawn yet.') };
  const cylinders = `${count} cylinder${count === 1 ? '' : 's'}`;
  const figures = atMost(count, limit, 0);
  return { ...figures, text: figures.isKept ? `Has ${cylinders}; ${limit.value} allowed.` : `Has ${cylinders}; only ${limit.value} may feed one network. Split it, or use larger units.` };
}

/** Whether mass, pressure and volume of one full cylinder belong together. */
function fillAnswer({ profile }: DerivedNetwork, say: CheckContext['say']): Answer | Gone {
  const [volume, pressure, mass] = (['cylinderVolume_m3', 'fillPressure_Pa', 'agentMass_kg'] as const).map((key) => limitOrBlank(profile, key));
  for (const each of [volume, pressure, mass]) if (each && 'blank' in each) return { blank: each.blank };
  if (!volume?.limit || !pressure?.limit || !mass?.limit) return { blank: notChecked('figures of its filling are not known.') };
  const made = workOut(() => worked(cylinderMass_kg(volume.limit.value, pressure.limit.value, FILL_K)));
  if (!made.isKnown) return { blank: notChecked(made.because) };
  const off = Math.abs(mass.limit.value / made.sums - 1);
  const figures = atMost(off, { value: AGREEMENT, source: 'common practice' }, slackOf(AGREEMENT));
  const { value: share, limit: allowed } = say.quantityAgainst(off, AGREEMENT, 'ratio');
  const masses = `The unit profile says ${say.quantity(mass.limit.value, 'mass')} of agent in a cylinder; its volume and fill pressure at 15 °C make ${say.quantity(made.sums, 'mass')}`;
  return {
    ...figures,
    measure: 'ratio',
    text: figures.isKept ? `${masses}, ${share} apart.` : `${masses}: ${share} apart, and ${allowed} is allowed. Look the three figures up again, gauge or absolute too.`,
  };
}

/**
 * C12: a network has no more cylinders than may feed it, and what the manual says of their filling agrees.
 * Measure: number of cylinders; share by which the stated mass is off the mass worked out from volume and pressure at 15 °C.
 * Limit: cylinders per network, from the unit profile; 2 %.
 * Not checked: one of these figures is blank, or no cylinder is drawn. A fault is reported even then.
 */
export const c12CountAndFill = defineRule<DerivedNetwork>({
  id: 'C12',
  title: 'Cylinder count and fill',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: `cylinders ≤ limit; | m_stated/m − 1 | ≤ 2 %, ${cylinderMassBasis.formula} at 15 °C`,
    source: `unit profile; 2 %: common practice; ${cylinderMassBasis.source}`,
    caution: cylinderMassBasis.caution,
  },
  limitKeys: ['cylindersPerNetwork', 'cylinderVolume_m3', 'fillPressure_Pa', 'agentMass_kg'],
  subjects: networkSubjects,
  check(network, { say }) {
    const places = Object.values(network.network.cylinders).map(({ at }) => ({ x: at.x, y: at.y }));
    const place = places.length > 0 ? { level: network.level.id, at: places } : undefined;
    const answers = [countAnswer(network), fillAnswer(network, say)];
    const judged = answers.flatMap((answer) => ('kind' in answer && answer.kind === 'judged' ? [answer] : []));
    const faults = judged.filter(({ isKept }) => !isKept);
    const [first, ...others] = faults.length > 0 ? faults : judged;
    const blank = answers.flatMap((answer) => ('blank' in answer ? [answer.blank] : []))[0];
    if (blank && faults.length === 0) return blank;
    if (!first) return notChecked('no cylinder is drawn yet.');
    return { ...first, text: [first, ...others].map(({ text }) => text).join(' '), place };
  },
});
