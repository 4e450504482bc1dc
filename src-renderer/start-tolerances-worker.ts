import type { StartTolerancesWorker, TolerancesReply } from './store/printed-tolerances.ts';

/** Starts the worker that finds out what the field sheet prints as tolerances. */
export const startTolerancesWorker: StartTolerancesWorker = (onReply, onBroken) => {
  const worker = new Worker(new URL('./tolerances-worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = (event: MessageEvent<TolerancesReply>) => onReply(event.data);
  worker.onerror = onBroken;
  return { post: (plan) => worker.postMessage(plan), end: () => worker.terminate() };
};
