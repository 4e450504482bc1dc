import type { Quantity } from './input-units.ts';

/** Where a formula comes from: printed with every result. */
export interface Basis {
  /** The formula as the trade writes it. */
  readonly formula: string;
  /** Standard and clause, textbook, "common practice", or "memory" where it was not re-read. */
  readonly source: string;
  readonly caution?: string;
}

/** One input of a calculator. Its key in JSON is `name` and, for a quantity with a unit, `_unit`. */
export type TopicInput =
  | {
      readonly kind: 'number';
      readonly name: string;
      readonly quantity: Quantity;
      /** Range in base SI of the quantity, ends included. */
      readonly least: number;
      readonly greatest: number;
      /** Taken when the input is missing; without one the input must be given, unless `isOptional`. */
      readonly standard?: number;
      readonly isOptional?: boolean;
      readonly help: string;
    }
  | { readonly kind: 'numbers'; readonly name: string; readonly quantity: Quantity; readonly least: number; readonly greatest: number; readonly isOptional?: boolean; readonly help: string }
  | { readonly kind: 'choice'; readonly name: string; readonly choices: readonly string[]; readonly standard?: string; readonly isOptional?: boolean; readonly help: string }
  /** A list of objects, each with inputs of its own. */
  | { readonly kind: 'list'; readonly name: string; readonly inputs: readonly TopicInput[]; readonly help: string };

/** What a calculator is given: base SI by input name, without suffix; a missing optional input is absent. */
export type TopicValues = Readonly<Record<string, number | string | readonly number[] | readonly TopicValues[] | undefined>>;

/** What it answers: keys in base SI with their suffix, `_pct` for percentages. */
export type TopicResult = Readonly<Record<string, number | string | boolean | null | readonly number[]>>;

/** One calculator as the command line and the window offer it. */
export interface Topic {
  readonly id: string;
  readonly title: string;
  readonly inputs: readonly TopicInput[];
  /** Every key of the result with what it is. */
  readonly outputs: Readonly<Record<string, string>>;
  readonly bases: readonly Basis[];
  /** @throws {RangeError} naming the value that is out of range */
  run(values: TopicValues): TopicResult;
}
