import type { Store } from '../store/state.ts';

/** Takes a "done" message off the status line as soon as the user goes on working. A problem stays until it is closed. */
export function endMessages(store: Store): () => void {
  let { present } = store.get().history;
  return store.subscribe(() => {
    const { history, session } = store.get();
    if (history.present === present) return;
    present = history.present;
    if (session.message?.kind === 'done') store.session({ message: null });
  });
}
