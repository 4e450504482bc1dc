import type { Finding, Verdict } from '#shared/rules/finding';
import type { LengthSystem } from '#shared/units/length-text';
import { formatQuantity, formatQuantityAgainstLimit } from '#shared/units/quantity-text';

/** A finding's figures as the user reads them: so fine that a fault never reads like a kept limit. */
export interface FindingFigures {
  readonly measured: string | null;
  readonly limit: string | null;
  /** With its sign in words: "short by 2 in", "3 ft to spare". */
  readonly margin: string | null;
}

/** Writes the figures of a finding in the plan's units. */
export function figuresOf({ measured, limit, margin, measure, verdict }: Finding, system: LengthSystem): FindingFigures {
  const both = measured !== undefined && limit !== undefined ? formatQuantityAgainstLimit(measured, limit, measure, system) : null;
  // What is kept within float noise has nothing to spare; what is missed by a hair is never missed by 0.
  const isMissed = margin !== undefined && margin < 0 && verdict !== 'ok';
  return {
    measured: both?.value ?? (measured === undefined ? null : formatQuantity(measured, measure, system)),
    limit: both?.limit ?? (limit === undefined ? null : formatQuantity(limit, measure, system)),
    margin:
      margin === undefined
        ? null
        : isMissed
          ? `missed by ${formatQuantityAgainstLimit(-margin, 0, measure, system).value}`
          : `${formatQuantity(Math.max(0, margin), measure, system)} to spare`,
  };
}

/** Whether the unit profile is what the finding is about or waits for. */
export const asksForProfile = ({ subject, verdict, text }: Finding): boolean => subject.kind === 'profile' || (verdict === 'not-checked' && text.includes('unit profile'));

/** Which findings the list shows; null lets everything through. */
export interface FindingFilter {
  readonly verdicts: ReadonlySet<Verdict>;
  readonly rule: string | null;
  readonly level: string | null;
}

/** What needs the user's eye: everything but notes and kept limits. */
export const OPEN_VERDICTS: ReadonlySet<Verdict> = new Set<Verdict>(['stop', 'warn', 'not-checked']);

/** Findings that a filter lets through, in the order of the list. A finding without a place belongs to every level. */
export const filterFindings = (findings: readonly Finding[], { verdicts, rule, level }: FindingFilter): Finding[] =>
  findings.filter((finding) => verdicts.has(finding.verdict) && (rule === null || finding.rule === rule) && (level === null || finding.place === undefined || finding.place.level === level));
