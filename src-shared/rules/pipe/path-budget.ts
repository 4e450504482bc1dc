import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { LimitKey } from '../../profile/limit-catalogue.ts';
import type { MeasureKind } from '../finding.ts';
import { type CheckContext, atMost, defineRule, limitOrBlank, notChecked } from '../rule.ts';
import { type NozzlePath, pathSubjects, placeOfPath } from '../subjects.ts';

/** One budget that every path from the cylinder to a nozzle must keep. */
interface PathBudget {
  readonly id: string;
  readonly title: string;
  readonly measure: MeasureKind;
  readonly formula: string;
  readonly limitKey: LimitKey;
  /** Figure of one path, base SI. */
  spent(path: NonNullable<NozzlePath['path']>, network: NozzlePath['network']): number;
  /** Prints the figure and its limit. */
  print(value: number, limit: number, context: CheckContext): { readonly value: string; readonly limit: string };
  readonly cure: string;
}

/** Makes the rule of a path budget: spent ≤ limit on the way to every nozzle. */
export const pathBudgetRule = ({ id, title, measure, formula, limitKey, spent, print, cure }: PathBudget) =>
  defineRule<NozzlePath>({
    id,
    title,
    severity: 'stop',
    measure,
    basis: { formula, source: 'unit profile' },
    limitKeys: [limitKey],
    subjects: pathSubjects,
    check(subject, context) {
      const { limit, ...missing } = limitOrBlank(subject.network.profile, limitKey);
      if ('blank' in missing) return missing.blank;
      if (!subject.path || !limit) return notChecked('no pipe leads to it from the cylinder.');
      const value = spent(subject.path, subject.network);
      const figures = atMost(value, limit, LENGTH_SLACK_m);
      const printed = print(value, limit.value, context);
      return {
        ...figures,
        text: figures.isKept ? `Its path has ${printed.value}; ${printed.limit} allowed.` : `Its path has ${printed.value}; only ${printed.limit} allowed. ${cure}`,
        place: placeOfPath(subject),
      };
    },
  });

/** Prints a count and its limit: "1 elbow", "3 elbows", "9". */
export const counted = (count: number, limit: number, noun: string) => ({
  value: `${count} ${noun}${count === 1 ? '' : 's'}`,
  limit: String(limit),
});
