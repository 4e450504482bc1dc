import type { DerivedNetwork } from '../../derived/derived.ts';
import { atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { networkSubjects } from '../subjects.ts';

/**
 * N22: the cylinders of a network may feed its nozzles.
 * Measure: nozzles of the network.
 * Limit: nozzles per cylinder from the unit profile, times its cylinders.
 * Not checked: the network has no cylinder, or the limit is blank.
 */
export const n22NozzlesPerUnit = defineRule<DerivedNetwork>({
  id: 'N22',
  title: 'Nozzles per unit',
  severity: 'stop',
  measure: 'count',
  basis: { formula: 'nozzles of the network ≤ limit of one cylinder × cylinders', source: 'unit profile' },
  limitKeys: ['nozzlesPerUnit'],
  subjects: networkSubjects,
  check({ network, nozzles, level, profile }) {
    const { limit, ...missing } = limitOrBlank(profile, 'nozzlesPerUnit');
    if ('blank' in missing) return missing.blank;
    const cylinders = Object.values(network.cylinders);
    if (cylinders.length === 0 || !limit) return notChecked('it has no cylinder yet.');
    const place = { level: level.id, at: cylinders.map(({ at }) => at) };
    const most = { ...limit, value: limit.value * cylinders.length };
    const figures = atMost(nozzles.length, most, 0);
    return {
      ...figures,
      text: figures.isKept
        ? `Feeds ${nozzles.length} of at most ${most.value} nozzles.`
        : `Feeds ${nozzles.length} nozzles; ${cylinders.length === 1 ? 'one cylinder' : `${cylinders.length} cylinders`} may feed ${most.value}. Add a unit or take nozzles away.`,
      inputs: [{ label: 'Cylinders', value: String(cylinders.length) }, { label: 'Nozzles of one cylinder at most', value: String(limit.value), source: limit.source }],
      place,
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Add a cylinder, or a second network for some of its nozzles.' },
    };
  },
});
