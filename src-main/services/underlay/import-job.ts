import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { type ReadProgress, UnderlayProblem } from '#shared/underlay/drawing';
import type { ImportMessage } from './import-message.ts';
import { type ImportOptions, type Imported, readAndPack, underlayProblemOf } from './read-and-pack.ts';

/** A floor plan being read. `result` rejects with an `UnderlayProblem`. */
export interface ImportJob {
  readonly result: Promise<Imported>;
  cancel(): void;
}

/** How the reading thread is run; the defaults are meant for use, the rest for trying. */
export interface ImportLimits {
  /** Built worker; without one the file is read in the calling thread. */
  readonly workerFile?: string | undefined;
  /** Longest time without any progress [ms]. */
  readonly stall_ms?: number;
  /** Longest time in all [ms]. */
  readonly longest_ms?: number;
  /** Most memory for the thread's objects, and most that the whole process may grow meanwhile [MB]. */
  readonly memory_MB?: number;
}

const STALL_ms = 5000;
/** A thread that has not spoken yet is still being started: a busy machine may need long for that. */
const START_ms = 30_000;
/** A look at the clock that comes this late means that this thread was held up. */
const DEAF_ms = 1000;
const LONGEST_ms = 180_000;
const MEMORY_MB = 900;

/** Where the build puts the worker: beside the entries, so one folder up from a chunk of theirs. */
function builtWorkerFile(): string | undefined {
  const places = ['./import-worker.js', '../import-worker.js'].map((place) => fileURLToPath(new URL(place, import.meta.url)));
  return places.find((place) => existsSync(place));
}

/**
 * Reads a floor plan in a thread of its own with bounded memory and time.
 * Run from sources, where there is no built worker, it reads in the calling thread.
 */
export function startImport(bytes: Uint8Array, options: ImportOptions, onProgress: ReadProgress, limits: ImportLimits = {}): ImportJob {
  const workerFile = 'workerFile' in limits ? limits.workerFile : builtWorkerFile();
  return workerFile === undefined ? importHere(bytes, options, onProgress) : importInThread(workerFile, bytes, options, onProgress, limits);
}

const cancelled = (name: string): UnderlayProblem => new UnderlayProblem('Reading the floor plan was cancelled.', name, 'Start it again if it is wanted after all.');

const needsTooMuchMemory = (name: string): UnderlayProblem =>
  new UnderlayProblem('The floor plan needs more memory than it may take.', name, 'Export only the floor you need, or a scan at 200 dots per inch, and import that.');

const nextTurn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

function importHere(bytes: Uint8Array, options: ImportOptions, onProgress: ReadProgress): ImportJob {
  let isCancelled = false;
  const progress: ReadProgress = (done, doing) => {
    if (isCancelled) throw cancelled(options.name);
    onProgress(done, doing);
  };
  // The caller has the job in hand before the reading begins.
  const result = nextTurn().then(() => readAndPack(bytes, options, progress)).catch((error: unknown) => {
    throw underlayProblemOf(error, options.name);
  });
  const cancel = (): void => {
    isCancelled = true;
  };
  return { result, cancel };
}

function importInThread(workerFile: string, bytes: Uint8Array, options: ImportOptions, onProgress: ReadProgress, limits: ImportLimits): ImportJob {
  const { name } = options;
  const memory_MB = limits.memory_MB ?? MEMORY_MB;
  // A copy of its own: the bytes may be a window into a larger buffer, all of which would be sent.
  const own = new Uint8Array(bytes);
  const worker = new Worker(workerFile, {
    workerData: { bytes: own, options },
    transferList: [own.buffer],
    resourceLimits: { maxOldGenerationSizeMb: memory_MB },
    // Readers print nothing a user needs.
    stdout: true,
    stderr: true,
  });
  let refuse: (problem: UnderlayProblem) => void = () => undefined;
  const result = new Promise<Imported>((resolve, reject) => {
    const started = performance.now();
    const memoryBefore = process.memoryUsage.rss();
    let lastHeard: number | undefined;
    let lastLook = started;
    const watch = setInterval(() => {
      const now = performance.now();
      // While this thread was busy itself it could hear nothing.
      if (now - lastLook > DEAF_ms && lastHeard !== undefined) lastHeard = now;
      lastLook = now;
      // Unpacked bytes lie outside the thread's own heap, which alone has a hard limit.
      if (process.memoryUsage.rss() - memoryBefore > memory_MB * 1e6) refuse(needsTooMuchMemory(name));
      const silence = now - (lastHeard ?? started);
      const isStalled = silence > (lastHeard === undefined ? START_ms : (limits.stall_ms ?? STALL_ms));
      if (isStalled || now - started > (limits.longest_ms ?? LONGEST_ms)) {
        refuse(new UnderlayProblem('Reading the floor plan took too long and was stopped.', name, 'Export only the floor you need, or in another of the formats DXF, PDF, SVG, PNG.'));
      }
    }, 100);
    const end = (): void => {
      clearInterval(watch);
      void worker.terminate();
    };
    refuse = (problem) => {
      end();
      reject(problem);
    };
    worker.on('message', (message: ImportMessage) => {
      lastHeard = performance.now();
      if (message.kind === 'progress') onProgress(message.done, message.doing);
      else if (message.kind === 'problem') refuse(new UnderlayProblem(message.what, message.where, message.remedy));
      else {
        end();
        resolve({ report: message.report, packed: message.packed });
      }
    });
    worker.on('error', (error: Error & { code?: string }) => {
      refuse(error.code === 'ERR_WORKER_OUT_OF_MEMORY' ? needsTooMuchMemory(name) : underlayProblemOf(error, name));
    });
    worker.on('exit', () => refuse(new UnderlayProblem('Reading the floor plan ended without a result.', name, 'Try again, or export the plan in another format.')));
  });
  return { result, cancel: () => refuse(cancelled(name)) };
}
