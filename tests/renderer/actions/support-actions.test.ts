import type { Host } from '#shared/host/contract';
import type { RefOf, Support } from '#shared/model/plan';
import { describe, expect, test } from 'vitest';
import { findAction, runAction } from '../../../src-renderer/actions/actions.ts';
import { makeDesk } from '../../../src-renderer/actions/desk.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import type { UnderlayDrawings } from '../../../src-renderer/store/underlay-drawings.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

function openWindow() {
  const { plan } = planBuilder()
    .room(6, 4, 2.7)
    .network()
    .run([place3(1, 2, 2.4), place3(4, 2, 2.4), place3(4, 2, 2.1)])
    .nozzle(4, 2, 2.1);
  const store = makeStore(plan, startSession('test'));
  const desk = makeDesk();
  const context = { store, desk, host: {} as Host, drawings: {} as UnderlayDrawings };
  const run = async (id: string): Promise<void> => {
    const action = findAction(id);
    if (!action) throw new Error(`There is no action ${id}.`);
    await runAction(context, action);
  };
  const network = Object.keys(plan.networks)[0] ?? '';
  const supports = (): Support[] => Object.values(store.get().history.present.networks[network]?.supports ?? {});
  const refOf = ({ id }: Support): RefOf<'support'> => ({ kind: 'support', network, id });
  return { store, desk, run, supports, refOf };
}

describe('adding a support here', () => {
  test('means the place under the menu, wherever the pointer has gone since', async () => {
    const { store, desk, run, supports } = openWindow();
    store.session({ pointer: null });
    desk.set({ menu: { x: 0, y: 0, at: { x: 2, y: 2.05 }, on: null } });
    await run('support-here');
    expect(supports().map(({ at }) => at)).toEqual([{ x: 2, y: 2, z: 2.4 }]);
  });

  test('means the pointer without a menu, and says so where no pipe runs', async () => {
    const { store, run, supports } = openWindow();
    store.session({ pointer: { x: 3, y: 2 } });
    await run('support-here');
    expect(supports()).toHaveLength(1);
    store.session({ pointer: { x: 3, y: 3.5 } });
    await run('support-here');
    expect(store.get().session.refusal).toContain('Point at a pipe');
  });
});

test('arrow keys slide a support along its pipe and not off it', async () => {
  const { store, run, supports, refOf } = openWindow();
  store.session({ pointer: { x: 2, y: 2 } });
  await run('support-here');
  store.session({ selection: supports().map(refOf) });
  await run('nudge-east');
  expect(supports()[0]?.at).toMatchObject({ x: expect.closeTo(2 + store.get().history.present.settings.grid_m, 9), y: 2 });
  const steps = store.get().history.past.length;
  await run('nudge-north');
  expect(supports()[0]?.at.y).toBe(2);
  expect(store.get().history.past.length).toBe(steps);
});

test('every support is selected from one', async () => {
  const { store, run, supports, refOf } = openWindow();
  for (const x of [1.5, 2.5, 3.5]) {
    store.session({ pointer: { x, y: 2 } });
    await run('support-here');
  }
  store.session({ selection: supports().slice(0, 1).map(refOf) });
  await run('select-same');
  expect(store.get().session.selection).toHaveLength(3);
});
