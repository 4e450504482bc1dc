import { startHistory } from '#shared/commands/history';
import { type Evaluation, evaluate } from '#shared/evaluate';
import type { Plan } from '#shared/model/plan';
import { composeSheets } from '#shared/sheets/compose-sheets';
import { SAMPLE_STAMP } from '#shared/sheets/frame';
import { PRINT } from '#shared/sheets/print-ink';
import type { TextMark } from '#shared/sheets/marks';
import type { Mark, Sheet, SheetOptions } from '#shared/sheets/sheet';
import { type DemoName, buildDemo } from '../../src-main/demos/build-demo.ts';

const USUAL: SheetOptions = { paper: 'auto', scale: 'auto', set: 'submittal', printedAt: '2026-03-04 15:20' };

/** Sheets of a plan without its imported floor plan, printed at a fixed time. */
export const sheetsOf = (plan: Plan, options: Partial<SheetOptions> = {}): Sheet[] =>
  composeSheets(evaluate(plan), new Map(), { ...USUAL, ...options });

/** Sheets of a demo. */
export const demoSheets = async (name: DemoName, options: Partial<SheetOptions> = {}): Promise<Sheet[]> => sheetsOf((await buildDemo(name)).plan, options);

const evaluated = new Map<DemoName, Promise<Evaluation>>();
const composed = new Map<string, Promise<Sheet[]>>();

/** Sheets of a demo, composed once in a test file for the same options; what is the same for all sets is worked out once. */
export function composedDemo(name: DemoName, options: Partial<SheetOptions> = {}): Promise<Sheet[]> {
  const evaluation = evaluated.get(name) ?? buildDemo(name).then(({ plan }) => evaluate(startHistory(plan).present));
  evaluated.set(name, evaluation);
  const key = JSON.stringify([name, options]);
  const sheets = composed.get(key) ?? evaluation.then((known) => composeSheets(known, new Map(), { ...USUAL, ...options }));
  composed.set(key, sheets);
  return sheets;
}

/** Every mark of a sheet, those inside clips as well. */
export const allMarks = (marks: readonly Mark[]): Mark[] => marks.flatMap((mark) => (mark.kind === 'clip' ? [mark, ...allMarks(mark.marks)] : [mark]));

/** Every text of a sheet but the pale stamp that lies under all others. */
export const textsOf = ({ marks }: { readonly marks: readonly Mark[] }): TextMark[] =>
  allMarks(marks).filter((mark): mark is TextMark => mark.kind === 'text' && !isStamp(mark));

/** Whether a text is the large stamp under the drawing, not its framed twin in the title column. */
export const isStamp = (mark: Mark): boolean => mark.kind === 'text' && mark.text === SAMPLE_STAMP && mark.colour === PRINT.stamp;

/** Words of a sheet, one text a line. */
export const wordsOf = (sheet: { readonly marks: readonly Mark[] }): string[] => textsOf(sheet).map(({ text }) => text);
