import type { Plan } from '../model/plan.ts';
import { type Cure, type Finding, type Verdict, findingKey } from '../rules/finding.ts';
import { applyCure } from './apply-cure.ts';
import { type Command, type Outcome, sequence } from './command.ts';

/** A finding that was left as it is, and why. */
export interface LeftFinding {
  readonly finding: Finding;
  /** One sentence for the user. */
  readonly because: string;
}

/** What carrying out every ready cure came to. */
export interface CuredAll {
  /** All of it as one step; null when nothing could be cured. */
  readonly outcome: Extract<Outcome, { ok: true }> | null;
  /** What the cures were, in the order in which they were carried out. */
  readonly cured: readonly { readonly finding: Finding; readonly cure: Cure }[];
  /** Everything that still asks for something, gravest first. */
  readonly left: readonly LeftFinding[];
}

/** What asks for something, gravest first. */
const OPEN: readonly Verdict[] = ['stop', 'warn', 'not-checked', 'note'];
/** More steps than any plan has needed; a bound for the day when one does. */
const MOST_CURES = 2000;

const isOpen = ({ verdict, waiver }: Finding): boolean => verdict !== 'ok' && !waiver;
const stopsIn = (findings: readonly Finding[]): Map<string, Finding> => new Map(findings.filter(({ verdict, waiver }) => verdict === 'stop' && !waiver).map((finding) => [findingKey(finding), finding]));
const gravityOf = (findings: readonly Finding[]): readonly number[] => OPEN.map((verdict) => findings.filter((finding) => isOpen(finding) && finding.verdict === verdict).length);

/** Whether the first list of counts is smaller where the two first differ: fewer stops count before fewer warnings. */
function isLighter(one: readonly number[], other: readonly number[]): boolean {
  const first = one.findIndex((count, i) => count !== other[i]);
  return first >= 0 && (one[first] ?? 0) < (other[first] ?? 0);
}

/** The same cure offered by several findings is carried out, or given up, once. */
const cureKey = (cure: Cure): string => JSON.stringify({ ...cure, text: '' });

interface Tried {
  readonly outcome?: Extract<Outcome, { ok: true }>;
  readonly findings?: readonly Finding[];
  readonly because?: string;
}

/**
 * Carries out the ready cures of a plan one after the other, the gravest finding first. Each is kept only if the plan,
 * asked anew, no longer says what it is for, has no stop that it had not before, and has less to clear on the whole:
 * with every step fewer stops, or as many and fewer warnings, and so on. So it comes to an end, and never leaves a plan
 * worse than it was.
 * @param findingsOf  asks every check about a plan
 */
export function cureAll(plan: Plan, findingsOf: (plan: Plan) => readonly Finding[]): CuredAll {
  let present = plan;
  let findings = findingsOf(plan);
  const steps: Command[] = [];
  const cured: { finding: Finding; cure: Cure }[] = [];
  const failed = new Map<string, string>();

  const attempt = (finding: Finding, cure: Cure): Tried => {
    const outcome = applyCure(cure)(present);
    if (!outcome.ok) return { because: outcome.reason };
    const next = findingsOf(outcome.next);
    const before = stopsIn(findings);
    const added = [...stopsIn(next)].find(([key]) => !before.has(key))?.[1];
    if (added) return { because: `Its cure would bring another stop: ${added.title.toLowerCase()}, ${added.name}.` };
    const key = findingKey(finding);
    const after = next.find((each) => findingKey(each) === key);
    if (after && isOpen(after) && OPEN.indexOf(after.verdict) <= OPEN.indexOf(finding.verdict)) return { because: 'Its cure does not clear it as the plan stands by now.' };
    if (!isLighter(gravityOf(next), gravityOf(findings))) return { because: 'Its cure would bring as much that has to be cleared as it takes away.' };
    return { outcome, findings: next };
  };

  /** The first finding, gravest first, whose cure can be carried out and was not given up since the last change. */
  const stepOn = (givenUp: Set<string>): boolean => {
    for (const verdict of OPEN) {
      for (const finding of findings) {
        const { cure } = finding;
        if (finding.verdict !== verdict || !isOpen(finding) || !cure || cure.kind === 'advice' || givenUp.has(cureKey(cure))) continue;
        const tried = attempt(finding, cure);
        if (!tried.outcome || !tried.findings) {
          givenUp.add(cureKey(cure));
          failed.set(findingKey(finding), tried.because ?? '');
          continue;
        }
        present = tried.outcome.next;
        findings = tried.findings;
        steps.push(applyCure(cure));
        cured.push({ finding, cure });
        return true;
      }
    }
    return false;
  };

  // A cure that was given up may do once another has been carried out: it is tried again, until a whole round changes nothing.
  for (let changed = true; changed && cured.length < MOST_CURES; ) {
    const givenUp = new Set<string>();
    changed = false;
    while (cured.length < MOST_CURES && stepOn(givenUp)) changed = true;
  }

  const done = cured.length > 0 ? sequence(cured.length === 1 ? 'Cure 1 finding' : `Cure ${cured.length} findings`, steps)(plan) : null;
  return { outcome: done?.ok ? done : null, cured, left: leftOf(findings, failed) };
}

/** Everything that is still open, with the reason why it was left. */
function leftOf(findings: readonly Finding[], failed: ReadonlyMap<string, string>): LeftFinding[] {
  return OPEN.flatMap((verdict) => findings.filter((finding) => finding.verdict === verdict && isOpen(finding))).flatMap((finding): LeftFinding[] => {
    const { cure, verdict } = finding;
    if (cure?.kind === 'advice') return [{ finding, because: `By hand: ${cure.text.replace(/\.$/, '')}.` }];
    if (cure) return [{ finding, because: failed.get(findingKey(finding)) || 'Its cure was not tried.' }];
    if (verdict === 'note') return [];
    return [{ finding, because: verdict === 'not-checked' ? 'Something has to be entered first: the finding says what.' : 'No single change clears it: a decision is needed.' }];
  });
}
