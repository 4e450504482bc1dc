import { useMemo, useState } from 'react';
import { derivePlan } from '#shared/derived/derive-plan';
import type { Measurement, Plan } from '#shared/model/plan';
import type { FieldReading, FieldRecord, FieldRowAnswer } from '#shared/site/field-entries';
import { formTicks, takeFromForm } from '#shared/site/form-ticks';
import type { PrintedTolerances, SiteJudge } from '#shared/site/judge-measurements';
import { readEntries } from '#shared/site/read-entries';
import { countOf } from '../../plan-words.ts';
import { presentEvaluation } from '../../store/selectors.ts';
import { useStore } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useCommit, useFigures } from '../bench/use-plan.ts';
import { FileField } from '../dialogs/file-field.tsx';
import { VerdictMark } from '../verdict-mark.tsx';
import { useActionContext } from '../window-context.ts';
import { FormTickList } from './form-tick-list.tsx';
import { ANSWER_MARKS } from './measured-row.tsx';

interface ReadFile {
  readonly name: string;
  readonly record: FieldRecord;
}

/** Can be applied when the user says so. */
const isTakable = ({ value_m, kind }: FieldRowAnswer): boolean => value_m !== null && (kind === 'taken' || kind === 'implausible' || kind === 'other-revision');
/** Read by the user: everything but what says nothing new. */
const isTold = ({ kind }: FieldRowAnswer): boolean => kind !== 'empty' && kind !== 'unchanged' && kind !== 'missing';

/** The measurements as they would be with some rows taken. */
function withRows(plan: Plan, rows: readonly FieldRowAnswer[]): Record<string, Measurement> {
  const all: Record<string, Measurement> = { ...plan.siteRecord.measurements };
  for (const { id, value_m } of rows) {
    if (value_m !== null) all[id] = { by: '', at: '', instrument: '', reason: '', approvedBy: '', photos: [], ...all[id], value_m };
  }
  return all;
}

const toggled = (ids: ReadonlySet<string>, id: string): ReadonlySet<string> => new Set(ids.has(id) ? [...ids].filter((each) => each !== id) : [...ids, id]);

const applyWords = (rows: number, ticks: number): string => `Apply ${ticks === 0 || rows > 0 ? countOf(rows, 'row') : ''}${rows > 0 && ticks > 0 ? ' and ' : ''}${ticks > 0 ? countOf(ticks, 'hold point') : ''}`;

interface DifferenceProps {
  readonly file: ReadFile;
  readonly plan: Plan;
  readonly judge: SiteJudge;
  readonly printed: PrintedTolerances | undefined;
  onDone(): void;
}

/** What a file would change, row by row, before anything is applied. */
function Difference({ file, plan, judge, printed, onDone }: DifferenceProps) {
  const commit = useCommit();
  const { length } = useFigures();
  const reading = useMemo((): FieldReading => readEntries(file.record, derivePlan(plan)), [file, plan]);
  const told = reading.rows.filter(isTold);
  const [taken, setTaken] = useState<ReadonlySet<string>>(() => new Set(reading.rows.filter(({ kind }) => kind === 'taken').map(({ id }) => id)));
  const chosen = told.filter((row) => isTakable(row) && taken.has(row.id));
  const judged = useMemo(() => judge.judge(plan, withRows(plan, chosen), printed), [judge, plan, chosen, printed]);
  const answers = new Map(judged.rows.map((row) => [row.dimension.id, row]));
  const evaluation = useStore(presentEvaluation);
  const [signed, setSigned] = useState<ReadonlySet<string>>(() => new Set(reading.checks.filter(({ kind }) => kind === 'taken').map(({ id }) => id)));
  const ticks = useMemo(() => formTicks(evaluation, reading.checks, signed), [evaluation, reading, signed]);
  const ticked = ticks.filter(({ id, kind }) => kind === 'can' && signed.has(id));
  const apply = (): void => {
    const entries = chosen.flatMap(({ id, value_m, by, at, instrument, reason }) => (value_m === null ? [] : [{ id, value_m, by, at, instrument, ...(reason === '' ? {} : { reason }) }]));
    if (commit(takeFromForm(entries, ticked))) onDone();
  };
  const count = (kind: FieldRowAnswer['kind']): number => reading.rows.filter((row) => row.kind === kind).length;
  return (
    <div className="read-back" data-part="read-back">
      <h4>{file.name}</h4>
      {reading.remarks.map((text) => (
        <p key={text}>
          <VerdictMark verdict="warn" silent /> {text}
        </p>
      ))}
      <p className="quiet">
        {[`${countOf(told.length, 'row')} to look at`, `${count('unchanged')} as recorded already`, `${count('empty')} left empty`, `${count('missing')} not in the file`].join(', ')}. Nothing is applied yet.
      </p>
      {judged.asBuilt.closures.filter(({ answer }) => answer === 'does-not-close').map(({ words }) => (
        <p key={words}>
          <VerdictMark verdict="stop" silent /> {words}
        </p>
      ))}
      <ul className="read-back-rows">
        {told.map((row) => {
          const answer = answers.get(row.id);
          const canTake = isTakable(row);
          return (
            <li key={`${row.id} ${row.where}`} data-kind={row.kind}>
              <label className="check">
                <input type="checkbox" disabled={!canTake} checked={canTake && taken.has(row.id)} onChange={() => setTaken(toggled(taken, row.id))} /> <strong>{row.name}</strong> {row.kept_m === null ? 'not measured' : length(row.kept_m)} → <strong>{row.value_m === null ? `“${row.written}”` : length(row.value_m)}</strong>
                {row.planned_m === null ? null : <span className="quiet"> planned {length(row.planned_m)}</span>}
              </label>
              <p>
                {canTake && taken.has(row.id) && answer ? (
                  <>
                    <VerdictMark verdict={ANSWER_MARKS[answer.answer]} silent /> {answer.words}
                  </>
                ) : null}{' '}
                {row.kind === 'taken' ? null : <span>{row.words}</span>} <span className="quiet">{row.where}</span>
              </p>
            </li>
          );
        })}
      </ul>
      <FormTickList ticks={ticks} taken={signed} onToggle={(id) => setSigned(toggled(signed, id))} />
      <div className="row">
        <button type="button" className="button is-main" disabled={chosen.length + ticked.length === 0} onClick={apply}>
          {applyWords(chosen.length, ticked.length)}
        </button>
        <button type="button" className="button" onClick={onDone}>
          Leave everything as it is
        </button>
      </div>
    </div>
  );
}

/** Brings a filled form or a table back, shows what it would change, and applies what the user takes in one step. */
export function ReadBackSlip({ plan, judge, printed }: { readonly plan: Plan; readonly judge: SiteJudge; readonly printed: PrintedTolerances | undefined }) {
  const { host } = useActionContext();
  const [file, setFile] = useState<ReadFile | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const [isBusy, setBusy] = useState(false);
  const read = async (name: string, bytes: Uint8Array): Promise<void> => {
    setFile(null);
    setProblem(null);
    setBusy(true);
    const answer = await host.readFieldRecord({ name, bytes });
    setBusy(false);
    if (answer.ok) setFile({ name, record: answer.value });
    else setProblem(`${answer.problem.what} ${answer.problem.remedy}`);
  };
  return (
    <Slip title="Bring a filled sheet back" part="bring-back">
      {file ? (
        <Difference key={file.name} file={file} plan={plan} judge={judge} printed={printed} onDone={() => setFile(null)} />
      ) : (
        <>
          <p className="quiet">A form that was filled in on a screen, or a table with the same ids. You see every row before anything is taken.</p>
          <FileField label="Filled form or table…" accept=".pdf,.csv" onFile={(name, bytes) => void read(name, bytes)} />
        </>
      )}
      <p aria-live="polite">{isBusy ? 'Reading the file.' : ''}</p>
      {problem ? (
        <p className="field-fault" role="alert">
          {problem}
        </p>
      ) : null}
    </Slip>
  );
}
