import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { perNetwork } from '../subjects.ts';
import { type NetworkCylinder, cylindersOf, placeOfCylinder } from './cylinders.ts';

/** A rail is set this near to its height on site [m]: common practice. */
const TOLERANCE_m = 0.025;

/**
 * C4: the rail of a cylinder on a wall is at the height that the manual gives.
 * Measure: height of the rail above the finished floor [m].
 * Limit: rail height of the unit profile, 25 mm either way.
 * Not checked: the limit is blank, or the height of the rail is not known.
 */
export const c04RailHeight = defineRule<NetworkCylinder>({
  id: 'C4',
  title: 'Rail height',
  severity: 'stop',
  measure: 'length',
  basis: { formula: '| rail height − height of the manual | ≤ 25 mm', source: 'unit profile; tolerance: common practice', caution: 'Where the manual gives a narrower tolerance, that one governs.' },
  limitKeys: ['railHeight_m'],
  subjects: perNetwork((network) => cylindersOf(network, () => ({})).filter(({ subject }) => subject.cylinder.mounting === 'wall')),
  check(subject, { say }) {
    const { limit, ...missing } = limitOrBlank(subject.profile, 'railHeight_m');
    if ('blank' in missing) return missing.blank;
    const { railHeight_m } = subject.cylinder;
    const place = placeOfCylinder(subject);
    if (railHeight_m === null || !limit) return notChecked('the height of its rail is not known.', place);
    const margin = TOLERANCE_m - Math.abs(railHeight_m - limit.value);
    const isKept = margin >= -LENGTH_SLACK_m;
    const { value: stands, limit: wanted } = say.against(railHeight_m, limit.value);
    return {
      kind: 'judged',
      isKept,
      measured: railHeight_m,
      limit: limit.value,
      limitSource: limit.source,
      margin,
      text: isKept ? `Its rail is at ${stands}; the manual says ${wanted}.` : `Its rail is at ${stands}; the manual says ${wanted}, within ${say.length(TOLERANCE_m)}. Set it there.`,
      place,
    };
  },
});
