import type { Step } from '#shared/commands/history';
import type { State, Store } from '../store/state.ts';
import type { Desk } from './desk.ts';

/** Number that no step has: the plan differs from its file whatever is undone. */
export const NEVER_SAVED = -1;

/** Whether the plan differs from what the file holds. */
export const isChanged = (state: State): boolean => state.history.past.length !== (state.session.file?.savedAtStep ?? 0);

/**
 * Keeps "saved" true to the word: when the saved step was undone and something else was done instead,
 * no number of steps leads back to the file.
 */
export function watchSavedStep(store: Store): () => void {
  let file = store.get().session.file;
  let savedStep: Step | undefined;
  let savedAtStep = file?.savedAtStep ?? 0;
  return store.subscribe(() => {
    const { history, session } = store.get();
    if (session.file?.savedAtStep !== savedAtStep || session.file?.ref !== file?.ref || session.file?.stamp !== file?.stamp) {
      file = session.file;
      savedAtStep = file?.savedAtStep ?? 0;
      savedStep = history.past[savedAtStep - 1];
      return;
    }
    if (!file || savedAtStep <= 0 || history.past.length < savedAtStep) return;
    if (history.past[savedAtStep - 1] === savedStep) return;
    savedAtStep = NEVER_SAVED;
    file = { ...file, savedAtStep };
    store.session({ file });
  });
}

/** Does something that leaves the plan: at once when nothing is unsaved, otherwise after the user's word. */
export async function whenSettled(store: Store, desk: Desk, then: () => Promise<void>): Promise<void> {
  if (!isChanged(store.get())) {
    await then();
    return;
  }
  desk.set({ leave: then });
  store.session({ dialog: 'discard' });
}
