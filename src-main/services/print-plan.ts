import type { Plan, Underlay } from '#shared/model/plan';
import type { UnderlayDrawing } from '#shared/underlay/drawing';
import { asHostProblem } from './host-problem.ts';
import type { ReportProgress } from './jobs.ts';
import type { PrintChoice } from './print-choice.ts';

/** Finds the bytes of an imported floor plan by its digest. */
export type ReadAsset = (sha256: string) => Promise<{ name: string; bytes: Uint8Array }>;

/** Date and time as printed on a sheet, in local time: "2026-03-04 15:20". */
export function printedAtText(at: Date): string {
  const two = (figure: number): string => String(figure).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** Prints a plan's sheets as one PDF. The floor plans under it are read first, each page once. */
export async function printPlan(
  plan: Plan,
  choice: PrintChoice,
  readAsset: ReadAsset,
  now: Date,
  report: ReportProgress = () => undefined,
  signal: AbortSignal = new AbortController().signal,
): Promise<Uint8Array> {
  // Loaded when first needed: the window is up sooner without them.
  const [{ evaluate }, { composeSheets }, { printSheets }] = await Promise.all([
    import('#shared/evaluate'),
    import('#shared/sheets/compose-sheets'),
    import('./sheet-printer.ts'),
  ]);
  const drawings = await readDrawings(plan, readAsset, report, signal);
  signal.throwIfAborted();
  report(0.6, 'Checking the layout');
  const evaluation = evaluate(plan);
  signal.throwIfAborted();
  report(0.7, 'Composing sheets');
  const sheets = composeSheets(evaluation, drawings, { ...choice, printedAt: printedAtText(now) });
  signal.throwIfAborted();
  report(0.8, `Printing ${sheets.length} sheets`);
  return printSheets(sheets, { title: plan.info.project || 'Plan', createdAt: now });
}

const isPrinted = ({ visible, opacity }: Underlay): boolean => visible && opacity > 0;

async function readDrawings(plan: Plan, readAsset: ReadAsset, report: ReportProgress, signal: AbortSignal): Promise<Map<string, UnderlayDrawing>> {
  const [{ startImport }, { decodeDrawing }] = await Promise.all([import('./underlay/import-job.ts'), import('#shared/underlay/encode-drawing')]);
  const underlays = Object.values(plan.levels).flatMap((level) => Object.values(level.underlays)).filter(isPrinted);
  const byPage = new Map<string, UnderlayDrawing>();
  const drawings = new Map<string, UnderlayDrawing>();
  for (const [index, underlay] of underlays.entries()) {
    const asset = plan.assets[underlay.asset];
    if (!asset) continue;
    const page = `${asset.sha256}/${underlay.page}`;
    let drawing = byPage.get(page);
    if (!drawing) {
      const { name, bytes } = await readAsset(asset.sha256);
      const reading = startImport(bytes, { name, page: underlay.page }, (done) => report((0.6 * (index + done)) / underlays.length, `Reading ${asset.name}`));
      const stop = (): void => reading.cancel();
      signal.addEventListener('abort', stop, { once: true });
      const { packed } = await reading.result
        .catch((error: unknown) => {
          throw asHostProblem(error, asset.name);
        })
        .finally(() => signal.removeEventListener('abort', stop));
      drawing = decodeDrawing(packed);
      byPage.set(page, drawing);
    }
    drawings.set(underlay.id, drawing);
  }
  return drawings;
}
