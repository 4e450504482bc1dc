import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { startHistory } from '#shared/commands/history';
import type { Derived } from '#shared/derived/derived';
import { evaluate } from '#shared/evaluate';
import { fieldRooms } from '#shared/margins/field-room';
import type { Plan } from '#shared/model/plan';
import { type PrintedTolerances, judgeMeasurements } from '#shared/site/judge-measurements';
import { composeSheets } from '#shared/sheets/compose-sheets';
import { printedTolerances } from '#shared/sheets/field-tables';
import { decodeDrawing } from '#shared/underlay/encode-drawing';
import type { ReportProgress } from './jobs.ts';
import type { FieldRooms } from './kept-rooms.ts';
import type { PrintChoice } from './print-choice.ts';
import { printSheets } from './sheet-printer.ts';

/** Everything that printing a plan needs, in values that cross to another thread. */
export interface PrintOrder {
  readonly plan: Plan;
  readonly choice: PrintChoice;
  /** Floor plans under it by underlay id, as `encodeDrawing` packs them. */
  readonly drawings: ReadonlyMap<string, Uint8Array>;
  /** The plan file that the sheets carry. */
  readonly attached: Uint8Array;
  readonly now: Date;
  /** How far its nozzles may be moved, where that is known from an earlier print; else it is worked out. */
  readonly rooms?: FieldRooms;
}

/** Date and time as printed on a sheet, in local time: "2026-03-04 15:20". */
export function printedAtText(at: Date): string {
  const two = (figure: number): string => String(figure).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** What every measured dimension comes to, in words; nothing is worked out while none was measured. */
function siteAnswers({ plan }: Derived, printed: PrintedTolerances): ReadonlyMap<string, string> {
  if (Object.keys(plan.siteRecord.measurements).length === 0) return new Map();
  return new Map(judgeMeasurements(plan, plan.siteRecord.measurements, printed).rows.filter(({ measurement }) => measurement !== null).map(({ dimension, words }) => [dimension.id, words]));
}

const nextTurn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/**
 * Checks a plan, composes its sheets and prints them as one PDF, in the calling thread.
 * @param keep  told how far the nozzles may be moved, where that had to be worked out
 */
export async function composeAndPrint({ plan, choice, drawings, attached, now, rooms: known }: PrintOrder, report: ReportProgress, signal?: AbortSignal, keep: (rooms: FieldRooms) => void = () => undefined): Promise<Uint8Array> {
  report(0, 'Checking the layout');
  // Frozen as in the window, so that trials of places look only at what they touch.
  const evaluation = evaluate(startHistory(plan).present, workedDischarge());
  report(0.2, 'Looking how far nozzles may be moved');
  const unpacked = new Map([...drawings].map(([id, packed]) => [id, decodeDrawing(packed)]));
  const rooms = known ?? fieldRooms(evaluation.derived, (done, all) => report(0.2 + (0.15 * done) / all, `Looking how far nozzle ${done + 1} of ${all} may be moved`));
  if (!known) keep(rooms);
  report(0.35, 'Composing sheets');
  const sheets = composeSheets(evaluation, unpacked, { ...choice, rooms, answers: siteAnswers(evaluation.derived, printedTolerances(evaluation.derived, rooms)), printedAt: printedAtText(now) });
  const tell = (done: number): void => report(0.5 + (0.5 * done) / sheets.length, `Printing sheet ${Math.min(done + 1, sheets.length)} of ${sheets.length}`);
  tell(0);
  return printSheets(sheets, { title: plan.info.project || 'Plan', createdAt: now, plan: attached }, async (done) => {
    tell(done);
    // Whoever prints in its own thread is answered between two sheets.
    await nextTurn();
    signal?.throwIfAborted();
  });
}
