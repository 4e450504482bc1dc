import { useState } from 'react';
import type { Recovery } from '#shared/host/contract';
import { openRecovery, planName, reopen, save, saveOver, showProblem } from '../../actions/plan-file.ts';
import { countOf } from '../../plan-words.ts';
import { useStore } from '../../store/use-store.ts';
import { useActionContext, useDesk } from '../window-context.ts';
import { Dialog } from './dialog.tsx';
import { useCloseDialog } from './use-close-dialog.ts';
import { dateText } from './when-text.ts';

/** Asks what becomes of unsaved work before another plan takes its place. */
export function LeaveDialog() {
  const context = useActionContext();
  const close = useCloseDialog();
  const name = useStore(planName);
  const stay = (): void => {
    context.desk.set({ leave: null });
    close();
  };
  const go = async (): Promise<void> => {
    const { leave } = context.desk.get();
    context.desk.set({ leave: null });
    close();
    await leave?.();
  };
  return (
    <Dialog
      name="discard"
      title="Save your changes first?"
      size="small"
      onClose={stay}
      footer={
        <>
          <button type="button" className="button" onClick={stay}>
            Stay here
          </button>
          <button type="button" className="button" onClick={() => void go()}>
            Go on without saving
          </button>
          <button
            type="button"
            data-first
            className="button is-main"
            onClick={async () => {
              // Without a place yet, the save dialog takes over and goes on from there.
              if (await save(context)) await go();
            }}
          >
            Save, then go on
          </button>
        </>
      }
    >
      <p>“{name}” has changes that are not saved. Without saving they are given up.</p>
    </Dialog>
  );
}

/** Another window or program changed the file since it was opened. */
export function ConflictDialog() {
  const context = useActionContext();
  const close = useCloseDialog();
  const problem = useDesk((desk) => desk.conflict);
  return (
    <Dialog
      name="conflict"
      title="The file was changed by someone else"
      onClose={() => {
        context.desk.set({ conflict: null });
        close();
      }}
      footer={
        <>
          <button type="button" className="button" onClick={() => void reopen(context)}>
            Give up mine, open theirs
          </button>
          <button type="button" className="button" onClick={() => void saveOver(context)}>
            Keep mine, write over theirs
          </button>
          <button
            type="button"
            className="button is-main"
            onClick={() => context.store.session({ dialog: 'save-as' })}
          >
            Save mine as a copy…
          </button>
        </>
      }
    >
      <p>{problem ? `${problem.what} ${problem.remedy}` : 'Since you opened this plan, its file was written by another window.'}</p>
      <p>Nothing was saved yet. A copy keeps both.</p>
    </Dialog>
  );
}

function RecoveryLine({ recovery, onGone }: { readonly recovery: Recovery; onGone(): void }) {
  const context = useActionContext();
  const [isAsked, setAsked] = useState(false);
  const drop = async (): Promise<void> => {
    const answer = await context.host.dropRecovery({ session: recovery.id });
    if (answer.ok) onGone();
    else showProblem(context, answer.problem);
  };
  return (
    <li className="recovery">
      <div>
        <strong>{recovery.name}</strong>
        <span className="quiet">
          {countOf(recovery.steps, 'step')} not saved, last one {dateText(recovery.changedAt)}
        </span>
      </div>
      <div className="row">
        {isAsked ? (
          <button type="button" className="button is-slim" onClick={() => void drop()}>
            Yes, give it up
          </button>
        ) : (
          <button type="button" className="button is-slim" onClick={() => setAsked(true)}>
            Give it up
          </button>
        )}
        <button
          type="button"
          className="button is-slim is-main"
          onClick={async () => {
            onGone();
            await openRecovery(context, recovery.id);
          }}
        >
          Take it up again
        </button>
      </div>
    </li>
  );
}

/** Unsaved work of an earlier run. What is neither taken up nor given up stays and is offered again. */
export function RecoverDialog() {
  const { desk } = useActionContext();
  const close = useCloseDialog();
  const recoveries = useDesk((state) => state.recoveries);
  const gone = (id: string): void => {
    const left = desk.get().recoveries.filter((each) => each.id !== id);
    desk.set({ recoveries: left });
    if (left.length === 0) close();
  };
  return (
    <Dialog
      name="recover"
      title="Your unsaved work was kept"
      onClose={close}
      footer={
        <button type="button" className="button" onClick={close}>
          Not now
        </button>
      }
    >
      <p>The last time Nozzlewright ended before these changes were saved.</p>
      <ul className="plan-list">
        {recoveries.map((recovery) => (
          <RecoveryLine key={recovery.id} recovery={recovery} onGone={() => gone(recovery.id)} />
        ))}
      </ul>
    </Dialog>
  );
}
