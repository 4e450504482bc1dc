import { type History, record, redo, startHistory, undo } from '#shared/commands/history';
import type { Plan } from '#shared/model/plan';
import { levelToShow } from './level-to-show.ts';
import type { Session, State, Store } from './state.ts';

/** Makes the one store of a window from a first plan and session. */
export function makeStore(plan: Plan, session: Session): Store {
  let state: State = { history: startHistory(plan), preview: null, discharges: () => undefined, session };
  const listeners = new Set<() => void>();
  const become = (next: State): void => {
    state = next;
    for (const listener of [...listeners]) listener();
  };
  const change = (part: Partial<Session>): Session => ({ ...state.session, ...part });
  /** What the session becomes when the plan does, so that it never shows a level that has gone. */
  const follow = (history: History): Partial<Session> => {
    const level = levelToShow(state.history.present, history.present, state.session.level);
    return level === state.session.level ? {} : { level, selection: [], cut: null };
  };

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
      const history = record(state.history, outcome);
      const made = outcome.created.length > 0 ? { selection: outcome.created } : {};
      become({ ...state, history, preview: null, session: change({ refusal: null, ...follow(history), ...made }) });
      return true;
    },
    preview(command) {
      const outcome = command?.(state.history.present);
      if (!outcome) {
        if (state.preview) become({ ...state, preview: null });
      } else if (outcome.ok) become({ ...state, preview: outcome.next, session: state.session.refusal === null ? state.session : change({ refusal: null }) });
      else become({ ...state, preview: null, session: change({ refusal: outcome.reason }) });
    },
    takeDischarges(source) {
      become({ ...state, discharges: source });
    },
    tellChecked() {
      become({ ...state });
    },
    undo() {
      const history = undo(state.history);
      become({ ...state, history, preview: null, session: change({ refusal: null, ...follow(history) }) });
    },
    redo() {
      const history = redo(state.history);
      become({ ...state, history, preview: null, session: change({ refusal: null, ...follow(history) }) });
    },
    load(next: Plan, file) {
      const level = Object.keys(next.levels)[0] ?? '';
      become({
        ...state,
        history: startHistory(next),
        preview: null,
        session: change({ file, level, selection: [], cut: null, finding: null, compared: null, refusal: null, tool: 'select' }),
      });
    },
  };
}
