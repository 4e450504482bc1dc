import { type FormEvent, useId, useRef, useState } from 'react';
import { addRevision } from '#shared/commands/add-revision';
import { type Issuing, issueSet } from '#shared/commands/issue-set';
import type { JobState } from '#shared/host/contract';
import { showProblem, tell } from '../../actions/plan-file.ts';
import { followJob } from '../../host/follow-job.ts';
import { findingCounts } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { useShownPlan } from '../bench/use-plan.ts';
import { Dialog } from '../dialogs/dialog.tsx';
import { ProgressLine } from '../dialogs/progress-line.tsx';
import { useCloseDialog } from '../dialogs/use-close-dialog.ts';
import { today } from '../findings/today.ts';
import { useActionContext } from '../window-context.ts';
import { nextMark } from './next-mark.ts';

/** Stands in for what is not kept yet, to ask the command beforehand whether it would refuse. */
const UNKEPT = { sha256: '0'.repeat(64), plan: null, sheets: null };

/** Mark, date, issuer and purpose of a set; then it is printed, frozen and entered in the log as one step. */
export function IssueDialog() {
  const context = useActionContext();
  const { host, store } = context;
  const close = useCloseDialog();
  const { info, issuedSets } = useShownPlan();
  const counts = useStore(findingCounts);
  const id = useId();
  const [issuing, setIssuing] = useState<Issuing>(() => ({ mark: nextMark(info.revisions.map(({ mark }) => mark)), date: today(), by: issuedSets.at(-1)?.by ?? info.drawnBy, purpose: '' }));
  const [fault, setFault] = useState<string | null>(null);
  const [state, setState] = useState<JobState | 'asked' | null>(null);
  const cancel = useRef<AbortController | null>(null);
  const change = (part: Partial<Issuing>): void => {
    setIssuing({ ...issuing, ...part });
    setFault(null);
  };

  const issue = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const asked = store.get().history.present;
    const trial = issueSet(issuing, UNKEPT)(asked);
    if (!trial.ok) return setFault(trial.reason);
    const revised = addRevision({ mark: issuing.mark, date: issuing.date.trim(), text: issuing.purpose.trim() })(asked);
    if (!revised.ok) return setFault(revised.reason);
    const controller = new AbortController();
    cancel.current = controller;
    setState('asked');
    const begun = await host.keepIssue({ plan: revised.next, takeOff: store.get().session.takeOff });
    const done = begun.ok ? await followJob(host, begun.value.job, setState, controller.signal) : begun;
    const kept = begun.ok && done.ok ? await host.issueResult({ job: begun.value.job }) : null;
    setState(null);
    if (!kept?.ok) {
      const problem = kept && !kept.ok ? kept.problem : !done.ok ? done.problem : null;
      if (problem && problem.code !== 'cancelled') showProblem(context, problem);
      return;
    }
    if (store.get().history.present !== asked) return setFault('The plan was changed while the set was printed. Issue it again.');
    if (!store.commit(issueSet(issuing, kept.value))) return setFault(store.get().session.refusal);
    close();
    tell(context, `Set ${issuing.mark.trim()} is issued and kept with the plan. Save the plan, so that it stays.`);
  };

  const open = [...(counts.stop > 0 ? [`${counts.stop} ${counts.stop === 1 ? 'stop is' : 'stops are'} open.`] : []), ...(counts['not-checked'] > 0 ? [`${counts['not-checked']} ${counts['not-checked'] === 1 ? 'check was' : 'checks were'} not made.`] : [])];
  const isBusy = state !== null;
  return (
    <Dialog
      name="issue"
      title="Issue a set"
      size="small"
      onClose={isBusy ? undefined : close}
      footer={
        isBusy ? undefined : (
          <>
            <button type="button" className="button" onClick={close}>
              Not now
            </button>
            <button type="submit" form={`${id}-form`} className="button is-main">
              Issue set {issuing.mark.trim()}
            </button>
          </>
        )
      }
    >
      <form id={`${id}-form`} onSubmit={(event) => void issue(event)}>
        <div className="fields">
          <div className="field">
            <label htmlFor={`${id}-mark`}>Mark</label>
            <input id={`${id}-mark`} type="text" value={issuing.mark} disabled={isBusy} onChange={(event) => change({ mark: event.target.value })} />
          </div>
          <div className="field">
            <label htmlFor={`${id}-date`}>Date of issue</label>
            <input id={`${id}-date`} type="text" value={issuing.date} disabled={isBusy} onChange={(event) => change({ date: event.target.value })} />
          </div>
          <div className="field is-wide">
            <label htmlFor={`${id}-by`}>Issued by</label>
            <input id={`${id}-by`} type="text" value={issuing.by} disabled={isBusy} onChange={(event) => change({ by: event.target.value })} />
          </div>
          <div className="field is-wide">
            <label htmlFor={`${id}-purpose`}>Issued for</label>
            <input id={`${id}-purpose`} type="text" data-first value={issuing.purpose} disabled={isBusy} placeholder="Approval by the authority" onChange={(event) => change({ purpose: event.target.value })} />
          </div>
        </div>
      </form>
      {fault ? (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      ) : null}
      {open.length > 0 ? <p className="advice">{open.join(' ')} The sheets say so.</p> : null}
      {isBusy ? (
        <ProgressLine label="Issuing" state={state === 'asked' ? null : state} onCancel={() => cancel.current?.abort()} />
      ) : (
        <p className="quiet">The submittal set is printed on the paper and at the scale of this plan. It and the plan behind it are kept as they are now; later changes are clouded in the next set.</p>
      )}
    </Dialog>
  );
}
