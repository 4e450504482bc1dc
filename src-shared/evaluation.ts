import type { Design } from './calculations/design/design.ts';
import type { Derived } from './derived/derived.ts';
import type { Finding } from './rules/finding.ts';
import type { Findings } from './rules/findings.ts';
import type { LapsedWaiver } from './rules/waive.ts';

/** A plan with all that follows from it, every sum, and what the rules say. */
export interface Evaluation {
  readonly derived: Derived;
  readonly design: Design;
  /** What the rules say, for whoever does not need all of it in one list. */
  readonly found: Findings;
  /** Every answer of every rule, kept ones included, gravest first: put together when it is read. */
  readonly findings: readonly Finding[];
  /** Acceptances of findings that no longer hold. */
  readonly lapsed: readonly LapsedWaiver[];
  /** Some findings are those from before the last change, and are being asked anew. */
  readonly isStale: boolean;
}

/** Puts an evaluation together. */
export const evaluationWith = (derived: Derived, design: Design, found: Findings): Evaluation => ({
  derived,
  design,
  found,
  lapsed: found.lapsed,
  isStale: found.isStale,
  get findings() {
    return found.all;
  },
});
