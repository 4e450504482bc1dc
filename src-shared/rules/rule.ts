import type { Design } from '../calculations/design/design.ts';
import type { Derived } from '../derived/derived.ts';
import { isAlike } from '../derived/remember.ts';
import type { BasisOfDesign } from '../model/basis-of-design.ts';
import type { Plan, Settings } from '../model/plan.ts';
import { LIMIT_CATALOGUE, type LimitKey } from '../profile/limit-catalogue.ts';
import type { SourcedLimit, UnitProfile } from '../profile/unit-profile.ts';
import { type Basis, type Cure, type Finding, type FindingInput, type MeasureKind, type Place, VERDICTS } from './finding.ts';
import { type Wording, wordingFor } from './wording.ts';

/** One check of the catalogue. */
export interface Rule {
  /** Catalogue id, e.g. "N1"; never reused. */
  readonly id: string;
  readonly title: string;
  readonly measure: MeasureKind;
  readonly basis: Basis;
  /** Figures of the manual without which it cannot judge. */
  readonly limitKeys: readonly LimitKey[];
  /** One finding for every subject, kept ones included. */
  run(derived: Derived, design: Design): Finding[];
}

/** What a rule says about one subject. */
export type Answer =
  | { readonly kind: 'not-checked'; readonly because: string; readonly place?: Place; readonly cure?: Cure }
  | {
      readonly kind: 'judged';
      readonly isKept: boolean;
      /** Sentence for the user. */
      readonly text: string;
      readonly measured?: number;
      readonly limit?: number;
      readonly limitSource?: string;
      readonly margin?: number;
      /** Verdict of a fault that is graver or lighter than the rule's own. */
      readonly severity?: 'stop' | 'warn' | 'note';
      /** What its figures measure, where that is not the rule's own. */
      readonly measure?: MeasureKind;
      /** What went into it besides the measured value and its limit. */
      readonly inputs?: readonly FindingInput[];
      readonly place?: Place;
      readonly cure?: Cure;
    };

/** What every check may use besides its subject. */
export interface CheckContext {
  /** A check that looks at other things than its subject here is asked anew at every step of a drag. */
  readonly derived: Derived;
  readonly design: Design;
  readonly basis: BasisOfDesign;
  readonly levels: Plan['levels'];
  readonly lengths: Settings['lengths'];
  /** Prints figures in the plan's units. */
  readonly say: Wording;
}

/** A subject of a rule under its name. */
export interface Asked<S> {
  readonly subject: S;
  readonly ref: Finding['subject'];
  readonly name: string;
}

/** How a rule is written down. */
export interface RuleSpec<S> {
  readonly id: string;
  readonly title: string;
  /** Verdict of a fault. */
  readonly severity: 'stop' | 'warn' | 'note';
  readonly measure: MeasureKind;
  readonly basis: Basis;
  readonly limitKeys?: readonly LimitKey[];
  /** Everything that it is asked about, each with its name for the user. */
  subjects(derived: Derived, design: Design): readonly Asked<S>[];
  check(subject: S, context: CheckContext): Answer;
}

function findingOf<S>(spec: RuleSpec<S>, { ref, name }: Asked<S>, answer: Answer): Finding {
  const common = { rule: spec.id, title: spec.title, subject: ref, name, measure: spec.measure, basis: spec.basis };
  if (answer.kind === 'not-checked') return { ...common, verdict: 'not-checked', text: `Not checked: ${answer.because}`, place: answer.place, cure: answer.cure };
  const { isKept, text, measured, limit, limitSource, margin, severity = spec.severity, measure = spec.measure, inputs, place, cure } = answer;
  // Written out field by field: most of what a step of a drag asks anew ends here.
  return { ...common, measure, text, measured, limit, limitSource, margin, inputs, place, cure, verdict: isKept ? 'ok' : severity };
}

/** What a rule found of the last plan, subject by subject. */
interface Found<S> extends Pick<CheckContext, 'basis' | 'levels' | 'lengths'> {
  readonly asked: readonly Asked<S>[];
  readonly findings: readonly Finding[];
  /** Besides its subject, the basis of design and the way of showing lengths it looked at nothing, at the levels, or at more. */
  readonly lookedAt: readonly ('nothing' | 'levels' | 'more')[];
}

/** Subjects that are put together anew from the same parts: a network with one of its nozzles, worked out. */
const SUBJECT_DEPTH = 4;

/**
 * Makes a rule of its written form; the runner adds verdict, basis and place in the list.
 * What it finds of a subject stands for as long as the subject and all else that the check looked at are the same, so
 * that a drag asks only about what it touches. A plan that is not frozen could be changed in place: nothing of it is kept.
 */
export function defineRule<S>(spec: RuleSpec<S>): Rule {
  let last: Found<S> | undefined;
  const run = (derived: Derived, design: Design): Finding[] => {
    const { basis, levels, settings } = derived.plan;
    const { lengths } = settings;
    const isFrozen = Object.isFrozen(derived.plan);
    const before = isFrozen && last?.basis === basis && last.lengths === lengths ? last : undefined;
    const isLevelKept = before?.levels === levels;
    const say = wordingFor(lengths);
    let looked: Found<S>['lookedAt'][number] = 'nothing';
    const lookAround = <T>(at: T): T => {
      looked = 'more';
      return at;
    };
    const context: CheckContext = {
      basis,
      lengths,
      say,
      get levels() {
        if (looked === 'nothing') looked = 'levels';
        return levels;
      },
      get derived() {
        return lookAround(derived);
      },
      get design() {
        return lookAround(design);
      },
    };
    const subjects = spec.subjects(derived, design);
    // Copied whole and mended where something is new: plans have tens of thousands of subjects, and a drag touches few.
    const asked = before?.asked.slice(0, subjects.length) ?? [];
    const findings = before?.findings.slice(0, subjects.length) ?? [];
    const lookedAt = before?.lookedAt.slice(0, subjects.length) ?? [];
    for (let i = 0; i < subjects.length; i += 1) {
      const each = subjects[i];
      const isReusable = lookedAt[i] === 'nothing' || (lookedAt[i] === 'levels' && isLevelKept);
      if (!each || (isReusable && (asked[i] === each || isAlike(asked[i], each, SUBJECT_DEPTH)))) continue;
      looked = 'nothing';
      asked[i] = each;
      findings[i] = findingOf(spec, each, spec.check(each.subject, context));
      lookedAt[i] = looked;
    }
    if (isFrozen) last = { basis, levels, lengths, asked, findings, lookedAt };
    return findings;
  };
  return { id: spec.id, title: spec.title, measure: spec.measure, basis: spec.basis, limitKeys: spec.limitKeys ?? [], run };
}

/** Runs rules over a derived plan; gravest findings first, then in catalogue order. */
export function runRules(rules: readonly Rule[], derived: Derived, design: Design): Finding[] {
  const all = rules.flatMap((rule) => rule.run(derived, design));
  return VERDICTS.flatMap((verdict) => all.filter((finding) => finding.verdict === verdict));
}

/** Answer of a check that lacks something. */
export const notChecked = (because: string, place?: Place, cure?: Cure): Answer => ({ kind: 'not-checked', because, place, cure });

/** A figure of the unit's manual, or the answer to give while it is blank. */
export function limitOrBlank(profile: UnitProfile | undefined, key: LimitKey): { limit: SourcedLimit } | { limit: undefined; blank: Answer } {
  const limit = profile?.limits[key];
  if (limit) return { limit };
  const { label } = LIMIT_CATALOGUE[key];
  return {
    limit: undefined,
    blank: notChecked(profile ? `“${label}” is blank in the unit profile “${profile.name}”.` : 'the network has no unit profile.'),
  };
}

/** Figures of an "at least" comparison; float noise up to `slack` is no fault. */
export const atLeast = (measured: number, { value, source }: SourcedLimit, slack: number) => ({
  kind: 'judged' as const,
  measured,
  limit: value,
  limitSource: source,
  margin: measured - value,
  isKept: measured - value >= -slack,
});

/** Figures of an "at most" comparison; float noise up to `slack` is no fault. */
export const atMost = (measured: number, { value, source }: SourcedLimit, slack: number) => ({
  kind: 'judged' as const,
  measured,
  limit: value,
  limitSource: source,
  margin: value - measured,
  isKept: value - measured >= -slack,
});
