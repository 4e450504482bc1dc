import { runDischarge } from '#shared/calculations/discharge/run-discharge';
import type { RunReply, RunRequest } from './store/discharge-runner.ts';
import type { RunAnswer } from './store/known-discharges.ts';

function answerTo({ input }: RunRequest): RunAnswer {
  try {
    return runDischarge(input);
  } catch (error) {
    // A figure out of range is the plan's; its sentence goes to the user.
    if (error instanceof RangeError) return `a figure lies outside what the sum is good for (${error.message})`;
    throw error;
  }
}

self.onmessage = (event: MessageEvent<RunRequest>): void => {
  const reply: RunReply = { serial: event.data.serial, answer: answerTo(event.data) };
  self.postMessage(reply);
};
