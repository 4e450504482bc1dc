import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import { atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type ServedSpace, servedSpaceSubjects } from '../subjects.ts';

/**
 * N11: one tier of nozzles is enough for the height of the space.
 * Measure: greatest height of the space, floor to ceiling [m].
 * Limit: greatest height for one tier, from the profile of a nozzle that serves it; the least where they differ.
 * Not checked: no nozzle serves it, its height is unknown, or the limit is blank.
 */
export const n11HeightTier = defineRule<ServedSpace>({
  id: 'N11',
  title: 'Height tier',
  severity: 'stop',
  measure: 'length',
  basis: { formula: 'floor to highest ceiling ≤ limit for one tier of nozzles', source: 'unit profile' },
  limitKeys: ['tierHeight_m'],
  subjects: servedSpaceSubjects,
  check({ space, nozzles }, { say }) {
    const place = { level: space.level.id, at: space.outline };
    if (nozzles.length === 0) return notChecked('no nozzle serves it, so no unit profile says how high it may be.', place);
    if (space.tallest_m === undefined) return notChecked('its height is not entered.', place);
    const tiers = nozzles.map(({ profile }) => limitOrBlank(profile, 'tierHeight_m'));
    const blank = tiers.find((tier) => !tier.limit);
    if (blank && !blank.limit) return blank.blank;
    const limit = tiers.flatMap((tier) => tier.limit ?? []).sort((a, b) => a.value - b.value)[0];
    if (!limit) return notChecked('no unit profile says how high it may be.', place);
    const height_m = space.tallest_m - space.floor_m;
    const foot = space.outline[0];
    const heights = foot && [{ ...foot, z: space.floor_m }, { ...foot, z: space.tallest_m }];
    const figures = atMost(height_m, limit, LENGTH_SLACK_m);
    const { value: high, limit: allowed } = say.against(height_m, limit.value);
    return {
      ...figures,
      text: figures.isKept
        ? `Is ${high} high; one tier of nozzles does up to ${allowed}.`
        : `Is ${high} high; above ${allowed} a second tier of nozzles is needed.`,
      inputs: [{ label: 'Floor', value: say.length(space.floor_m) }, { label: 'Highest ceiling', value: say.length(space.tallest_m) }],
      place: { ...place, heights },
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Hang a second tier of nozzles as the manual of the unit says, or take a unit for this height.' },
    };
  },
});
