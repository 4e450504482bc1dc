import type { Host } from '#shared/host/contract';
import { newPlan } from '#shared/model/plan';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { runAction } from '../../../src-renderer/actions/actions.ts';
import { makeDesk } from '../../../src-renderer/actions/desk.ts';
import { ENTER_ACTIONS } from '../../../src-renderer/actions/enter-actions.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import type { UnderlayDrawings } from '../../../src-renderer/store/underlay-drawings.ts';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';

beforeEach(() => vi.stubGlobal('requestAnimationFrame', () => 0));
afterEach(() => vi.unstubAllGlobals());

const windowOf = (plan: Parameters<typeof makeStore>[0]) => ({ store: makeStore(plan, startSession('test')), desk: makeDesk(), host: {} as Host, drawings: {} as UnderlayDrawings });

test('each leads to the form of a room, a unit or a cylinder', async () => {
  const { plan } = await buildDemo('F1');
  const kinds = new Set<string>();
  for (const action of ENTER_ACTIONS) {
    const context = windowOf(plan);
    context.store.session({ level: Object.keys(plan.levels)[0] ?? '' });
    await runAction(context, action);
    expect(context.desk.get().bench, action.id).toEqual({ kind: 'selection' });
    kinds.add(context.store.get().session.selection[0]?.kind ?? '');
  }
  expect([...kinds].sort()).toEqual(['cylinder', 'enclosure', 'network']);
});

test('the selected unit and its room are meant, not the first ones', async () => {
  const { plan } = await buildDemo('F3');
  const [, second] = Object.values(plan.networks);
  const [nozzle] = Object.values(second?.nozzles ?? {});
  if (!second || !nozzle) throw new Error('The demo has no second unit.');
  const context = windowOf(plan);
  context.store.session({ selection: [{ kind: 'nozzle', network: second.id, id: nozzle.id }] });
  const action = ENTER_ACTIONS.find(({ id }) => id === 'enter-circuit');
  if (!action) throw new Error('There is no such action.');
  await runAction(context, action);
  expect(context.store.get().session.selection).toEqual([{ kind: 'network', id: second.id }]);
});

test('on an empty plan each says what to do first', () => {
  const { store, desk } = windowOf(newPlan());
  for (const action of ENTER_ACTIONS) expect(action.unavailable?.(store.get(), desk.get())).toMatch(/first\.$/);
});
