import { describe, expect, test } from 'vitest';
import { addLevel } from '#shared/commands/add-level';
import { addNote } from '#shared/commands/add-note';
import { editInfo } from '#shared/commands/edit-info';
import { moveThings } from '#shared/commands/move-things';
import { removeLevel } from '#shared/commands/remove-level';
import { levelToShow } from '../../../src-renderer/store/level-to-show.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';
import { planBuilder } from '../../support/plan-builder.ts';

const twoFloors = () => {
  const built = planBuilder().room(6, 4, 2.7).network().nozzle(3, 2, 2.5);
  const store = makeStore(built.plan, startSession('test'));
  store.commit(addLevel('Upper', 3));
  const upper = Object.keys(store.get().history.present.levels)[1] ?? '';
  const level = () => store.get().session.level;
  return { built, store, upper, level };
};

describe('the level that is shown', () => {
  test('is the new one after it was added, and one that is there when that is undone', () => {
    const { store, upper, level } = twoFloors();
    expect(level()).toBe(upper);
    store.undo();
    expect(level()).toBe('level-0');
    expect(store.get().session.selection).toEqual([]);
    store.redo();
    expect(level()).toBe(upper);
    store.commit(removeLevel(upper));
    expect(level()).toBe('level-0');
  });

  test('is the one on which undo and redo change something', () => {
    const { store, upper, level } = twoFloors();
    store.commit(addNote(upper, { x: 1, y: 1 }, 'Above'));
    store.session({ level: 'level-0' });
    store.undo();
    expect(level()).toBe(upper);
    store.session({ level: 'level-0' });
    store.redo();
    expect(level()).toBe(upper);
  });

  test('follows a network to where it hangs, and stays for what belongs to no level', () => {
    const { built, store, upper, level } = twoFloors();
    store.commit(moveThings([built.lastNozzle], 1, 0));
    expect(level()).toBe('level-0');
    store.session({ level: upper });
    store.commit(editInfo({ project: 'Hut' }));
    expect(level()).toBe(upper);
  });

  test('stays where anything on it changed', () => {
    const { store, upper } = twoFloors();
    const { present } = store.get().history;
    const after = { ...present, levels: Object.fromEntries(Object.entries(present.levels).map(([id, each]) => [id, { ...each }])) };
    for (const level of ['level-0', upper]) expect(levelToShow(present, after, level)).toBe(level);
  });
});
