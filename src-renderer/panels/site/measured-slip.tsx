import { useMemo, useRef, useState } from 'react';
import { type Plan, refKey } from '#shared/model/plan';
import { thingName } from '#shared/model/thing-name';
import { ANSWER_NAMES, SITE_ANSWERS } from '#shared/site/answer-words';
import { type JudgedDimension, type SiteJudge, type SiteJudgement, makeSiteJudge } from '#shared/site/judge-measurements';
import type { State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { VerdictMark } from '../verdict-mark.tsx';
import { ANSWER_MARKS, MeasuredRow } from './measured-row.tsx';
import { nowText } from './now-text.ts';
import { ReadBackSlip } from './read-back-slip.tsx';
import { usePrintedTolerances } from './use-printed-tolerances.ts';
import { type SitePeople, SitePeopleFields } from './site-people.tsx';

const presentPlan = ({ history }: State): Plan => history.present;
const comparedOf = ({ session }: State) => session.compared;

interface ThingRows {
  readonly key: string;
  readonly name: string;
  readonly rows: readonly JudgedDimension[];
}

/** Rows thing by thing, rooms first as they are measured first. */
function byThing(rows: readonly JudgedDimension[], plan: Plan): ThingRows[] {
  const things = new Map<string, JudgedDimension[]>();
  for (const row of rows) {
    const key = refKey(row.dimension.about);
    things.set(key, [...(things.get(key) ?? []), row]);
  }
  const nameOf = ({ about, kind, name }: JudgedDimension['dimension']): string => (kind === 'pipe' ? `Pipe mark ${name.replace(/ \w+$/, '')}` : thingName(plan, about));
  return [...things].map(([key, own]) => ({ key, name: own[0] ? nameOf(own[0].dimension) : '', rows: own }));
}

const countWords = (rows: readonly JudgedDimension[]): string =>
  SITE_ANSWERS.flatMap((answer) => {
    const count = rows.filter((row) => row.answer === answer).length;
    return count > 0 ? [`${count} ${ANSWER_NAMES[answer]}`] : [];
  }).join(', ');

const gravest = (rows: readonly JudgedDimension[]) => SITE_ANSWERS.find((answer) => rows.some((row) => row.answer === answer)) ?? 'not-measured';

function ThingList({ thing: { name, rows }, isFirst, signed, judgement }: { readonly thing: ThingRows; readonly isFirst: boolean; readonly signed: () => { by: string; at: string; instrument: string }; readonly judgement: SiteJudgement }) {
  const [isOpen, setOpen] = useState(isFirst);
  return (
    <details className="measured-thing" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <VerdictMark verdict={ANSWER_MARKS[gravest(rows)]} silent /> <strong>{name}</strong> <span className="quiet">{countWords(rows)}</span>
      </summary>
      {isOpen ? (
        <ul className="measured-list">
          {rows.map((row) => (
            <MeasuredRow key={row.dimension.id} row={row} signed={signed} knockOnOf={judgement.knockOnOf} />
          ))}
        </ul>
      ) : null}
    </details>
  );
}

/** Rooms that do not close, before anything else; then what could not be applied and what breaks only together. */
function Doubts({ judgement: { asBuilt, together } }: { readonly judgement: SiteJudgement }) {
  const closures = asBuilt.closures.filter(({ answer }) => answer !== 'not-measured');
  const loose = asBuilt.remarks.filter(({ kind }) => kind === 'unknown' || kind === 'follows');
  if (closures.length + loose.length + together.length === 0) return null;
  return (
    <ul className="measured-doubts" aria-label="Rooms, and what is in doubt">
      {closures.map(({ room, answer, words }) => (
        <li key={refKey(room)} data-closure={answer}>
          <VerdictMark verdict={answer === 'closes' ? 'ok' : answer === 'not-proven' ? 'warn' : 'stop'} silent /> {words}
        </li>
      ))}
      {together.map(({ rule, name, text }) => (
        <li key={`${rule} ${name}`}>
          <VerdictMark verdict="stop" silent /> All that was measured, together, breaks {rule} ({name}): {text}
        </li>
      ))}
      {loose.map(({ id, kind, text }) => (
        <li key={`${kind} ${id}`}>
          <VerdictMark verdict="warn" silent /> {text}
        </li>
      ))}
    </ul>
  );
}

/** Shows on the board where things stand as built, and in dashes where they are drawn. */
function ShowAsBuilt({ judgement, plan }: { readonly judgement: SiteJudgement; readonly plan: Plan }) {
  const store = useStoreItself();
  const compared = useStore(comparedOf);
  const isShown = compared?.now?.set === 'as-built';
  const show = (): void => store.session({ compared: { before: { set: 'as-drawn', label: 'As drawn', plan }, now: { set: 'as-built', label: 'As built', plan: judgement.asBuilt.plan }, shown: null } });
  return (
    <label className="check">
      <input type="checkbox" checked={isShown} onChange={() => (isShown ? store.session({ compared: null }) : show())} /> Show on the board as built over as drawn; as drawn in dashes
    </label>
  );
}

/** What was measured, dimension by dimension, each with its answer; and files that bring it back. */
export function MeasuredSlip() {
  const plan = useStore(presentPlan);
  const judge = useRef<SiteJudge>(null);
  judge.current ??= makeSiteJudge();
  const siteJudge = judge.current;
  const { printed, isWorking } = usePrintedTolerances(plan);
  const judgement = useMemo(() => siteJudge.judge(plan, plan.siteRecord.measurements, printed), [siteJudge, plan, printed]);
  const [people, setPeople] = useState<SitePeople>(() => {
    const last = Object.values(plan.siteRecord.measurements).at(-1);
    return { by: last?.by ?? '', witness: '', instrument: last?.instrument ?? '' };
  });
  const things = useMemo(() => byThing(judgement.rows, plan), [judgement, plan]);
  const hasMeasured = Object.keys(plan.siteRecord.measurements).length > 0;
  const knockOn = judgement.knockOn();
  const signed = () => ({ by: people.by, at: nowText(), instrument: people.instrument });
  if (judgement.rows.length === 0) {
    return (
      <Slip title="Measured on site" part="measured">
        <p className="quiet">There is nothing to measure yet: draw a room with a nozzle in it.</p>
      </Slip>
    );
  }
  return (
    <>
      <Slip title="Measured on site" part="measured">
        <p className="quiet" aria-live="polite">
          {hasMeasured ? countWords(judgement.rows) : `${judgement.rows.length} dimensions to measure. Rooms come first, since all else is measured from their faces.`}
        </p>
        {isWorking ? <p className="quiet">How far nozzles may be off is being worked out. Until then one that is off by little is to be recorded.</p> : null}
        <Doubts judgement={judgement} />
        <SitePeopleFields people={people} isWitnessed={false} hasReadings onChange={setPeople} />
        {hasMeasured ? <ShowAsBuilt judgement={judgement} plan={plan} /> : null}
        {things.map((thing, i) => (
          <ThingList key={thing.key} thing={thing} isFirst={i === 0} signed={signed} judgement={judgement} />
        ))}
        {knockOn.length > 0 ? (
          <>
            <h4>All of it together changes</h4>
            <ul className="measured-knock-on">
              {knockOn.map((text) => (
                <li key={text}>{text}</li>
              ))}
            </ul>
            <p className="quiet">No discharge is run for it: filling time and pressures are those of the plan as drawn.</p>
          </>
        ) : null}
        {judgement.mend.map(({ rule, name, text }) => (
          <p key={`${rule} ${name}`}>
            <VerdictMark verdict="warn" silent /> <strong>{rule}</strong> {text}
          </p>
        ))}
      </Slip>
      <ReadBackSlip plan={plan} judge={siteJudge} printed={printed} />
    </>
  );
}
