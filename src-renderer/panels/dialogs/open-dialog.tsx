import { useEffect, useState } from 'react';
import type { PlanEntry, Problem } from '#shared/host/contract';
import { DEMOS } from '../../actions/plan-actions.ts';
import { bareName, openBytes, openRef, startPlan } from '../../actions/plan-file.ts';
import { useStore } from '../../store/use-store.ts';
import type { State } from '../../store/state.ts';
import { useActionContext } from '../window-context.ts';
import { Dialog } from './dialog.tsx';
import { FileField } from './file-field.tsx';
import { useCloseDialog } from './use-close-dialog.ts';
import { dateText, sizeText } from './when-text.ts';

const hostOf = (state: State) => state.session.host;

function PlanLine({ entry, onForget }: { readonly entry: PlanEntry; onForget(): void }) {
  const context = useActionContext();
  return (
    <li className={entry.isMissing ? 'plan-line is-missing' : 'plan-line'}>
      <button type="button" disabled={entry.isMissing} onClick={() => void openRef(context, entry.ref)}>
        <strong>{bareName(entry.name)}</strong>
        <span className="quiet">
          {entry.isMissing ? 'The file is no longer there.' : `${dateText(entry.modifiedAt)} · ${sizeText(entry.size_bytes)}`} · {entry.folder}
        </span>
      </button>
      {entry.isRecent ? (
        <button type="button" className="button is-plain is-slim" onClick={onForget} title="Take it off this list; the file stays">
          Forget
        </button>
      ) : null}
    </li>
  );
}

/** Opening a plan: recent ones, those in the plans folder, a file from elsewhere, or a finished demo. */
export function OpenDialog() {
  const context = useActionContext();
  const close = useCloseDialog();
  const folder = useStore(hostOf)?.plansFolder;
  const [plans, setPlans] = useState<readonly PlanEntry[] | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const { host } = context;
  useEffect(() => {
    void host.listPlans({}).then((answer) => (answer.ok ? setPlans(answer.value.plans) : setProblem(answer.problem)));
  }, [host]);
  const forget = async (entry: PlanEntry): Promise<void> => {
    const answer = await host.forgetRecent({ ref: entry.ref });
    if (answer.ok) setPlans((now) => (now ?? []).flatMap((each) => (each.ref !== entry.ref ? each : each.isMissing ? [] : { ...each, isRecent: false })));
    else setProblem(answer.problem);
  };
  return (
    <Dialog
      name="open"
      title="Open a plan"
      onClose={close}
      footer={
        <>
          <span className="quiet">Plans are kept in {folder}</span>
          <FileField label="From a file…" accept=".nzw,.json,.pdf" onFile={(name, bytes) => void openBytes(context, name, bytes)} />
        </>
      }
    >
      <h3>Your plans</h3>
      {problem ? <p className="field-fault">{`${problem.what} ${problem.remedy}`}</p> : null}
      {plans === null && !problem ? <p className="quiet">Looking…</p> : null}
      {plans?.length === 0 ? <p className="quiet">None yet. A plan that you save is listed here.</p> : null}
      <ul className="plan-list">
        {plans?.map((entry) => (
          <PlanLine key={entry.ref} entry={entry} onForget={() => void forget(entry)} />
        ))}
      </ul>
      <h3>Finished demos</h3>
      <ul className="plan-list">
        {DEMOS.map((demo) => (
          <li key={demo.name} className="plan-line">
            <button type="button" data-demo={demo.name} onClick={() => void startPlan(context, demo.name)}>
              <strong>{demo.title}</strong>
              <span className="quiet">{demo.does}</span>
            </button>
          </li>
        ))}
      </ul>
      <p className="quiet">Demos are invented. Opening one makes a new plan of your own.</p>
    </Dialog>
  );
}
