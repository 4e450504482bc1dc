import type { Ref } from '../model/plan.ts';
import { refKey } from '../model/plan.ts';
import { type Chunk, type Ground, type LookedAt, NO_COUNTS, type VerdictCounts, homeOf } from './chunk.ts';
import type { Finding, Verdict } from './finding.ts';
import type { LapsedWaiver } from './waive.ts';

const isThing = (subject: Finding['subject']): subject is Ref => subject.kind !== 'plan' && subject.kind !== 'profile';

const NONE_LAPSED: readonly LapsedWaiver[] = [];

function add(counts: Record<Verdict, number>, more: VerdictCounts, times: 1 | -1): void {
  counts.stop += times * more.stop;
  counts.warn += times * more.warn;
  counts.note += times * more.note;
  counts['not-checked'] += times * more['not-checked'];
  counts.ok += times * more.ok;
}

/** Everything that one rule found of a plan, owner by owner. Lists are put together when somebody reads them. */
export class RuleFindings {
  readonly chunks: readonly Chunk[];
  /** The owners of the plan that was asked about; a chunk that is stale belongs to an earlier one. */
  readonly owners: readonly object[];
  /** What all of it rests on besides its owners; the levels are those of chunks that looked at them. */
  readonly basis: Ground['basis'] | undefined;
  readonly lengths: Ground['lengths'] | undefined;
  readonly levels: Ground['levels'] | undefined;
  /** Parts of it rest on different things. */
  readonly isMixed: boolean;
  /** The farthest that a check of it looked. */
  readonly farthest: LookedAt;
  readonly counts: VerdictCounts;
  /** Something of it is as it was before the last change, and will be asked anew. */
  readonly isStale: boolean;
  /** Nobody has accepted any of it yet, as far as a rule knows. */
  readonly accepted = 0;
  readonly lapsed = NONE_LAPSED;
  readonly #byVerdict = new Map<Verdict, readonly Finding[]>();
  #all: readonly Finding[] | undefined;

  /**
   * @param chunks  one for each owner
   * @param owners  of the plan that was asked about
   * @param before  what most of it was taken from, with the places where it may differ: only those are looked at
   */
  constructor(chunks: readonly Chunk[], owners: readonly object[], before?: { readonly found: RuleFindings; readonly changed: readonly number[] }) {
    this.chunks = chunks;
    this.owners = owners;
    const known = before?.found;
    const counts = { ...(known?.counts ?? NO_COUNTS) };
    let { isStale = false, isMixed = false, farthest = 'nothing', basis, lengths, levels } = known ?? {};
    const most = before?.changed.length ?? chunks.length;
    for (let k = 0; k < most; k += 1) {
      const i = before?.changed[k] ?? k;
      const chunk = chunks[i];
      const was = known?.chunks[i];
      if (!chunk || was === chunk) continue;
      add(counts, chunk.counts, 1);
      if (was) add(counts, was.counts, -1);
      isStale ||= chunk.isStale;
      if (chunk.farthest === 'more' || farthest === 'nothing') farthest = chunk.farthest;
      const { ground } = chunk;
      basis ??= ground.basis;
      lengths ??= ground.lengths;
      isMixed ||= basis !== ground.basis || lengths !== ground.lengths;
      if (chunk.farthest === 'nothing') continue;
      levels ??= ground.levels;
      isMixed ||= levels !== ground.levels;
    }
    this.counts = counts;
    this.isStale = isStale;
    this.farthest = farthest;
    this.basis = basis;
    this.lengths = lengths;
    this.levels = levels;
    this.isMixed = isMixed;
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
