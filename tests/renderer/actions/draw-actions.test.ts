import type { Host } from '#shared/host/contract';
import { newPlan } from '#shared/model/plan';
import { describe, expect, test } from 'vitest';
import { findAction, runAction } from '../../../src-renderer/actions/actions.ts';
import { makeDesk } from '../../../src-renderer/actions/desk.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import type { UnderlayDrawings } from '../../../src-renderer/store/underlay-drawings.ts';

function openWindow() {
  const store = makeStore(newPlan(), startSession('test'));
  const context = { store, desk: makeDesk(), host: {} as Host, drawings: {} as UnderlayDrawings };
  const go = async (stage: string): Promise<void> => {
    const action = findAction(`stage-${stage}`);
    if (!action) throw new Error(`There is no stage ${stage}.`);
    await runAction(context, action);
  };
  return { store, go };
}

describe('going to a stage', () => {
  test('what a finding measured stays on the board in the proof, and goes with it', async () => {
    const { store, go } = openWindow();
    store.session({ stage: 'proof', finding: 'N1 of a nozzle' });
    await go('proof');
    expect(store.get().session.finding).toBe('N1 of a nozzle');
    await go('sheets');
    expect(store.get().session).toMatchObject({ stage: 'sheets', finding: null });
  });

  test('a tool that the stage has not is laid down', async () => {
    const { store, go } = openWindow();
    store.session({ stage: 'layout', tool: 'cylinder' });
    await go('survey');
    expect(store.get().session.tool).toBe('select');
  });
});
