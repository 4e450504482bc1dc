import { freeze } from 'immer';
import { afterEach, expect, test } from 'vitest';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { evaluate } from '#shared/evaluate';
import { evaluationUntil, sliceChecks } from '../../../src-renderer/store/evaluations.ts';
import { followChecks } from '../../../src-renderer/store/follow-checks.ts';
import { selectEvaluation } from '../../../src-renderer/store/selectors.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

/** Slices of so many questions each. */
const slicesOf = (questions: number) => () => {
  let asked = 0;
  return () => {
    asked += 1;
    return asked > questions;
  };
};

/** Idle time that comes when the test says so. */
function idleTime() {
  const waiting = new Set<(hasTime: () => boolean) => void>();
  return {
    whenIdle(run: (hasTime: () => boolean) => void) {
      waiting.add(run);
      return () => void waiting.delete(run);
    },
    get isWanted() {
      return waiting.size > 0;
    },
    pass() {
      const [run] = waiting;
      if (run) waiting.delete(run);
      run?.(() => false);
    },
  };
}

const built = planBuilder().room(6, 4, 2.7).network().cylinder(0.14, 2, Math.PI).run([place3(0.14, 2, 2), place3(0.14, 2, 2.5), place3(3, 2, 2.5)]).nozzle(3, 2, 2.5);
const open = () => makeStore(freeze(structuredClone(built.plan), true), startSession('test'));

afterEach(() => sliceChecks(() => () => false));

test.each([
  { what: 'each time where that takes long', step_ms: 5000 },
  { what: 'at first and at the end where it does not', step_ms: 0 },
])('checks that take longer than a slice are finished in idle time, and the store is told $what', ({ step_ms }) => {
  sliceChecks(slicesOf(10));
  const store = open();
  const idle = idleTime();
  let now_ms = 0;
  const stop = followChecks(store, idle.whenIdle, () => {
    now_ms += step_ms;
    return now_ms;
  });
  let told = 0;
  const unsubscribe = store.subscribe(() => {
    told += 1;
  });
  expect(selectEvaluation(store.get()).isStale).toBe(true);
  let slices = 0;
  for (; idle.isWanted && slices < 100; slices += 1) idle.pass();
  expect(slices).toBeGreaterThan(2);
  expect(told).toBe(step_ms > 0 ? slices : 2);
  const finished = selectEvaluation(store.get());
  expect(finished.isStale).toBe(false);
  expect(finished.findings).toEqual(evaluate(structuredClone(store.get().history.present)).findings);
  unsubscribe();
  stop();
});

test('while a drag goes on its findings are those from before, marked stale, until they are asked anew', () => {
  const store = open();
  const before = selectEvaluation(store.get());
  const idle = idleTime();
  let now_ms = 0;
  const stop = followChecks(store, idle.whenIdle, () => now_ms);
  expect(idle.isWanted).toBe(false);
  sliceChecks(slicesOf(0));
  store.preview(moveNozzle(built.lastNozzle, { x: 4, y: 2, z: 2.5 }));
  const during = selectEvaluation(store.get());
  expect(during.isStale).toBe(true);
  expect(during.derived.nozzles[0]?.at?.x).toBe(4);
  expect(during.found.counts).toEqual(before.found.counts);
  const [stale] = during.found.about(built.lastNozzle);
  expect(stale && during.found.isFindingStale(stale)).toBe(true);
  expect(stale && before.found.isFindingStale(stale)).toBe(false);
  sliceChecks(slicesOf(1000));
  idle.pass();
  expect(selectEvaluation(store.get()).isStale, 'the hand has only just moved').toBe(true);
  now_ms = 1000;
  idle.pass();
  const after = selectEvaluation(store.get());
  expect(after.isStale).toBe(false);
  expect(after.findings).toEqual(evaluate(structuredClone(store.get().preview ?? store.get().history.present)).findings);
  stop();
  store.preview(moveNozzle(built.lastNozzle, { x: 5, y: 2, z: 2.5 }));
  expect(idle.isWanted).toBe(false);
});

test('what must not rest on findings from before gets all of it at once', () => {
  sliceChecks(slicesOf(0));
  const store = open();
  const { history, discharges } = store.get();
  expect(selectEvaluation(store.get()).isStale).toBe(true);
  const finished = evaluationUntil(history.present, discharges, () => false);
  expect(finished.isStale).toBe(false);
  expect(selectEvaluation(store.get())).toBe(finished);
});
