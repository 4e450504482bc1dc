import { parentPort, workerData } from 'node:worker_threads';
import { problemOf } from '../host-problem.ts';
import type { FieldMessage } from './field-message.ts';
import { readFieldFile } from './read-field-file.ts';

const tell = (message: FieldMessage): void => parentPort?.postMessage(message);
const { bytes, name } = workerData as { readonly bytes: Uint8Array; readonly name: string };

try {
  tell({ kind: 'done', record: await readFieldFile(bytes, name) });
} catch (error) {
  tell({ kind: 'problem', problem: problemOf(error, name) });
}
