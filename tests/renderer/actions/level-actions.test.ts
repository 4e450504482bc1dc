import type { Host } from '#shared/host/contract';
import { describe, expect, test } from 'vitest';
import { findAction, runAction } from '../../../src-renderer/actions/actions.ts';
import { makeDesk } from '../../../src-renderer/actions/desk.ts';
import { newLevelName } from '../../../src-renderer/actions/level-actions.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import type { UnderlayDrawings } from '../../../src-renderer/store/underlay-drawings.ts';
import { planBuilder } from '../../support/plan-builder.ts';

test.each([
  [['Level 1'], 'Level 2'],
  [['Level 2'], 'Level 3'],
  [['Ground', 'Level 2', 'Level 4'], 'Level 5'],
  [['Level 2', 'Level 3'], 'Level 4'],
  [[], 'Level 1'],
])('beside %j a new level is %s', (names, next) => {
  expect(newLevelName(names)).toBe(next);
});

describe('levels by name', () => {
  const window = () => {
    const store = makeStore(planBuilder().room(6, 4, 2.7).plan, startSession('test'));
    const context = { store, desk: makeDesk(), host: {} as Host, drawings: { find: () => undefined } as unknown as UnderlayDrawings };
    const run = async (id: string): Promise<void> => {
      const action = findAction(id);
      if (!action) throw new Error(`There is no action ${id}.`);
      await runAction(context, action);
    };
    return { store, run, levels: () => Object.values(store.get().history.present.levels) };
  };

  test('a new one comes above the highest and is shown', async () => {
    const { store, run, levels } = window();
    await run('add-level');
    await run('add-level');
    expect(levels().map(({ floorElevation_m }) => floorElevation_m)).toEqual([0, 3.6576, 7.3152]);
    expect(store.get().session.level).toBe(levels()[2]?.id);
  });

  test('the shown one is taken away, but never the last', async () => {
    const { store, run, levels } = window();
    await run('remove-level');
    expect(store.get().session.refusal).toBe('A plan keeps at least one level.');
    await run('add-level');
    await run('remove-level');
    expect(levels()).toHaveLength(1);
    expect(store.get().session.level).toBe('level-0');
  });
});
