import type { Host } from '#shared/host/contract';
import { editSettings } from '#shared/commands/edit-settings';
import { newPlan } from '#shared/model/plan';
import { describe, expect, test } from 'vitest';
import { findAction, runAction } from '../../../src-renderer/actions/actions.ts';
import { makeDesk } from '../../../src-renderer/actions/desk.ts';
import { LAYER_WORDS, NEVER_PICKED } from '../../../src-renderer/actions/view-actions.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import type { UnderlayDrawings } from '../../../src-renderer/store/underlay-drawings.ts';

const window = () => {
  const store = makeStore(newPlan('feet'), startSession('test'));
  const context = { store, desk: makeDesk(), host: {} as Host, drawings: { find: () => undefined } as unknown as UnderlayDrawings };
  const run = async (id: string): Promise<void> => {
    const action = findAction(id);
    if (!action) throw new Error(`There is no action ${id}.`);
    await runAction(context, action);
  };
  return { store, run, settings: () => store.get().history.present.settings };
};

describe('units', () => {
  test('take along a grid that nobody chose, and leave a chosen one', async () => {
    const { store, run, settings } = window();
    await run('units');
    expect(settings()).toMatchObject({ lengths: 'metric', grid_m: 0.1 });
    await run('units');
    expect(settings()).toMatchObject({ lengths: 'feet', grid_m: 3 * 0.0254 });
    store.commit(editSettings({ grid_m: 0.0254 }));
    await run('units');
    expect(settings()).toMatchObject({ lengths: 'metric', grid_m: 0.0254 });
  });
});

describe('layers', () => {
  test('each is shown, hidden, locked and freed by an action that says what it would do', async () => {
    const { store, run } = window();
    for (const name of Object.keys(LAYER_WORDS) as (keyof typeof LAYER_WORDS)[]) {
      expect(findAction(`layer-${name}`)?.nameNow?.(store.get())).toMatch(/^Hide: /);
      await run(`layer-${name}`);
      expect(store.get().session.layers[name].visible).toBe(false);
      expect(findAction(`layer-${name}`)?.nameNow?.(store.get())).toMatch(/^Show: /);
      if (NEVER_PICKED.includes(name)) {
        expect(findAction(`lock-${name}`)).toBeUndefined();
        continue;
      }
      await run(`lock-${name}`);
      expect(store.get().session.layers[name].locked).toBe(true);
      await run(`lock-${name}`);
      expect(store.get().session.layers[name].locked).toBe(false);
    }
  });
});
