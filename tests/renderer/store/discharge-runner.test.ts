import { describe, expect, test } from 'vitest';
import { type RunReply, type RunRequest, makeDischargeRunner } from '../../../src-renderer/store/discharge-runner.ts';
import { sampleInput, sampleResult } from './support/discharge-samples.ts';

/** A worker that answers when it is told to. */
function fakeWorkers() {
  const workers: { readonly posted: RunRequest[]; reply(reply: RunReply): void; break(): void; isEnded: boolean }[] = [];
  const start: Parameters<typeof makeDischargeRunner>[0] = (onReply, onBroken) => {
    const worker = { posted: [] as RunRequest[], reply: onReply, break: onBroken, isEnded: false };
    workers.push(worker);
    return {
      post: (request) => worker.posted.push(request),
      end: () => {
        worker.isEnded = true;
      },
    };
  };
  return { workers, start };
}

describe('the runner of discharges', () => {
  test('starts its worker with the first run, and gives every answer to its own question', async () => {
    const { workers, start } = fakeWorkers();
    const run = makeDischargeRunner(start);
    expect(workers).toHaveLength(0);
    const answers = [run(sampleInput()), run(sampleInput({ cylinders: 2 }))];
    expect(workers).toHaveLength(1);
    const [first, second] = workers[0]?.posted ?? [];
    workers[0]?.reply({ serial: second?.serial ?? -1, answer: sampleResult(2) });
    workers[0]?.reply({ serial: first?.serial ?? -1, answer: 'out of range' });
    expect(await Promise.all(answers)).toMatchObject(['out of range', { peakFlow_kg_s: 2 }]);
  });

  test('a worker that broke is told in words, and the next run starts another', async () => {
    const { workers, start } = fakeWorkers();
    const run = makeDischargeRunner(start);
    const answer = run(sampleInput());
    workers[0]?.break();
    expect(await answer).toMatch(/could not be started/);
    expect(workers[0]?.isEnded).toBe(true);
    const again = run(sampleInput());
    workers[1]?.reply({ serial: workers[1].posted[0]?.serial ?? -1, answer: sampleResult(1) });
    expect(await again).toMatchObject({ peakFlow_kg_s: 1 });
  });

  test('where no worker can start at all, every run is answered in words', async () => {
    const run = makeDischargeRunner(() => {
      throw new Error('no workers here');
    });
    expect(await run(sampleInput())).toMatch(/could not be started/);
  });
});
