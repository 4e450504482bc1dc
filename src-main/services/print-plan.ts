import type { Plan } from '#shared/model/plan';
import type { ReportProgress } from './jobs.ts';
import { packForSheets } from './plan-files.ts';
import type { PrintChoice } from './print-choice.ts';
import { printInThread } from './print-thread.ts';
import { readDrawings } from './read-drawings.ts';
import { readLogo } from './read-logo.ts';
import { readPhotos } from './read-photos.ts';

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
  const photos = await readPhotos(plan, readOnce, signal);
  const attached = await packForSheets(plan, readOnce);
  return printInThread({ plan, choice: { ...choice, logo, photos }, drawings, attached, now }, (done, doing) => report(READING + (1 - READING) * done, doing), signal);
}
