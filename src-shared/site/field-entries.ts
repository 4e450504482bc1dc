/**
 * What is filled in for a dimension or for a hold point; `planned` is what the form said was planned [mm, a plain number],
 * `form` which form the row is of where every row says so itself.
 */
export const FIELD_CELLS = ['measured', 'by', 'when', 'instrument', 'reason', 'planned', 'done', 'witness', 'form'] as const;
export type FieldCell = (typeof FIELD_CELLS)[number];

/** One row of a filled form or table, as it was written and before anybody judged it. */
export interface FieldEntry {
  /** Id of a field dimension ("net-1/nozzle-3/first") or of a hold point ("H3"), or the printed name where only that was given. */
  readonly id: string;
  /** Where in the file, e.g. "line 12" or "sheet 3". */
  readonly where: string;
  readonly cells: Readonly<Partial<Record<FieldCell, string>>>;
}

/** What a form or table says of the plan that it was printed from; null: it does not say. */
export interface FieldFormAbout {
  readonly source: 'pdf' | 'csv';
  readonly project: string | null;
  readonly revision: string | null;
  /** `fieldDigest` of that plan. */
  readonly digest: string | null;
  /** How many dimensions it was printed with, to find lost pages. */
  readonly count: number | null;
  /** How the file was read where it could be doubted, in sentences: its encoding, its decimal sign. */
  readonly remarks: readonly string[];
}

/** A file that came back from the site, as the host reads it. */
export interface FieldRecord {
  readonly rows: readonly FieldEntry[];
  readonly about: FieldFormAbout;
}

/**
 * `taken`: can be applied. `unchanged`: as the plan's site record has it already. `empty`: nothing was written.
 * `implausible`: understood, but so far off that it looks like another unit or a slip. `other-revision`: the dimension
 * was planned otherwise on that form. `twice`: two rows say two values. `missing`: the file has no such row.
 */
export type FieldRowKind = 'taken' | 'unchanged' | 'empty' | 'not-understood' | 'implausible' | 'unknown' | 'twice' | 'other-revision' | 'other-plan' | 'missing';

/** Answer to one measured dimension. Nothing is applied by it. */
export interface FieldRowAnswer {
  readonly kind: FieldRowKind;
  /** Id of the dimension, or what stood in its place. */
  readonly id: string;
  /** As printed, e.g. "N1 a". */
  readonly name: string;
  readonly where: string;
  /** What was written for the measured value. */
  readonly written: string;
  /** How it was understood [m]; null: it was not. Given for what can be taken after all when the user says so: implausible, other revision. */
  readonly value_m: number | null;
  readonly planned_m: number | null;
  /** What the plan's site record holds now [m]. */
  readonly kept_m: number | null;
  readonly by: string;
  readonly at: string;
  readonly instrument: string;
  readonly reason: string;
  /** A sentence for the user: what, and what to do. */
  readonly words: string;
}

/** Answer to one hold point. */
export interface FieldCheckAnswer {
  readonly kind: Exclude<FieldRowKind, 'implausible'>;
  readonly id: string;
  readonly where: string;
  readonly done: boolean;
  readonly by: string;
  readonly witness: string;
  readonly at: string;
  readonly words: string;
}

/** Whether the file is of this plan: as it is now, of another state of it, of another plan, or it does not say. */
export type FieldMatch = 'same' | 'other-revision' | 'other-plan' | 'not-told';

/** All answers to one file. */
export interface FieldReading {
  readonly match: FieldMatch;
  /** About the file as a whole, in sentences. */
  readonly remarks: readonly string[];
  /** In the order of the plan, what is unknown to it last. */
  readonly rows: readonly FieldRowAnswer[];
  readonly checks: readonly FieldCheckAnswer[];
}
