import { useEffect, useState } from 'react';
import { planName, save, saveUnder } from '../../actions/plan-file.ts';
import type { State } from '../../store/state.ts';
import { useStore } from '../../store/use-store.ts';
import { useActionContext, useRun } from '../window-context.ts';
import { Dialog } from './dialog.tsx';
import { useCloseDialog } from './use-close-dialog.ts';

const hostOf = (state: State) => state.session.host;

/** Saving under a name in the plans folder, where the host has no dialog of its own. */
export function SaveAsDialog() {
  const context = useActionContext();
  const close = useCloseDialog();
  const run = useRun();
  const folder = useStore(hostOf)?.plansFolder;
  // A copy beside a file that someone else changed needs a name of its own.
  const [name, setName] = useState(() => (context.desk.get().conflict ? `${planName(context.store.get())}, mine` : planName(context.store.get())));
  useEffect(() => context.desk.set({ conflict: null }), [context]);
  const [taken, setTaken] = useState<string | null>(null);
  const [isBusy, setBusy] = useState(false);
  const clean = name.trim();

  const submit = async (replace: boolean): Promise<void> => {
    if (clean === '' || isBusy) return;
    setBusy(true);
    const place = await context.host.pickPlanPlace({ name: clean });
    if (place.ok && place.value.exists && !replace && place.value.ref !== context.store.get().session.file?.ref) setTaken(clean);
    else if (place.ok && place.value.ref === context.store.get().session.file?.ref) {
      if (await save(context)) close();
    } else if (await saveUnder(context, clean, replace)) {
      const { leave } = context.desk.get();
      context.desk.set({ leave: null });
      await leave?.();
    }
    setBusy(false);
  };

  return (
    <Dialog
      name="save-as"
      title="Save this plan"
      size="small"
      onClose={() => {
        context.desk.set({ leave: null });
        close();
      }}
      footer={
        <>
          <button type="button" className="button" onClick={() => run('download')}>
            Elsewhere…
          </button>
          <button type="submit" form="save-as" className="button is-main" disabled={clean === '' || isBusy}>
            {taken === clean ? 'Replace it' : 'Save'}
          </button>
        </>
      }
    >
      <form
        id="save-as"
        onSubmit={(event) => {
          event.preventDefault();
          void submit(taken === clean);
        }}
      >
        <div className="field is-wide">
          <label htmlFor="save-name">Name</label>
          <input id="save-name" type="text" data-first autoComplete="off" value={name} maxLength={120} onChange={(event) => setName(event.target.value)} onFocus={(event) => event.target.select()} />
          <p className="field-help">Kept in {folder}</p>
        </div>
        {taken === clean ? (
          <p className="field-fault" role="alert">
            A plan of that name is there already. Replace it, or choose another name.
          </p>
        ) : null}
      </form>
    </Dialog>
  );
}
