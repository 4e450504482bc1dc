import { useRef, useState } from 'react';
import type { JobState } from '#shared/host/contract';
import { editSettings } from '#shared/commands/edit-settings';
import { PAPER_IDS } from '#shared/model/paper-ids';
import { PAPERS } from '#shared/paper/papers';
import { ordinaryScales, scaleName } from '#shared/paper/scales';
import { keepBytes, showProblem } from '../../actions/plan-file.ts';
import { followJob } from '../../host/follow-job.ts';
import { lengthSystem } from '../../plan-words.ts';
import { findingCounts } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { useActionContext } from '../window-context.ts';
import { ProgressLine } from './progress-line.tsx';

/** Which set, and what it is printed on where the plan does not say. */
export interface PrintChoice {
  readonly paper: string;
  readonly scale: number | 'auto';
  readonly set: 'submittal' | 'field';
}
export const FIRST_CHOICE: PrintChoice = { paper: 'auto', scale: 'auto', set: 'submittal' };

interface PrintFormProps {
  readonly choice: PrintChoice;
  onChoice(choice: PrintChoice): void;
}

/** Paper and scale, which the plan keeps, and the set; then printing to a PDF, with its progress and a way to end it. */
export function PrintForm({ choice, onChoice }: PrintFormProps) {
  const context = useActionContext();
  const system = useStore(lengthSystem);
  const counts = useStore(findingCounts);
  const { sheets } = useShownPlan().settings;
  const commit = useCommit();
  const [state, setState] = useState<JobState | 'asked' | null>(null);
  const [place, setPlace] = useState<string | null>(null);
  const [remark, setRemark] = useState<string | null>(null);
  const cancel = useRef<AbortController | null>(null);
  const { host, store } = context;

  const print = async (): Promise<void> => {
    const controller = new AbortController();
    cancel.current = controller;
    setState('asked');
    setPlace(null);
    setRemark(null);
    const begun = await host.printSheets({ plan: store.get().history.present, ...choice, takeOff: store.get().session.takeOff });
    const done = begun.ok ? await followJob(host, begun.value.job, setState, controller.signal) : begun;
    const result = begun.ok && done.ok ? await host.printResult({ job: begun.value.job }) : null;
    setState(null);
    if (result?.ok) {
      setRemark(result.value.remark);
      setPlace(await keepBytes(context, result.value.name, result.value.bytes, 'application/pdf'));
    } else {
      const problem = result && !result.ok ? result.problem : !done.ok ? done.problem : null;
      if (problem && problem.code !== 'cancelled') showProblem(context, problem);
    }
  };
  const open = async (): Promise<void> => {
    if (place === null) return;
    const answer = await host.openExternally({ place });
    if (!answer.ok) showProblem(context, answer.problem);
  };

  return (
    <div className="print-form">
      <div className="fields">
        <Choice
          label="Set"
          value={choice.set}
          options={[
            { value: 'submittal', label: 'Submittal set, for the reviewer' },
            { value: 'field', label: 'Field set, for measuring on site' },
          ]}
          onCommit={(set) => onChoice({ ...choice, set })}
          wide
        />
        <Choice
          label="Paper"
          value={sheets.paper ?? 'auto'}
          options={[{ value: 'auto', label: 'Smallest that fits' }, ...PAPER_IDS.map((id) => ({ value: id, label: PAPERS[id].name }))]}
          onCommit={(paper) => commit(editSettings({ sheets: { ...sheets, paper: paper === 'auto' ? null : paper } }))}
        />
        <Choice
          label="Scale"
          value={String(sheets.scale ?? 'auto')}
          options={[{ value: 'auto', label: 'Largest that fits' }, ...ordinaryScales(system).map((scale) => ({ value: String(scale), label: scaleName(scale, system) }))]}
          onCommit={(scale) => commit(editSettings({ sheets: { ...sheets, scale: scale === 'auto' ? null : Number(scale) } }))}
        />
      </div>
      {counts.stop > 0 || counts['not-checked'] > 0 ? (
        <p className="advice">
          {counts.stop > 0 ? `${counts.stop} ${counts.stop === 1 ? 'stop is' : 'stops are'} open. ` : ''}
          {counts['not-checked'] > 0 ? `${counts['not-checked']} ${counts['not-checked'] === 1 ? 'check was' : 'checks were'} not made. ` : ''}The sheets say so.
        </p>
      ) : null}
      {remark === null ? null : (
        <p className="advice" role="status">
          {remark}
        </p>
      )}
      {state === null ? (
        <div className="row">
          <button type="button" className="button is-main" onClick={() => void print()}>
            Print to PDF
          </button>
          {place ? (
            <button type="button" className="button" onClick={() => void open()}>
              Open it
            </button>
          ) : null}
        </div>
      ) : (
        <ProgressLine label="Printing" state={state === 'asked' ? null : state} onCancel={() => cancel.current?.abort()} />
      )}
      <p className="quiet">Print the PDF at full size, never “fit to page”, and check the bar on the sheet with a ruler.</p>
    </div>
  );
}
