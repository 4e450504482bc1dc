import { freeze } from 'immer';
import { afterEach, expect, test } from 'vitest';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { makeCheckPace } from '../../../src-renderer/store/check-pace.ts';
import { paceChecks } from '../../../src-renderer/store/evaluations.ts';
import { watchHand } from '../../../src-renderer/store/hand-at-work.ts';
import { selectEvaluation } from '../../../src-renderer/store/selectors.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

afterEach(() => paceChecks(() => 0));

const built = planBuilder().room(6, 4, 2.7).network().cylinder(0.14, 2, Math.PI).run([place3(0.14, 2, 2), place3(0.14, 2, 2.5), place3(3, 2, 2.5)]).nozzle(3, 2, 2.5);
const open = () => makeStore(freeze(structuredClone(built.plan), true), startSession('test'));

test('quick checks are made at every step, long ones take a twentieth of the time, and none waits longer than two seconds', () => {
  let now_ms = 0;
  const pace = makeCheckPace(() => now_ms);
  expect(pace.isFree()).toBe(true);
  pace.took(12);
  expect(pace.isFree()).toBe(true);
  pace.took(30);
  now_ms = 599;
  expect(pace.isFree()).toBe(false);
  now_ms = 600;
  expect(pace.isFree()).toBe(true);
  pace.took(5000);
  now_ms = 2599;
  expect(pace.isFree()).toBe(false);
  now_ms = 2600;
  expect(pace.isFree()).toBe(true);
});

test('while checks take long, what follows from the plan under the hand is from an earlier step, and says so', () => {
  const store = open();
  const before = selectEvaluation(store.get());
  let now_ms = 0;
  // Each look at the clock finds it 20 ms later: a check takes that long.
  paceChecks(() => {
    now_ms += 20;
    return now_ms;
  });
  store.preview(moveNozzle(built.lastNozzle, { x: 4, y: 2, z: 2.5 }));
  const first = selectEvaluation(store.get());
  expect(first.isStale).toBe(false);
  expect(first.derived.nozzles[0]?.at?.x).toBe(4);
  store.preview(moveNozzle(built.lastNozzle, { x: 5, y: 2, z: 2.5 }));
  const held = selectEvaluation(store.get());
  expect(held.isStale).toBe(true);
  expect(held.derived).toBe(first.derived);
  expect(held.findings).toEqual(first.findings);
  expect(selectEvaluation(store.get())).toBe(held);
  now_ms += 1000;
  expect(selectEvaluation(store.get()).derived.nozzles[0]?.at?.x).toBe(5);
  store.preview(null);
  expect(selectEvaluation(store.get())).toBe(before);
});

test('what was let go of is looked at, however long that takes', () => {
  const store = open();
  let now_ms = 0;
  paceChecks(() => {
    now_ms += 20;
    return now_ms;
  });
  for (const x of [3.5, 4, 4.5]) {
    store.preview(moveNozzle(built.lastNozzle, { x, y: 2, z: 2.5 }));
    selectEvaluation(store.get());
  }
  store.commit(moveNozzle(built.lastNozzle, { x: 5, y: 2, z: 2.5 }));
  const { derived, isStale } = selectEvaluation(store.get());
  expect(isStale).toBe(false);
  expect(derived.nozzles[0]?.at?.x).toBe(5);
});

test('the hand is at work while the board or something on it is moved, and a little longer', () => {
  const store = open();
  let now_ms = 1000;
  const hand = watchHand(store, () => now_ms);
  expect(hand.isAtWork()).toBe(false);
  store.session({ refusal: 'Not there' });
  expect(hand.isAtWork()).toBe(false);
  store.session({ camera: { at: { x: 1, y: 1 }, scale_px_m: 50 } });
  expect(hand.isAtWork()).toBe(true);
  now_ms += 199;
  expect(hand.isAtWork()).toBe(true);
  now_ms += 1;
  expect(hand.isAtWork()).toBe(false);
  store.preview(moveNozzle(built.lastNozzle, { x: 4, y: 2, z: 2.5 }));
  expect(hand.isAtWork()).toBe(true);
  now_ms += 200;
  hand.stop();
  store.preview(null);
  expect(hand.isAtWork()).toBe(false);
});
