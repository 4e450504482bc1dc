import type { Derived } from '../derived/derived.ts';
import { type Finding, VERDICTS } from './finding.ts';

/** One check of the catalogue. */
export interface Rule {
  /** Catalogue id, e.g. "N1"; never reused. */
  readonly id: string;
  readonly title: string;
  /** One finding for every subject, kept ones included. */
  run(derived: Derived): Finding[];
}

/** Runs rules over a derived plan; gravest findings first, then in catalogue order. */
export const runRules = (rules: readonly Rule[], derived: Derived): Finding[] =>
  rules
    .flatMap((rule) => rule.run(derived))
    .map((finding, order) => ({ finding, order }))
    .sort((a, b) => VERDICTS.indexOf(a.finding.verdict) - VERDICTS.indexOf(b.finding.verdict) || a.order - b.order)
    .map(({ finding }) => finding);
