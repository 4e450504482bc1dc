import type { State } from '../store/state.ts';
import { useStore, useStoreItself } from '../store/use-store.ts';
import { useRun } from './window-context.ts';

const messageOf = (state: State) => state.session.message;
const elsewhereOf = (state: State) => state.session.file?.openElsewhere ?? null;

/** Standing lines above the board: trouble that was not yet read, and another window with the same plan. */
export function NoticeLine() {
  const message = useStore(messageOf);
  const elsewhere = useStore(elsewhereOf);
  const store = useStoreItself();
  const run = useRun();
  return (
    <>
      {elsewhere ? (
        <div className="notice" role="status">
          <span className="notice-mark" aria-hidden="true">
            !
          </span>
          <span>{elsewhere}</span>
          <button type="button" className="button is-slim" onClick={() => run('save-as')}>
            Go on in a copy…
          </button>
        </div>
      ) : null}
      {message?.kind === 'problem' ? (
        <div className="notice is-problem" role="alert">
          <span className="notice-mark" aria-hidden="true">
            !
          </span>
          <span>{message.text}</span>
          <button type="button" className="button is-slim" onClick={() => store.session({ message: null })}>
            Close
          </button>
        </div>
      ) : null}
    </>
  );
}
