import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Plan, Ref } from '../../model/plan.ts';
import type { UnitProfile } from '../../profile/unit-profile.ts';
import type { LengthSystem } from '../../units/length-text.ts';
import type { Worked } from '../design/worked.ts';
import type { Basis } from '../topic.ts';
import type { Calculation, CalculationLine, CalculationTopic } from './calculation.ts';

/** What every calculation rests on besides its sums; nothing in it changes while pipe is dragged. */
export interface LineContext {
  readonly levels: Plan['levels'];
  /** Unit profile of each network, by the network's id. */
  readonly profiles: Readonly<Record<string, UnitProfile | undefined>>;
  readonly basis: BasisOfDesign;
  readonly lengths: LengthSystem;
}

/** Sources of what is entered, as they are printed. */
export const PLAN = 'plan';
export const CHOSEN = 'basis of design';
export const ARITHMETIC = 'arithmetic';

/** A formula that the program itself states, with its source. */
export const ownBasis = (formula: string, source: string): Basis => ({ formula, source });

/** A basis whose caution does not concern what it is used for. */
export const withoutCaution = ({ formula, source }: Basis): Basis => ({ formula, source });

/** One of several formulas that a basis holds, in their order. */
export const partOf = (basis: Basis, index: number): Basis => ({ ...basis, formula: basis.formula.split(/; +/)[index] ?? basis.formula });

/** A calculation while its lines are gathered. */
export class Draft {
  readonly #of: Pick<Calculation, 'topic' | 'title' | 'subject' | 'subjectName'>;
  readonly #lines: CalculationLine[] = [];
  /** What is missing because of each reason. */
  readonly #missing = new Map<string, string[]>();
  readonly #cautions = new Set<string>();
  #isStale = false;

  constructor(topic: CalculationTopic, title: string, subject: Ref, subjectName: string) {
    this.#of = { topic, title, subject, subjectName };
  }

  /** A figure that is entered, chosen or worked out elsewhere. */
  given(label: string, result: string, source: string): void {
    this.#lines.push({ label, formula: '', numbers: '', result, source });
  }

  /** A step: the formula of its basis, the same with numbers, and what comes out. */
  step(label: string, basis: Basis, numbers: string, result: string): void {
    this.#add({ label, formula: basis.formula, numbers, result, source: basis.source }, basis);
  }

  /** A step whose result the reader looks for first. */
  main(label: string, basis: Basis, numbers: string, result: string): void {
    this.#add({ label, formula: basis.formula, numbers, result, source: basis.source, isMain: true }, basis);
  }

  #add(line: CalculationLine, { caution }: Basis): void {
    this.#lines.push(line);
    if (caution) this.caution(caution);
  }

  caution(words: string): void {
    this.#cautions.add(words);
  }

  stale(): void {
    this.#isStale = true;
  }

  /** Says what could not be worked out and why. */
  lacks(what: string, because: string): void {
    const names = this.#missing.get(because);
    if (names) names.push(what);
    else this.#missing.set(because, [what]);
  }

  /** Hands over sums that are known; says why where they are not. */
  with<T>(what: string, group: Worked<T>, use: (sums: T) => void): void {
    if (group.isKnown) use(group.sums);
    else this.lacks(what, group.because);
  }

  done(): Calculation {
    return {
      ...this.#of,
      lines: this.#lines,
      missing: [...this.#missing].map(([because, names]) => missingSentence(names, because)),
      cautions: [...this.#cautions],
      isStale: this.#isStale,
    };
  }
}

const ended = (words: string): string => (/[.!?]$/.test(words) ? words : `${words}.`);

const missingSentence = (names: readonly string[], because: string): string => ended(`Not worked out (${names.join(', ')}): ${because.trim()}`);
