import type { Plan, Underlay } from '#shared/model/plan';
import { asHostProblem } from './host-problem.ts';
import type { ReportProgress } from './jobs.ts';
import { packForSheets } from './plan-files.ts';
import type { PrintChoice } from './print-choice.ts';
import { printInThread } from './print-thread.ts';
import { readLogo } from './read-logo.ts';
import { startImport } from './underlay/import-job.ts';

/** Finds the bytes of an imported floor plan by its digest; undefined prints the sheet without it, and says so there. */
export type ReadAsset = (sha256: string) => Promise<{ name: string; bytes: Uint8Array } | undefined>;

/** Part of the whole work that reading the floor plans takes. */
const READING = 0.4;

/** Prints a plan's sheets as one PDF that carries the plan itself. The floor plans under it are read first, each page once. */
export async function printPlan(
  plan: Plan,
  choice: PrintChoice,
  readAsset: ReadAsset,
  now: Date,
  report: ReportProgress = () => undefined,
  signal: AbortSignal = new AbortController().signal,
): Promise<Uint8Array> {
  const found = new Map<string, ReturnType<ReadAsset>>();
  const readOnce: ReadAsset = (sha256) => {
    const asset = found.get(sha256) ?? readAsset(sha256);
    found.set(sha256, asset);
    return asset;
  };
  const drawings = await readDrawings(plan, readOnce, (done, doing) => report(READING * done, doing), signal);
  const logo = await readLogo(plan, readOnce, signal);
  const attached = await packForSheets(plan, readOnce);
  return printInThread({ plan, choice: { ...choice, logo }, drawings, attached, now }, (done, doing) => report(READING + (1 - READING) * done, doing), signal);
}

const isPrinted = ({ visible, opacity }: Underlay): boolean => visible && opacity > 0;

/** The drawings under a plan by underlay id, packed. */
async function readDrawings(plan: Plan, readAsset: ReadAsset, report: ReportProgress, signal: AbortSignal): Promise<Map<string, Uint8Array>> {
  const underlays = Object.values(plan.levels)
    .flatMap((level) => Object.values(level.underlays))
    .filter(isPrinted);
  const byPage = new Map<string, Uint8Array>();
  const drawings = new Map<string, Uint8Array>();
  for (const [index, underlay] of underlays.entries()) {
    const asset = plan.assets[underlay.asset];
    if (!asset) continue;
    const page = `${asset.sha256}/${underlay.page}`;
    const packed = byPage.get(page) ?? (await readPage(asset, underlay.page, readAsset, (done) => report((index + done) / underlays.length, `Reading ${asset.name}`), signal));
    if (!packed) continue;
    byPage.set(page, packed);
    drawings.set(underlay.id, packed);
  }
  return drawings;
}

async function readPage(asset: { name: string; sha256: string }, page: number, readAsset: ReadAsset, onProgress: (done: number) => void, signal: AbortSignal): Promise<Uint8Array | undefined> {
  const found = await readAsset(asset.sha256);
  if (!found) return undefined;
  const { name, bytes } = found;
  signal.throwIfAborted();
  const reading = startImport(bytes, { name, page }, onProgress);
  const stop = (): void => reading.cancel();
  signal.addEventListener('abort', stop, { once: true });
  try {
    return (await reading.result).packed;
  } catch (error) {
    throw asHostProblem(error, asset.name);
  } finally {
    signal.removeEventListener('abort', stop);
  }
}
