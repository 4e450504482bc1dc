import type { Plan, Waiver } from '../model/plan.ts';
import { type Finding, findingKey, restsOn } from './finding.ts';

/** An acceptance that no longer holds. */
export interface LapsedWaiver {
  readonly waiver: Waiver;
  /** Its finding is no longer made, is kept by now, or says something else than what was accepted. */
  readonly because: 'gone' | 'kept' | 'changed';
  /** What the check says now. */
  readonly finding?: Finding;
}

/** Findings with what somebody accepted of them, and the acceptances that no longer hold. */
export interface Waived {
  readonly findings: readonly Finding[];
  readonly lapsed: readonly LapsedWaiver[];
}

/** The same acceptance on the same finding is the same finding again. */
const carried = new WeakMap<Finding, { readonly waiver: Waiver; readonly accepted: Finding }>();

function withWaiver(finding: Finding, waiver: Waiver): Finding {
  const known = carried.get(finding);
  if (known?.waiver === waiver) return known.accepted;
  const { id, reason, by, date } = waiver;
  const accepted: Finding = { ...finding, waiver: { id, reason, by, date } };
  carried.set(finding, { waiver, accepted });
  return accepted;
}

/**
 * Marks the findings that somebody accepted as they are. An acceptance holds for as long as its finding rests on the
 * very same figures and place; after that it has lapsed and the finding is open again.
 * @returns the very same list while nothing is accepted
 */
export function waive(findings: readonly Finding[], waivers: Plan['waivers']): Waived {
  const all = Object.values(waivers);
  if (all.length === 0) return { findings, lapsed: [] };
  const left = new Map(all.map((waiver) => [waiver.finding, waiver]));
  const rules = new Set(all.map(({ rule }) => rule));
  const lapsed: LapsedWaiver[] = [];
  const marked = findings.map((finding) => {
    if (!rules.has(finding.rule)) return finding;
    const waiver = left.get(findingKey(finding));
    if (!waiver) return finding;
    left.delete(waiver.finding);
    if (restsOn(finding) === waiver.restsOn) return withWaiver(finding, waiver);
    lapsed.push({ waiver, because: finding.verdict === 'ok' ? 'kept' : 'changed', finding });
    return finding;
  });
  for (const waiver of left.values()) lapsed.push({ waiver, because: 'gone' });
  return { findings: marked, lapsed };
}
