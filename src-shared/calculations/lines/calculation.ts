import type { Ref } from '../../model/plan.ts';

/** The calculation sheets, in the order in which a design needs them. */
export const CALCULATION_TOPICS = ['agent', 'people', 'discharge', 'vent', 'hold', 'strength', 'supports', 'supervision', 'wiring', 'battery'] as const;
export type CalculationTopic = (typeof CALCULATION_TOPICS)[number];

/** One line of a calculation as it is shown and printed: formula, the numbers in it, the result, where it comes from. */
export interface CalculationLine {
  /** What it is: "Mass needed". */
  readonly label: string;
  /** As the trade writes it: "m = (V/s)·ln(100/(100 − C))"; empty for a plain input. */
  readonly formula: string;
  /** The same with its numbers: "(39.87/0.8524)·ln(100/59.7)"; empty for a plain input. */
  readonly numbers: string;
  /** With its unit, in the plan's units: "53.2 lb". */
  readonly result: string;
  readonly source: string;
  /** A result that the reader looks for first. */
  readonly isMain?: boolean;
}

/** One calculation about one thing. */
export interface Calculation {
  readonly topic: CalculationTopic;
  /** "Agent quantity". */
  readonly title: string;
  readonly subject: Ref;
  /** "Signal hut". */
  readonly subjectName: string;
  readonly lines: readonly CalculationLine[];
  /** Why it is not, or not wholly, worked out: each a sentence. */
  readonly missing: readonly string[];
  /** Cautions where a number can hurt somebody, each once. */
  readonly cautions: readonly string[];
  /** The last result still stands while a new one is worked out. */
  readonly isStale: boolean;
}

/** Stands under every calculation, on screen and on paper. */
export const PRELIMINARY = 'Preliminary. The listing and the unit’s own manual govern; the adopted code and licensed practice decide.';
