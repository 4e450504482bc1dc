import type { Plan, Underlay } from '#shared/model/plan';
import { asHostProblem } from './host-problem.ts';
import type { ReportProgress } from './jobs.ts';
import type { ReadAsset } from './print-plan.ts';
import { startImport } from './underlay/import-job.ts';

const isPrinted = ({ visible, opacity }: Underlay): boolean => visible && opacity > 0;

/** The drawings under a plan by underlay id, packed as `encodeDrawing` packs them; each page is read once. */
export async function readDrawings(plan: Plan, readAsset: ReadAsset, report: ReportProgress, signal: AbortSignal): Promise<Map<string, Uint8Array>> {
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
