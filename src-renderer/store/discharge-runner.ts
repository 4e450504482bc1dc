import type { DischargeInput } from '#shared/calculations/discharge/discharge';
import type { RunDischarge } from './follow-discharges.ts';
import type { RunAnswer } from './known-discharges.ts';

/** What the window sends its worker. */
export interface RunRequest {
  readonly serial: number;
  readonly input: DischargeInput;
}

/** What the worker sends back. */
export interface RunReply {
  readonly serial: number;
  readonly answer: RunAnswer;
}

/** A worker as it is used here. */
export interface DischargeWorker {
  post(request: RunRequest): void;
  end(): void;
}

/** Starts a worker that tells what it worked out, or that it broke. */
export type StartWorker = (onReply: (reply: RunReply) => void, onBroken: () => void) => DischargeWorker;

const NO_WORKER = 'the part of the program that works out discharges could not be started; close the window and open it again';

/**
 * Runs discharges in a worker, which is started when the first one is asked for and started anew after it broke.
 * A run that breaks it is answered in words.
 */
export function makeDischargeRunner(start: StartWorker): RunDischarge {
  let worker: DischargeWorker | null = null;
  let serial = 0;
  const waiting = new Map<number, (answer: RunAnswer) => void>();

  const settle = (id: number, answer: RunAnswer): void => {
    waiting.get(id)?.(answer);
    waiting.delete(id);
  };
  const breakDown = (): void => {
    worker?.end();
    worker = null;
    for (const id of [...waiting.keys()]) settle(id, NO_WORKER);
  };
  return (input) =>
    new Promise((done) => {
      serial += 1;
      waiting.set(serial, done);
      try {
        worker ??= start((reply) => settle(reply.serial, reply.answer), breakDown);
        worker.post({ serial, input });
      } catch {
        breakDown();
      }
    });
}
