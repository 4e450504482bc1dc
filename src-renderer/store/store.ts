import { record, redo, startHistory, undo } from '#shared/commands/history';
import type { Plan } from '#shared/model/plan';
import type { Session, State, Store } from './state.ts';

/** Makes the one store of a window from a first plan and session. */
export function makeStore(plan: Plan, session: Session): Store {
  let state: State = { history: startHistory(plan), preview: null, session };
  const listeners = new Set<() => void>();
  const become = (next: State): void => {
    state = next;
    for (const listener of [...listeners]) listener();
  };
  const change = (part: Partial<Session>): Session => ({ ...state.session, ...part });

  return {
    get: () => state,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    session(part) {
      become({ ...state, session: change(typeof part === 'function' ? part(state.session) : part) });
    },
    commit(command) {
      const outcome = command(state.history.present);
      if (!outcome.ok) {
        become({ ...state, preview: null, session: change({ refusal: outcome.reason }) });
        return false;
      }
      const selection = outcome.created.length > 0 ? outcome.created : state.session.selection;
      become({ history: record(state.history, outcome), preview: null, session: change({ selection, refusal: null }) });
      return true;
    },
    preview(command) {
      const outcome = command?.(state.history.present);
      if (!outcome) {
        if (state.preview) become({ ...state, preview: null });
      } else if (outcome.ok) become({ ...state, preview: outcome.next, session: state.session.refusal === null ? state.session : change({ refusal: null }) });
      else become({ ...state, preview: null, session: change({ refusal: outcome.reason }) });
    },
    undo() {
      become({ history: undo(state.history), preview: null, session: change({ refusal: null }) });
    },
    redo() {
      become({ history: redo(state.history), preview: null, session: change({ refusal: null }) });
    },
    load(next: Plan, file) {
      const level = Object.keys(next.levels)[0] ?? '';
      become({
        history: startHistory(next),
        preview: null,
        session: change({ file, level, selection: [], cut: null, finding: null, refusal: null, tool: 'select' }),
      });
    },
  };
}
