import { describe, expect, test, vi } from 'vitest';
import { addNote } from '#shared/commands/add-note';
import { editNote } from '#shared/commands/edit-note';
import { newPlan } from '#shared/model/plan';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import { makeStore } from '../../../src-renderer/store/store.ts';

const at = { x: 1, y: 2 };
const gone = editNote({ kind: 'note', level: 'level-0', id: 'gone' }, { text: 'x' });

describe('the one store', () => {
  test('a commit is one step, selects what it made, and can be taken back and done again', () => {
    const store = makeStore(newPlan(), startSession('test'));
    const before = store.get().history.present;
    expect(store.commit(addNote('level-0', at, 'Ask'))).toBe(true);
    expect(store.get().history.past).toHaveLength(1);
    expect(store.get().session.selection).toMatchObject([{ kind: 'note' }]);
    const after = store.get().history.present;
    store.undo();
    expect(store.get().history.present).toEqual(before);
    store.redo();
    expect(store.get().history.present).toEqual(after);
  });

  test('a refused commit changes nothing and tells why', () => {
    const store = makeStore(newPlan(), startSession('test'));
    const before = store.get().history;
    expect(store.commit(gone)).toBe(false);
    expect(store.get().history).toBe(before);
    expect(store.get().session.refusal).toMatch(/\.$/);
  });

  test('a preview leaves no step; a good one clears an old refusal, a bad one goes away', () => {
    const store = makeStore(newPlan(), startSession('test'));
    store.preview(gone);
    expect(store.get()).toMatchObject({ preview: null, session: { refusal: expect.any(String) } });
    store.preview(addNote('level-0', at, 'Ask'));
    expect(store.get().preview).not.toBeNull();
    expect(store.get().session.refusal).toBeNull();
    store.preview(null);
    expect(store.get().preview).toBeNull();
    expect(store.get().history.past).toHaveLength(0);
  });

  test('loading another plan starts anew, whatever was under way', () => {
    const store = makeStore(newPlan(), startSession('test'));
    store.commit(addNote('level-0', at, 'Ask'));
    store.preview(addNote('level-0', at, 'More'));
    store.session({ tool: 'pipe' });
    const other = newPlan('metric');
    store.load(other, null);
    expect(store.get()).toMatchObject({ preview: null, history: { past: [], present: other }, session: { selection: [], tool: 'select', level: 'level-0' } });
  });

  test('listeners hear of every change until they stop', () => {
    const store = makeStore(newPlan(), startSession('test'));
    const heard = vi.fn();
    const stop = store.subscribe(heard);
    store.session({ benchWidth_px: 400 });
    store.session(({ benchWidth_px }) => ({ benchWidth_px: benchWidth_px + 1 }));
    expect(heard).toHaveBeenCalledTimes(2);
    expect(store.get().session.benchWidth_px).toBe(401);
    stop();
    store.undo();
    expect(heard).toHaveBeenCalledTimes(2);
  });
});
