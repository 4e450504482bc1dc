/** A number that a spreadsheet can add up, shown with so many decimals. */
export interface NumberCell {
  readonly number: number;
  readonly decimals: number;
}

/** Words, a number, or nothing. Words stay words whatever they begin with. */
export type WorkbookCell = string | NumberCell | null;

export interface WorkbookColumn {
  readonly head: string;
  /** In characters of the ordinary type. */
  readonly width: number;
}

/** One table on a sheet of its own. */
export interface WorkbookSheet {
  /** At most 31 characters, without \ / ? * [ ] and colon. */
  readonly name: string;
  readonly title: string;
  /** Below the title, above the head: what must be known before a figure is read. */
  readonly warnings: readonly string[];
  readonly columns: readonly WorkbookColumn[];
  readonly rows: readonly (readonly WorkbookCell[])[];
  /** Below the table, each a sentence. */
  readonly notes: readonly string[];
}

/** Tables that a spreadsheet program opens. */
export interface Workbook {
  readonly sheets: readonly WorkbookSheet[];
}

/** A number as a cell. */
export const figure = (number: number, decimals: number): NumberCell => ({ number, decimals });
