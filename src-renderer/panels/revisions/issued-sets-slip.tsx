import { useRef, useState } from 'react';
import type { JobState } from '#shared/host/contract';
import type { IssuedSet } from '#shared/model/plan';
import { compareIssues } from '../../actions/compare-issues.ts';
import { keepBytes, showProblem } from '../../actions/plan-file.ts';
import { followJob } from '../../host/follow-job.ts';
import { Slip } from '../bench/slip.tsx';
import { useShownPlan } from '../bench/use-plan.ts';
import { ProgressLine } from '../dialogs/progress-line.tsx';
import { useActionContext, useRun } from '../window-context.ts';
import { ApproveForm } from './approve-form.tsx';

/** Digits of a digest that people compare by eye. */
const SHORT_DIGEST = 12;

/** One set of the log: what it is, and what can be done with it. */
function SetLine({ set, newest }: { readonly set: IssuedSet; readonly newest: IssuedSet }) {
  const context = useActionContext();
  const { host, store } = context;
  const [isApproving, approve] = useState(false);
  const [state, setState] = useState<JobState | 'asked' | null>(null);
  const cancel = useRef<AbortController | null>(null);
  const isCurrent = set === newest;
  const isKept = set.plan !== null;

  const reprint = async (): Promise<void> => {
    const controller = new AbortController();
    cancel.current = controller;
    setState('asked');
    const { history, session } = store.get();
    const begun = await host.printIssue({ plan: history.present, set: set.id, takeOff: session.takeOff });
    const done = begun.ok ? await followJob(host, begun.value.job, setState, controller.signal) : begun;
    const result = begun.ok && done.ok ? await host.printResult({ job: begun.value.job }) : null;
    setState(null);
    if (result?.ok) await keepBytes(context, result.value.name, result.value.bytes, 'application/pdf');
    else {
      const problem = result && !result.ok ? result.problem : !done.ok ? done.problem : null;
      if (problem && problem.code !== 'cancelled') showProblem(context, problem);
    }
  };

  return (
    <li className="issued-set" data-set={set.mark}>
      <p>
        <strong>Set {set.mark}</strong>, number {set.number}, {set.date}
        <span className="issued-standing">{isCurrent ? 'current' : `superseded by ${newest.mark}`}</span>
      </p>
      <p>{set.purpose}</p>
      <p className="quiet">
        Issued by {set.by}. Digest of the plan <code title={set.sha256}>{set.sha256.slice(0, SHORT_DIGEST)}</code>
        {isKept ? '' : '. Its plan was not kept.'}
      </p>
      {set.approved ? (
        <p>
          <strong>Approved</strong> by {set.approved.by}, {set.approved.date}
          {set.approved.reference ? `, reference ${set.approved.reference}` : ''}
        </p>
      ) : null}
      {isApproving ? <ApproveForm set={set} onDone={() => approve(false)} /> : null}
      {state === null ? (
        <div className="row">
          <button type="button" className="button is-slim" disabled={!isKept && set.sheets === null} title={isCurrent ? 'Gives the sheets just as they were issued' : 'Prints them with SUPERSEDED across every sheet'} onClick={() => void reprint()}>
            Print again
          </button>
          <button type="button" className="button is-slim" disabled={!isKept} onClick={() => void compareIssues(context, set, null)}>
            Compare…
          </button>
          {set.approved || isApproving ? null : (
            <button type="button" className="button is-slim" onClick={() => approve(true)}>
              Note approval…
            </button>
          )}
        </div>
      ) : (
        <ProgressLine label={`Printing set ${set.mark}`} state={state === 'asked' ? null : state} onCancel={() => cancel.current?.abort()} />
      )}
    </li>
  );
}

/** The log of issued sets, newest first, and issuing the next one. */
export function IssuedSetsSlip() {
  const { issuedSets, info } = useShownPlan();
  const run = useRun();
  const newest = issuedSets.at(-1);
  const logged = new Set(issuedSets.map(({ mark }) => mark));
  const others = info.revisions.filter(({ mark }) => !logged.has(mark));
  return (
    <Slip title={newest ? `Issued sets: ${issuedSets.length}` : 'Issued sets'} part="issued">
      {newest ? (
        <ul className="issued-list">
          {[...issuedSets].reverse().map((set) => (
            <SetLine key={set.id} set={set} newest={newest} />
          ))}
        </ul>
      ) : (
        <p className="quiet">Nothing was issued yet. Issuing prints the set and keeps it with the plan as it is now: later changes are found, listed and clouded against it.</p>
      )}
      {others.length > 0 ? <p className="quiet">Revisions entered without a set: {others.map(({ mark, date }) => [mark, date].filter(Boolean).join(', ')).join('; ')}.</p> : null}
      <div className="row">
        <button type="button" className="button is-main" onClick={() => run('issue-set')}>
          Issue a set…
        </button>
      </div>
    </Slip>
  );
}
