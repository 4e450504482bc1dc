import type { Finding, Verdict } from './finding.ts';

/** How many findings there are of each verdict, those that somebody accepted counted by themselves. */
export interface FindingCounts extends Readonly<Record<Verdict, number>> {
  readonly accepted: number;
}

/** Counts findings. An accepted one counts as accepted and nowhere else. */
export function countFindings(findings: readonly Finding[]): FindingCounts {
  const counts = { stop: 0, warn: 0, note: 0, 'not-checked': 0, ok: 0, accepted: 0 };
  for (const { verdict, waiver } of findings) counts[waiver ? 'accepted' : verdict] += 1;
  return counts;
}
