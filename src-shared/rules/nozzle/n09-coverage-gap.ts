import { coverageOf } from '../../derived/coverage.ts';
import { defineRule, notChecked } from '../rule.ts';
import { type ServedSpace, servedSpaceSubjects } from '../subjects.ts';

/**
 * N9: every floor point of a protected space sees a nozzle of that space and lies within its coverage.
 * Measure: floor area unseen or out of coverage [m²]; never understated, overstated by less than 0.5 % of the floor.
 * Limit: none uncovered.
 * Not checked: a serving nozzle's profile gives no coverage.
 */
export const n09CoverageGap = defineRule<ServedSpace>({
  id: 'N9',
  title: 'Coverage gap',
  severity: 'stop',
  measure: 'area',
  basis: {
    formula: 'floor − union of (coverage ∩ floor in sight of the nozzle at orifice height) = 0',
    source: 'unit profile (coverage of one nozzle)',
    caution: 'Agent also mixes past obstacles; the listing, not this area, proves the concentration.',
  },
  isHeavy: true,
  subjects: servedSpaceSubjects,
  check({ space, nozzles }, { say }) {
    const level = space.level.id;
    if (nozzles.length > 0 && nozzles.some((nozzle) => !nozzle.profile?.footprint)) {
      return notChecked('the coverage of one nozzle is blank in the unit profile.', { level, at: space.outline });
    }
    const { uncovered } = coverageOf(space, nozzles);
    const gap_m2 = uncovered.reduce((sum, region) => sum + region.area_m2, 0);
    const figures = { kind: 'judged', measured: gap_m2, limit: 0, limitSource: 'unit profile', margin: -gap_m2 } as const;
    if (uncovered.length === 0) return { ...figures, margin: 0, isKept: true, text: 'All of its floor is covered.', place: { level, at: space.outline } };
    const worst = uncovered.reduce((a, b) => (b.worstDistance_m > a.worstDistance_m ? b : a)).worst;
    const parts = uncovered.length === 1 ? 'in one place' : `in ${uncovered.length} places`;
    return {
      ...figures,
      isKept: false,
      text:
        nozzles.length === 0
          ? `No nozzle serves it: ${say.area(gap_m2)} of floor are uncovered. Place nozzles.`
          : `${say.area(gap_m2)} of its floor are uncovered ${parts}. Add a nozzle or move one toward the marked point.`,
      place: { level, at: [worst], areas: uncovered.map(({ rings }) => rings) },
      cure: { kind: 'advice', text: 'Add a nozzle near the marked point, or move one toward it.' },
    };
  },
});
