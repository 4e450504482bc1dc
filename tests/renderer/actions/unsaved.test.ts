import { command } from '#shared/commands/command';
import { newPlan } from '#shared/model/plan';
import { describe, expect, test } from 'vitest';
import { makeDesk } from '../../../src-renderer/actions/desk.ts';
import { isChanged, watchSavedStep, whenSettled } from '../../../src-renderer/actions/unsaved.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';

const note = command('Write a note', (draft, text: string) => {
  draft.info.notes = text;
});

function openWindow() {
  const store = makeStore(newPlan('metric'), startSession('test'));
  watchSavedStep(store);
  store.load(newPlan('metric'), { ref: 'a', name: 'a.nzw', stamp: '1', savedAtStep: 0, openElsewhere: null });
  const save = (): void => {
    const { history, session } = store.get();
    if (session.file) store.session({ file: { ...session.file, stamp: `${Number(session.file.stamp) + 1}`, savedAtStep: history.past.length } });
  };
  return { store, save };
}

describe('unsaved work', () => {
  test('a plan just opened is not changed, a step changes it, undoing it takes that back', () => {
    const { store } = openWindow();
    expect(isChanged(store.get())).toBe(false);
    store.commit(note('one'));
    expect(isChanged(store.get())).toBe(true);
    store.undo();
    expect(isChanged(store.get())).toBe(false);
  });

  test('undo and redo around a save lead back to the saved state', () => {
    const { store, save } = openWindow();
    store.commit(note('one'));
    save();
    expect(isChanged(store.get())).toBe(false);
    store.undo();
    expect(isChanged(store.get())).toBe(true);
    store.redo();
    expect(isChanged(store.get())).toBe(false);
  });

  test('another step in place of the saved one never counts as saved, though the number of steps is the same', () => {
    const { store, save } = openWindow();
    store.commit(note('one'));
    save();
    store.undo();
    store.commit(note('two'));
    expect(isChanged(store.get())).toBe(true);
    store.undo();
    store.commit(note('three'));
    expect(isChanged(store.get())).toBe(true);
    save();
    expect(isChanged(store.get())).toBe(false);
  });

  test('work taken up from a recovery stays unsaved through undo', () => {
    const { store } = openWindow();
    store.load(newPlan('metric'), { ref: 'a', name: 'a.nzw', stamp: '1', savedAtStep: -1, openElsewhere: null });
    expect(isChanged(store.get())).toBe(true);
    store.commit(note('one'));
    store.undo();
    expect(isChanged(store.get())).toBe(true);
  });

  test('leaving asks first when something is unsaved, and goes at once when nothing is', async () => {
    const { store } = openWindow();
    const desk = makeDesk();
    const left: string[] = [];
    await whenSettled(store, desk, async () => void left.push('first'));
    expect(left).toEqual(['first']);
    store.commit(note('one'));
    await whenSettled(store, desk, async () => void left.push('second'));
    expect(left).toEqual(['first']);
    expect(store.get().session.dialog).toBe('discard');
    await desk.get().leave?.();
    expect(left).toEqual(['first', 'second']);
  });
});
