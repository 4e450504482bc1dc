import { extname } from 'node:path';
import type { ImportReport, KeptAsset } from '#shared/host/contract';
import { LARGEST_UNDERLAY_bytes } from '#shared/underlay/drawing';
import { type AssetStore, sha256Of } from './asset-store.ts';
import { HostProblem, asHostProblem } from './host-problem.ts';
import type { Jobs } from './jobs.ts';

/** A floor plan that was read: what it is, and its drawing packed. */
export interface UnderlayReading {
  readonly report: ImportReport;
  readonly packed: Uint8Array;
}

const KNOWN_ENDINGS = ['.dxf', '.pdf', '.svg', '.png', '.jpg', '.jpeg'];

/** Name of an asset inside plan files: by its content, so that the same floor plan has one name everywhere. */
const assetFileOf = (name: string, sha256: string): string => {
  const ending = extname(name).toLowerCase();
  return `${sha256.slice(0, 16)}${KNOWN_ENDINGS.includes(ending) ? ending : '.bin'}`;
};

/** Starts reading one page of a floor plan off the main thread. */
export function startReading(jobs: Jobs, bytes: Uint8Array, name: string, page: number): string {
  return jobs.start('reading', `Reading ${name}`, async (report, signal): Promise<UnderlayReading> => {
    const { startImport } = await import('./underlay/import-job.ts');
    signal.throwIfAborted();
    const reading = startImport(bytes, { name, page }, report);
    signal.addEventListener('abort', () => reading.cancel(), { once: true });
    return reading.result.catch((error: unknown) => {
      throw asHostProblem(error, name);
    });
  });
}

/** Keeps a floor plan and starts reading its first page. */
export async function importFloorPlan(assets: AssetStore, jobs: Jobs, name: string, bytes: Uint8Array): Promise<{ job: string; asset: KeptAsset }> {
  if (bytes.length === 0) throw new HostProblem('unreadable', 'The file is empty.', name, 'Ask for the floor plan again.');
  if (bytes.length > LARGEST_UNDERLAY_bytes) {
    throw new HostProblem('too-large', 'The file is larger than 200 MB.', name, 'Have the floor plan exported again with only the level that you need.');
  }
  const sha256 = sha256Of(bytes);
  await assets.keep(name, bytes);
  return { job: startReading(jobs, bytes, name, 1), asset: { name, file: assetFileOf(name, sha256), sha256 } };
}
