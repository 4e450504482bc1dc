import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { FieldRecord } from '#shared/site/field-entries';
import { HostProblem } from '../host-problem.ts';
import type { FieldMessage } from './field-message.ts';

/** Longest time that reading may take [ms], and most memory for the thread's objects, and that the whole process may grow meanwhile [MB]. */
const LONGEST_ms = 60_000;
const MEMORY_MB = 700;
/** Between two looks at the clock and the memory [ms]. */
const LOOK_ms = 100;

/** Where the build puts the worker: beside the entries, so one folder up from a chunk of theirs. */
function builtFieldWorker(): string | undefined {
  const places = ['./field-worker.js', '../field-worker.js'].map((place) => fileURLToPath(new URL(place, import.meta.url)));
  return places.find((place) => existsSync(place));
}

const tooHeavy = (name: string): HostProblem => new HostProblem('too-large', 'The file takes too long or too much memory to read.', name, 'Hand over the pages of the field sheet alone, or its table as CSV.');

/**
 * Reads a filled form or table in a thread of its own with bounded memory and time: it comes from outside.
 * Run from sources, where there is no built worker, it reads in the calling thread.
 * @throws {HostProblem} anything that a file can do wrong
 */
export async function readFieldRecord(bytes: Uint8Array, name: string, workerFile = builtFieldWorker(), longest_ms = LONGEST_ms): Promise<FieldRecord> {
  if (workerFile === undefined) {
    const { readFieldFile } = await import('./read-field-file.ts');
    return readFieldFile(bytes, name);
  }
  const own = new Uint8Array(bytes);
  const worker = new Worker(workerFile, { workerData: { bytes: own, name }, transferList: [own.buffer], resourceLimits: { maxOldGenerationSizeMb: MEMORY_MB }, stdout: true, stderr: true });
  const started = performance.now();
  const before = process.memoryUsage.rss();
  let timer: NodeJS.Timeout | undefined;
  try {
    return await new Promise<FieldRecord>((resolve, reject) => {
      // Unpacked bytes lie outside the thread's own heap, which alone has a hard limit.
      timer = setInterval(() => {
        if (performance.now() - started > longest_ms || process.memoryUsage.rss() - before > MEMORY_MB * 1e6) reject(tooHeavy(name));
      }, Math.min(LOOK_ms, longest_ms));
      worker.on('message', (message: FieldMessage) => {
        if (message.kind === 'done') resolve(message.record);
        else reject(new HostProblem(message.problem.code, message.problem.what, message.problem.where, message.problem.remedy));
      });
      worker.on('error', () => reject(tooHeavy(name)));
      worker.on('exit', () => reject(new HostProblem('failed', 'Reading the file ended without a result.', name, 'Try again, or hand over its table as CSV.')));
    });
  } finally {
    clearInterval(timer);
    await worker.terminate();
  }
}
