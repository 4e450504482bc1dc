import type { Design } from '../calculations/design/design.ts';
import type { Derived } from '../derived/derived.ts';
import type { BasisOfDesign } from '../model/basis-of-design.ts';
import type { Plan, Settings } from '../model/plan.ts';
import { LIMIT_CATALOGUE, type LimitKey } from '../profile/limit-catalogue.ts';
import type { SourcedLimit, UnitProfile } from '../profile/unit-profile.ts';
import { askRule } from './ask-rule.ts';
import type { Basis, Cure, Finding, FindingInput, MeasureKind, Place } from './finding.ts';
import type { RuleFindings } from './rule-findings.ts';
import { type SubjectsOf, perPlan } from './subjects.ts';
import type { Wording } from './wording.ts';

/** One check of the catalogue. */
export interface Rule {
  /** Catalogue id, e.g. "N1"; never reused. */
  readonly id: string;
  readonly title: string;
  readonly measure: MeasureKind;
  readonly basis: Basis;
  /** Figures of the manual without which it cannot judge. */
  readonly limitKeys: readonly LimitKey[];
  /** Comes last when time is short. */
  readonly isHeavy: boolean;
  /**
   * Asks about every subject, or only about those that have changed.
   * @param before    what it found last, of this plan or of any other
   * @param isTimeUp  once it says so the rest stays as it was, marked stale, until it is asked again
   */
  ask(derived: Derived, design: Design, before?: RuleFindings, isTimeUp?: () => boolean): RuleFindings;
  /** One finding for every subject, kept ones included, from nothing. */
  run(derived: Derived, design: Design): Finding[];
}

/** Looks for a cure once somebody reads it, where that takes long. */
export type CureFinder = () => Cure | undefined;

/** What a rule says about one subject. */
export type Answer =
  | { readonly kind: 'not-checked'; readonly because: string; readonly place?: Place; readonly cure?: Cure | CureFinder }
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
      readonly cure?: Cure | CureFinder;
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
  /** Takes long: comes last when time is short. */
  readonly isHeavy?: boolean;
  /** Everything that it is asked about, each with its name for the user. A plain function is asked anew at every change. */
  readonly subjects: SubjectsOf<S> | ((derived: Derived, design: Design) => readonly Asked<S>[]);
  check(subject: S, context: CheckContext): Answer;
}

const never = (): boolean => false;

/** Makes a rule of its written form; the runner adds verdict and basis, and keeps what a change does not touch. */
export function defineRule<S>(spec: RuleSpec<S>): Rule {
  const { id, title, measure, basis, limitKeys = [], isHeavy = false } = spec;
  const source = typeof spec.subjects === 'function' ? perPlan(spec.subjects) : spec.subjects;
  const ask: Rule['ask'] = (derived, design, before, isTimeUp = never) =>
    // A plan that is not frozen could be changed in place: nothing of it is kept.
    askRule(spec, source, derived, design, Object.isFrozen(derived.plan) ? before : undefined, isTimeUp);
  return { id, title, measure, basis, limitKeys, isHeavy, ask, run: (derived, design) => [...ask(derived, design).all] };
}

/** Answer of a check that lacks something. */
export const notChecked = (because: string, place?: Place, cure?: Cure | CureFinder): Answer => ({ kind: 'not-checked', because, place, cure });

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
