import { type Plan, type Ref, type Waiver, refKey } from '../model/plan.ts';
import type { VerdictCounts } from './chunk.ts';
import type { FindingCounts } from './count-findings.ts';
import { type Finding, VERDICTS, type Verdict, findingKey } from './finding.ts';
import type { RuleFindings } from './rule-findings.ts';
import { type LapsedWaiver, waive } from './waive.ts';

/** What one rule found, with what somebody accepted of it. */
interface Judged {
  readonly all: readonly Finding[];
  readonly counts: VerdictCounts;
  readonly accepted: number;
  readonly lapsed: readonly LapsedWaiver[];
  of(verdict: Verdict): readonly Finding[];
  about(ref: Ref): readonly Finding[];
}

/** The one place where acceptances are put on findings. */
function judgedWith(found: RuleFindings, waivers: Plan['waivers']): Judged {
  const { findings, lapsed } = waive(found.all, waivers);
  const counts = { ...found.counts };
  let accepted = 0;
  for (const { verdict, waiver } of findings) {
    if (!waiver) continue;
    accepted += 1;
    counts[verdict] -= 1;
  }
  return {
    all: findings,
    counts,
    accepted,
    lapsed,
    of: (verdict) => findings.filter((finding) => finding.verdict === verdict),
    about(ref) {
      const key = refKey(ref);
      return findings.filter(({ subject }) => subject.kind !== 'plan' && subject.kind !== 'profile' && refKey(subject) === key);
    },
  };
}

const judgedBefore = new WeakMap<RuleFindings, { readonly waivers: Plan['waivers']; readonly judged: Judged }>();

/** What a rule found with what was accepted of it: the same while neither changes. */
function judged(found: RuleFindings, waivers: Plan['waivers'], about: readonly Waiver[] | undefined): Judged {
  if (!about) return found;
  const known = judgedBefore.get(found);
  if (known?.waivers === waivers) return known.judged;
  const fresh = judgedWith(found, Object.fromEntries(about.map((waiver) => [waiver.id, waiver])));
  judgedBefore.set(found, { waivers, judged: fresh });
  return fresh;
}

/** How findings differ from earlier ones; what stays as it was may be in both lists. */
export interface FindingsSince {
  readonly gone: readonly Finding[];
  readonly come: readonly Finding[];
}

/** Everything that the rules found of a plan. Lists are put together when somebody reads them, counts stand ready. */
export class Findings {
  readonly counts: FindingCounts;
  /** Something is as it was before the last change, and is being asked anew. */
  readonly isStale: boolean;
  /** Acceptances of findings that no longer hold. */
  readonly lapsed: readonly LapsedWaiver[];
  readonly #ids: readonly string[];
  readonly #rules: readonly RuleFindings[];
  readonly #judged: readonly Judged[];
  #all: readonly Finding[] | undefined;
  #open: readonly Finding[] | undefined;
  #stale: ReadonlySet<Finding> | undefined;

  /**
   * @param ids    of the rules, in the order of the catalogue
   * @param rules  what each of them found
   */
  constructor(ids: readonly string[], rules: readonly RuleFindings[], waivers: Plan['waivers']) {
    const accepting = new Map<string, Waiver[]>();
    for (const waiver of Object.values(waivers)) accepting.set(waiver.rule, [...(accepting.get(waiver.rule) ?? []), waiver]);
    this.#ids = ids;
    this.#rules = rules;
    this.#judged = rules.map((found, i) => judged(found, waivers, accepting.get(ids[i] ?? '')));
    this.isStale = rules.some((found) => found.isStale);
    const counts = { stop: 0, warn: 0, note: 0, 'not-checked': 0, ok: 0, accepted: 0 };
    for (const { counts: each, accepted } of this.#judged) {
      for (const verdict of VERDICTS) counts[verdict] += each[verdict];
      counts.accepted += accepted;
    }
    this.counts = counts;
    for (const id of ids) accepting.delete(id);
    const ofNoRule = [...accepting.values()].flat().map((waiver): LapsedWaiver => ({ waiver, because: 'gone' }));
    this.lapsed = [...this.#judged.flatMap(({ lapsed }) => lapsed), ...ofNoRule];
  }

  /** How many findings there are, kept and accepted ones included. */
  get size(): number {
    return Object.values(this.counts).reduce((sum, count) => sum + count, 0);
  }

  /** Every finding, kept ones included, gravest first, then in the order of the catalogue. */
  get all(): readonly Finding[] {
    this.#all ??= VERDICTS.flatMap((verdict) => this.of(verdict));
    return this.#all;
  }

  /** All but the kept ones, gravest first; one that somebody accepted says so. */
  get open(): readonly Finding[] {
    this.#open ??= VERDICTS.flatMap((verdict) => (verdict === 'ok' ? [] : this.of(verdict)));
    return this.#open;
  }

  /**
   * What is found otherwise than before, kept limits included: findings of all owners that were asked anew. Much of a
   * large plan is not looked at, so that every step of a gesture can ask.
   */
  since(before: Findings): FindingsSince {
    const gone: Finding[] = [];
    const come: Finding[] = [];
    for (const [i, judgedNow] of this.#judged.entries()) {
      const judgedThen = before.#judged[i];
      if (judgedThen === judgedNow) continue;
      const now = this.#rules[i];
      const then = before.#rules[i];
      // What somebody accepted says so in findings of its own: such a rule is taken whole.
      if (!now || !then || now !== judgedNow || then !== judgedThen) {
        gone.push(...(judgedThen?.all ?? []));
        come.push(...judgedNow.all);
        continue;
      }
      const most = Math.max(now.chunks.length, then.chunks.length);
      for (let k = 0; k < most; k += 1) {
        const chunk = now.chunks[k];
        const was = then.chunks[k];
        if (chunk === was) continue;
        gone.push(...(was?.findings ?? []));
        come.push(...(chunk?.findings ?? []));
      }
    }
    return { gone, come };
  }

  /** Those with one verdict. */
  of(verdict: Verdict): readonly Finding[] {
    return this.#judged.flatMap((each) => each.of(verdict));
  }

  /** What the rules say about one thing, gravest first. */
  about(ref: Ref): readonly Finding[] {
    const found = this.#judged.flatMap((each) => each.about(ref));
    return VERDICTS.flatMap((verdict) => found.filter((finding) => finding.verdict === verdict));
  }

  /** The finding with a key, or undefined. */
  withKey(key: string): Finding | undefined {
    const place = this.#ids.indexOf(key.slice(0, key.indexOf('/')));
    return this.#judged[place]?.all.find((finding) => findingKey(finding) === key);
  }

  /** Whether a finding is one from before the last change, which is being asked anew. */
  isFindingStale(finding: Finding): boolean {
    if (!this.isStale) return false;
    this.#stale ??= new Set(this.#rules.flatMap(({ stale }) => stale));
    return this.#stale.has(finding);
  }
}
