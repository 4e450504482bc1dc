import type { HeightsReply, StartHeightsWorker } from './store/heights-to-raise.ts';

/** Starts the worker that finds out how far a rail or a pipe may be raised. */
export const startHeightsWorker: StartHeightsWorker = (onReply, onBroken) => {
  const worker = new Worker(new URL('./heights-worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = (event: MessageEvent<HeightsReply>) => onReply(event.data);
  worker.onerror = onBroken;
  return { post: (request) => worker.postMessage(request), end: () => worker.terminate() };
};
