import { LIMIT_CATALOGUE, type LimitKey } from '../../profile/limit-catalogue.ts';
import type { UnitProfile } from '../../profile/unit-profile.ts';
import { type Rule, defineRule, notChecked } from '../rule.ts';

/**
 * D5: the unit profile of every network is complete and real.
 * Measure: figures that a rule needs and that are blank.
 * Limit: none blank (a stop); a sample profile is a warning and stamps every sheet.
 * Not checked: a network names a profile that the plan does not hold.
 * @param rules every other rule, to know which figures are needed
 */
export const d05ProfileComplete = (rules: readonly Rule[]): Rule => {
  const needed = [...new Set(rules.flatMap((rule) => rule.limitKeys))];
  return defineRule<UnitProfile | undefined>({
    id: 'D5',
    title: 'Unit profile complete',
    severity: 'stop',
    measure: 'count',
    basis: {
      formula: 'no figure that a check needs is blank; a sample profile is for trying only',
      source: 'common practice',
      caution: 'The unit’s own manual and listing govern. Nothing may be built from a sample profile.',
    },
    subjects: ({ networks }) =>
      [...new Map(networks.map(({ network, profile }) => [network.profile, profile]))].map(([id, profile]) => ({
        subject: profile,
        ref: { kind: 'profile', id } as const,
        name: profile?.name ?? id,
      })),
    check(profile) {
      if (!profile) return notChecked('the plan does not hold this unit profile. Choose another for its networks.');
      const labels = needed.filter((key: LimitKey) => !profile.limits[key]).map((key) => LIMIT_CATALOGUE[key].label);
      if (!profile.footprint) labels.push('Coverage of one nozzle');
      const figures = { kind: 'judged', measured: labels.length, limit: 0, limitSource: 'common practice', margin: -labels.length } as const;
      if (labels.length > 0) return { ...figures, isKept: false, text: `Blank: ${labels.join(', ')}. Enter them from the unit’s manual.` };
      if (profile.isSample) {
        return { ...figures, margin: 0, isKept: false, severity: 'warn', text: 'Is an invented sample: every sheet is stamped. Enter the figures of the unit that is installed.' };
      }
      return { ...figures, margin: 0, isKept: true, text: 'Gives every figure that the checks need.' };
    },
  });
};
