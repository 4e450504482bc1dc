import { evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { composeSheets } from '#shared/sheets/compose-sheets';
import { SAMPLE_STAMP } from '#shared/sheets/frame';
import { PRINT } from '#shared/sheets/print-ink';
import type { TextMark } from '#shared/sheets/marks';
import type { Mark, Sheet, SheetOptions } from '#shared/sheets/sheet';
import { type DemoName, buildDemo } from '../../src-main/demos/build-demo.ts';

/** Sheets of a plan without its imported floor plan, printed at a fixed time. */
export const sheetsOf = (plan: Plan, options: Partial<SheetOptions> = {}): Sheet[] =>
  composeSheets(evaluate(plan), new Map(), { paper: 'auto', scale: 'auto', set: 'submittal', printedAt: '2026-03-04 15:20', ...options });

/** Sheets of a demo. */
export const demoSheets = async (name: DemoName, options: Partial<SheetOptions> = {}): Promise<Sheet[]> => sheetsOf((await buildDemo(name)).plan, options);

/** Every mark of a sheet, those inside clips as well. */
export const allMarks = (marks: readonly Mark[]): Mark[] => marks.flatMap((mark) => (mark.kind === 'clip' ? [mark, ...allMarks(mark.marks)] : [mark]));

/** Every text of a sheet but the pale stamp that lies under all others. */
export const textsOf = ({ marks }: { readonly marks: readonly Mark[] }): TextMark[] =>
  allMarks(marks).filter((mark): mark is TextMark => mark.kind === 'text' && !isStamp(mark));

/** Whether a text is the large stamp under the drawing, not its framed twin in the title column. */
export const isStamp = (mark: Mark): boolean => mark.kind === 'text' && mark.text === SAMPLE_STAMP && mark.colour === PRINT.stamp;

/** Words of a sheet, one text a line. */
export const wordsOf = (sheet: { readonly marks: readonly Mark[] }): string[] => textsOf(sheet).map(({ text }) => text);
