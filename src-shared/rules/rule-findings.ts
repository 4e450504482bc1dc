import type { Ref } from '../model/plan.ts';
import { refKey } from '../model/plan.ts';
import { type Chunk, NO_COUNTS, type VerdictCounts, homeOf } from './chunk.ts';
import type { Finding, Verdict } from './finding.ts';
import type { LapsedWaiver } from './waive.ts';

const isThing = (subject: Finding['subject']): subject is Ref => subject.kind !== 'plan' && subject.kind !== 'profile';

const NONE_LAPSED: readonly LapsedWaiver[] = [];

/** Everything that one rule found of a plan, owner by owner. Lists are put together when somebody reads them. */
export class RuleFindings {
  readonly chunks: readonly Chunk[];
  readonly counts: VerdictCounts;
  /** Something of it is as it was before the last change, and will be asked anew. */
  readonly isStale: boolean;
  /** Nobody has accepted any of it yet, as far as a rule knows. */
  readonly accepted = 0;
  readonly lapsed = NONE_LAPSED;
  readonly #byVerdict = new Map<Verdict, readonly Finding[]>();
  #all: readonly Finding[] | undefined;

  constructor(chunks: readonly Chunk[]) {
    this.chunks = chunks;
    const counts = { ...NO_COUNTS };
    let isStale = false;
    for (const chunk of chunks) {
      counts.stop += chunk.counts.stop;
      counts.warn += chunk.counts.warn;
      counts.note += chunk.counts.note;
      counts['not-checked'] += chunk.counts['not-checked'];
      counts.ok += chunk.counts.ok;
      isStale ||= chunk.isStale;
    }
    this.counts = counts;
    this.isStale = isStale;
  }

  /** Every finding, in the order of the plan. */
  get all(): readonly Finding[] {
    this.#all ??= this.chunks.flatMap(({ findings }) => findings);
    return this.#all;
  }

  /** Those with one verdict. */
  of(verdict: Verdict): readonly Finding[] {
    const known = this.#byVerdict.get(verdict);
    if (known) return known;
    const found: Finding[] = [];
    if (this.counts[verdict] > 0) {
      for (const { counts, findings } of this.chunks) {
        if (counts[verdict] === 0) continue;
        for (const finding of findings) if (finding.verdict === verdict) found.push(finding);
      }
    }
    this.#byVerdict.set(verdict, found);
    return found;
  }

  /** Those about one thing. */
  about(ref: Ref): readonly Finding[] {
    const key = refKey(ref);
    const home = homeOf(ref);
    const found: Finding[] = [];
    for (const chunk of this.chunks) {
      if (chunk.home !== undefined && chunk.home !== home) continue;
      for (const finding of chunk.findings) if (isThing(finding.subject) && finding.subject.id === ref.id && refKey(finding.subject) === key) found.push(finding);
    }
    return found;
  }

  /** Those that will be asked anew. */
  get stale(): readonly Finding[] {
    return this.isStale ? this.chunks.flatMap(({ isStale, findings }) => (isStale ? findings : [])) : [];
  }
}
