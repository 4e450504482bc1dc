import { parentPort, workerData } from 'node:worker_threads';
import { type PrintOrder, composeAndPrint } from './compose-and-print.ts';
import type { PrintMessage } from './print-message.ts';

const tell = (message: PrintMessage): void => parentPort?.postMessage(message);

try {
  const pdf = await composeAndPrint(workerData as PrintOrder, (done, doing) => tell({ kind: 'progress', done, doing }), undefined, (rooms) => tell({ kind: 'rooms', rooms }));
  tell({ kind: 'done', pdf });
} catch (error) {
  tell({ kind: 'failed', message: error instanceof Error ? error.message : String(error) });
}
