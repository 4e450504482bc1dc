import type { Worked } from '../calculations/design/worked.ts';
import type { LogEntry } from '../model/plan.ts';

/** What a reading must lie between, in the unit of the log; null: no bound that way. Both ends are kept. */
export interface ReadingBounds {
  readonly least: number | null;
  readonly most: number | null;
  /** The least itself is not enough: nothing may not pass as something. */
  readonly isOverLeast?: boolean;
}

/** A reading that a hold point stands on. */
export interface ReadingNeed {
  readonly point: string;
  readonly kind: LogEntry['kind'];
  /** Key of what it is taken of; blank: the whole job. */
  readonly about: string;
  /** The same in words. */
  readonly name: string;
  /** What it must be, before it is read; without a full stop. */
  readonly asks: string;
  readonly source: string;
  /** What it must lie between, or why that is not known; null: it is only looked at. */
  bounds(entry: LogEntry): Worked<ReadingBounds> | null;
  /** Kinds of the same circuit that must not be read after it: it would be old. */
  readonly after: readonly LogEntry['kind'][];
  /** Kind of the same circuit that must have been read before it. */
  readonly proved: LogEntry['kind'] | null;
  /** What to do when it turns out wrong: a sentence. */
  readonly remedy: string;
}
