import type { RunReply, StartWorker } from './store/discharge-runner.ts';

/** Starts the worker that works out discharges. */
export const startDischargeWorker: StartWorker = (onReply, onBroken) => {
  const worker = new Worker(new URL('./discharge-worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = (event: MessageEvent<RunReply>) => onReply(event.data);
  worker.onerror = onBroken;
  return { post: (request) => worker.postMessage(request), end: () => worker.terminate() };
};
