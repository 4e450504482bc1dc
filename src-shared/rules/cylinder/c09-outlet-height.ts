import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NetworkCylinder, cylinderSubjects, placeOfCylinder } from './cylinders.ts';

interface WithHose extends NetworkCylinder {
  readonly listsHose: boolean;
}

/**
 * C9: the outlet stands at a height from which the hose reaches its end.
 * Measure: height of the end of the hose against the valve outlet, up or down [m].
 * Limit: reach of the hose, from the unit profile. What is too far to the side, and the bends, P32 judges.
 * Not checked: a figure is blank, where the hose ends is not known, or no hose is listed.
 */
export const c09OutletHeight = defineRule<WithHose>({
  id: 'C9',
  title: 'Outlet height against hose and pipe',
  severity: 'stop',
  measure: 'length',
  basis: { formula: '| height of the hose end − height of the valve outlet | ≤ reach of the hose', source: 'unit profile' },
  limitKeys: ['outletHeight_m', 'hoseReach_m'],
  subjects: cylinderSubjects(({ network }) => ({ listsHose: network.assembly[0]?.kind === 'hose' })),
  check(subject, { say }) {
    const { cylinder, profile, listsHose } = subject;
    const outlet = limitOrBlank(profile, 'outletHeight_m');
    const reach = limitOrBlank(profile, 'hoseReach_m');
    if ('blank' in outlet) return outlet.blank;
    if ('blank' in reach) return reach.blank;
    if (!listsHose) return notChecked('no hose is listed first in the discharge assembly.');
    if (!cylinder.hoseEnd) return notChecked('where its hose ends is not known.', placeOfCylinder(subject));
    const rise_m = cylinder.hoseEnd.z - outlet.limit.value;
    const figures = atMost(Math.abs(rise_m), reach.limit, LENGTH_SLACK_m);
    const { value, limit } = say.against(Math.abs(rise_m), reach.limit.value);
    const begin = { ...cylinder.at, z: outlet.limit.value };
    const side = rise_m < 0 ? 'below' : 'above';
    return {
      ...figures,
      text: figures.isKept ? `Its hose ends ${value} ${side} the outlet; it reaches ${limit}.` : `Its hose ends ${value} ${side} the outlet, and reaches only ${limit}. Move the end of the hose ${rise_m < 0 ? 'up' : 'down'}, with the parts behind it.`,
      place: placeOfCylinder(subject, { heights: [begin, cylinder.hoseEnd] }),
      cure: figures.isKept ? undefined : { kind: 'advice', text: `Begin the pipe ${rise_m < 0 ? 'higher' : 'lower'}.` },
    };
  },
});
