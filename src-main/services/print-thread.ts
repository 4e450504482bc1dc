import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { PrintOrder } from './compose-and-print.ts';
import type { ReportProgress } from './jobs.ts';
import { keepRooms, keptRooms, layoutDigest } from './kept-rooms.ts';
import type { PrintMessage } from './print-message.ts';

/** Where the build puts the worker: beside the entries, so one folder up from a chunk of theirs. */
function builtPrintWorker(): string | undefined {
  const places = ['./print-worker.js', '../print-worker.js'].map((place) => fileURLToPath(new URL(place, import.meta.url)));
  return places.find((place) => existsSync(place));
}

/**
 * Prints in a thread of its own, so that the windows are answered meanwhile and a cancelled print ends at once.
 * Run from sources, where there is no built worker, it prints in the calling thread.
 * @throws {Error} the print failed or was cancelled
 */
export async function printInThread(asked: PrintOrder, report: ReportProgress, signal: AbortSignal, workerFile = builtPrintWorker()): Promise<Uint8Array> {
  signal.throwIfAborted();
  const digest = layoutDigest(asked.plan);
  const rooms = keptRooms(digest);
  const order: PrintOrder = rooms ? { ...asked, rooms } : asked;
  if (workerFile === undefined) {
    const { composeAndPrint } = await import('./compose-and-print.ts');
    return composeAndPrint(order, report, signal, (found) => keepRooms(digest, found));
  }
  const worker = new Worker(workerFile, { workerData: order });
  const stop = (): void => void worker.terminate();
  signal.addEventListener('abort', stop, { once: true });
  try {
    return await new Promise<Uint8Array>((resolve, reject) => {
      worker.on('message', (message: PrintMessage) => {
        if (message.kind === 'progress') report(message.done, message.doing);
        else if (message.kind === 'rooms') keepRooms(digest, message.rooms);
        else if (message.kind === 'done') resolve(message.pdf);
        else reject(new Error(message.message));
      });
      worker.on('error', reject);
      worker.on('exit', () => reject(new Error('The printing thread ended without a result.')));
    });
  } finally {
    signal.removeEventListener('abort', stop);
    await worker.terminate();
  }
}
