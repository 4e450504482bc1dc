import type { RoomReply, StartRoomWorker } from './store/room-to-move.ts';

/** Starts the worker that finds out where a nozzle may be put. */
export const startMarginsWorker: StartRoomWorker = (onReply, onBroken) => {
  const worker = new Worker(new URL('./margins-worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = (event: MessageEvent<RoomReply>) => onReply(event.data);
  worker.onerror = onBroken;
  return { post: (request) => worker.postMessage(request), end: () => worker.terminate() };
};
