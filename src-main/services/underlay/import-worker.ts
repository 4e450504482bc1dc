import { parentPort, workerData } from 'node:worker_threads';
import type { ImportMessage } from './import-message.ts';
import { type ImportOptions, readAndPack, underlayProblemOf } from './read-and-pack.ts';

/** Time between two reports of progress [ms]. */
const REPORT_EVERY_ms = 60;

/** What the thread is started with. */
interface WorkerInput {
  readonly bytes: Uint8Array;
  readonly options: ImportOptions;
}

async function run(port: NonNullable<typeof parentPort>, { bytes, options }: WorkerInput): Promise<void> {
  const tell = (message: ImportMessage, transfer: ArrayBuffer[] = []): void => port.postMessage(message, transfer);
  let last = 0;
  tell({ kind: 'progress', done: 0, doing: 'Reading the file' });
  try {
    const { report, packed } = await readAndPack(bytes, options, (done, doing) => {
      const now = performance.now();
      if (now - last < REPORT_EVERY_ms) return;
      last = now;
      tell({ kind: 'progress', done, doing });
    });
    const { buffer } = packed;
    tell({ kind: 'done', report, packed }, buffer instanceof ArrayBuffer ? [buffer] : []);
  } catch (error) {
    const { what, where, remedy } = underlayProblemOf(error, options.name);
    tell({ kind: 'problem', what, where, remedy });
  }
}

if (parentPort) void run(parentPort, workerData);
