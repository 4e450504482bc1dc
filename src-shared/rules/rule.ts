import type { Design } from '../calculations/design/design.ts';
import type { Derived } from '../derived/derived.ts';
import type { Settings } from '../model/plan.ts';
import { LIMIT_CATALOGUE, type LimitKey } from '../profile/limit-catalogue.ts';
import type { SourcedLimit, UnitProfile } from '../profile/unit-profile.ts';
import { type Basis, type Cure, type Finding, type MeasureKind, type Place, VERDICTS } from './finding.ts';
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
  | { readonly kind: 'not-checked'; readonly because: string; readonly place?: Place }
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
      readonly place?: Place;
      readonly cure?: Cure;
    };

/** What every check may use besides its subject. */
export interface CheckContext {
  readonly derived: Derived;
  readonly design: Design;
  readonly lengths: Settings['lengths'];
  /** Prints figures in the plan's units. */
  readonly say: Wording;
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
  subjects(derived: Derived, design: Design): readonly { readonly subject: S; readonly ref: Finding['subject']; readonly name: string }[];
  check(subject: S, context: CheckContext): Answer;
}

/** Makes a rule of its written form; the runner adds verdict, basis and place in the list. */
export const defineRule = <S>(spec: RuleSpec<S>): Rule => ({
  id: spec.id,
  title: spec.title,
  measure: spec.measure,
  basis: spec.basis,
  limitKeys: spec.limitKeys ?? [],
  run(derived, design) {
    const { lengths } = derived.plan.settings;
    const context: CheckContext = { derived, design, lengths, say: wordingFor(lengths) };
    return spec.subjects(derived, design).map(({ subject, ref, name }): Finding => {
      const answer = spec.check(subject, context);
      const common = { rule: spec.id, title: spec.title, subject: ref, name, measure: spec.measure, basis: spec.basis };
      if (answer.kind === 'not-checked') {
        return { ...common, verdict: 'not-checked', text: `Not checked: ${answer.because}`, place: answer.place };
      }
      const { kind: _, isKept, severity, ...figures } = answer;
      return { ...common, ...figures, verdict: isKept ? 'ok' : (severity ?? spec.severity) };
    });
  },
});

/** Runs rules over a derived plan; gravest findings first, then in catalogue order. */
export const runRules = (rules: readonly Rule[], derived: Derived, design: Design): Finding[] =>
  rules
    .flatMap((rule) => rule.run(derived, design))
    .map((finding, order) => ({ finding, order }))
    .sort((a, b) => VERDICTS.indexOf(a.finding.verdict) - VERDICTS.indexOf(b.finding.verdict) || a.order - b.order)
    .map(({ finding }) => finding);

/** Answer of a check that lacks something. */
export const notChecked = (because: string, place?: Place): Answer => ({ kind: 'not-checked', because, place });

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
