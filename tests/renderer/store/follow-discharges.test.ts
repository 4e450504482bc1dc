import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { editEnclosure } from '#shared/commands/edit-enclosure';
import { moveNozzle } from '#shared/commands/move-nozzle';
import type { DischargeInput } from '#shared/calculations/discharge/discharge';
import { runDischarge } from '#shared/calculations/discharge/run-discharge';
import type { Plan, RefOf } from '#shared/model/plan';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { evaluationOf } from '../../../src-renderer/store/evaluations.ts';
import { followDischarges } from '../../../src-renderer/store/follow-discharges.ts';
import type { RunAnswer } from '../../../src-renderer/store/known-discharges.ts';
import { presentEvaluation, selectEvaluation } from '../../../src-renderer/store/selectors.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

const { plan } = await buildDemo('F1');
const enclosure: RefOf<'enclosure'> = { kind: 'enclosure', level: 'level-0', id: Object.keys(plan.levels['level-0']?.enclosures ?? {})[0] ?? '' };
const nozzleOf = (of: Plan): RefOf<'nozzle'> => {
  const [network] = Object.values(of.networks);
  return { kind: 'nozzle', network: network?.id ?? '', id: Object.keys(network?.nozzles ?? {})[0] ?? '' };
};

/** A window with a worker that is answered by hand. */
function open() {
  const store = makeStore(structuredClone(plan), startSession('test'));
  const asked: { readonly input: DischargeInput; readonly answer: (answer: RunAnswer) => void }[] = [];
  const stop = followDischarges(store, (input) => new Promise((answer) => asked.push({ input, answer })));
  const rest = (): Promise<void> => vi.advanceTimersByTimeAsync(100).then(() => undefined);
  const answerAll = async (): Promise<void> => {
    for (let i = 0; i < asked.length; i += 1) {
      asked[i]?.answer(runDischarge(asked[i]?.input ?? never()));
      await rest();
    }
  };
  const discharge = () => selectEvaluation(store.get()).design.networks[0]?.discharge;
  return { store, asked, stop, rest, answerAll, discharge };
}

const never = (): never => {
  throw new Error('Nothing was asked.');
};
const wider = (by: number) => editEnclosure(enclosure, { temperature: { least_K: 291.15, greatest_K: 300.15 + by } });

describe('discharges of the shown plan', () => {
  test('are asked for once the plan rests, and the sums are made anew when they come', async () => {
    const { asked, rest, answerAll, discharge } = open();
    expect(discharge()).toEqual({ isKnown: false, because: expect.stringContaining('being worked out') });
    expect(asked).toHaveLength(0);
    await rest();
    expect(asked).toHaveLength(1);
    await answerAll();
    expect(discharge()).toMatchObject({ isKnown: true, sums: { isStale: false } });
  });

  test('keep the last one, marked as such, while a changed plan is worked out', async () => {
    const { store, rest, answerAll, discharge, asked } = open();
    await rest();
    await answerAll();
    const runs = asked.length;
    store.commit(moveNozzle(nozzleOf(store.get().history.present), { x: 3, y: 2, z: 2.235 }));
    expect(discharge()).toMatchObject({ isKnown: true, sums: { isStale: true } });
    await rest();
    expect(asked.length).toBeGreaterThan(runs);
    await answerAll();
    expect(discharge()).toMatchObject({ isKnown: true, sums: { isStale: false } });
  });

  test('are not asked for while a drag goes on, only where the pointer rests', async () => {
    const { store, rest, answerAll, asked, discharge } = open();
    await rest();
    await answerAll();
    const runs = asked.length;
    for (let i = 1; i <= 20; i += 1) {
      store.preview(moveNozzle(nozzleOf(store.get().history.present), { x: 2.5 + i * 0.02, y: 1.7, z: 2.235 }));
      expect(discharge()).toMatchObject({ isKnown: true });
      await vi.advanceTimersByTimeAsync(16);
    }
    expect(asked).toHaveLength(runs);
    await rest();
    expect(asked).toHaveLength(runs + 1);
    await answerAll();
    expect(discharge()).toMatchObject({ isKnown: true, sums: { isStale: false } });
  });

  test('what is no longer wanted is not begun', async () => {
    const { store, rest, asked } = open();
    await rest();
    for (const by of [1, 2, 3]) {
      store.commit(wider(by));
      await rest();
    }
    expect(asked).toHaveLength(1);
    asked[0]?.answer('gone');
    await rest();
    expect(asked).toHaveLength(2);
    const hottest_K = store.get().history.present.levels['level-0']?.enclosures[enclosure.id]?.temperature?.greatest_K;
    expect(hottest_K).toBe(303.15);
    expect(asked[1]?.input).toEqual(expect.objectContaining({ nodeCount: asked[0]?.input.nodeCount }));
  });

  test('undo finds the earlier one again without a run', async () => {
    const { store, rest, answerAll, asked, discharge } = open();
    await rest();
    await answerAll();
    store.commit(moveNozzle(nozzleOf(store.get().history.present), { x: 3, y: 2, z: 2.235 }));
    await rest();
    await answerAll();
    const runs = asked.length;
    store.undo();
    expect(discharge()).toMatchObject({ isKnown: true, sums: { isStale: false } });
    await rest();
    expect(asked).toHaveLength(runs);
  });

  test('what was learned for another plan costs this one no new evaluation', async () => {
    const { store, rest, answerAll } = open();
    await rest();
    await answerAll();
    const before = presentEvaluation(store.get());
    const { discharges } = store.get();
    store.takeDischarges((network, input) => discharges(network, input));
    expect(presentEvaluation(store.get())).toBe(before);
    store.takeDischarges(() => undefined);
    expect(presentEvaluation(store.get())).not.toBe(before);
    expect(evaluationOf(store.get().history.present, () => undefined).derived).toBeDefined();
  });

  test('a window that closed takes nothing more', async () => {
    const { store, rest, asked, stop } = open();
    await rest();
    stop();
    const before = store.get();
    asked[0]?.answer('late');
    await rest();
    expect(store.get()).toBe(before);
  });
});
