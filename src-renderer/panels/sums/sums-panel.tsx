import { memo, useEffect, useRef } from 'react';
import { CALCULATION_TOPICS, PRELIMINARY, type Calculation, type CalculationTopic } from '#shared/calculations/lines/calculation';
import { calculationsOf } from '#shared/calculations/lines/calculations-of';
import type { Evaluation } from '#shared/evaluate';
import { isSameRef, refKey } from '#shared/model/plan';
import { selectEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { useShownPlan } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { VerdictMark } from '../verdict-mark.tsx';
import { useRun } from '../window-context.ts';
import { CalculationSlip } from './calculation-slip.tsx';
import { missingFields } from './missing-fields.ts';
import { RoomsOverview } from './rooms-overview.tsx';
import { SumPicture } from './sum-picture.tsx';
import { type SumSubject, calculationsAbout, joinedTo, subjectOf, subjectsOf } from './sum-subjects.ts';

const selectionOf = (state: State) => state.session.selection;

/** The subject on show: of the selection, or the only room there is; undefined while there is a choice to make. */
function useSubject({ derived }: Evaluation): { readonly subjects: ReturnType<typeof subjectsOf>; readonly chosen: SumSubject | undefined } {
  const selection = useStore(selectionOf);
  const subjects = subjectsOf(derived);
  const isThere = (subject: SumSubject): boolean => subjects.some(({ ref }) => refKey(ref) === refKey(subject));
  const selected = selection.flatMap((ref) => subjectOf(ref) ?? []).find(isThere);
  const rooms = subjects.filter(({ ref }) => ref.kind === 'enclosure');
  return { subjects, chosen: selected ?? (rooms.length === 1 ? rooms[0]?.ref : rooms.length === 0 ? subjects[0]?.ref : undefined) };
}

/** Chooses whose sums are shown, by selecting it on the board. */
function SubjectChoice({ subjects, chosen }: ReturnType<typeof useSubject>) {
  const store = useStoreItself();
  const plan = useShownPlan();
  const rooms = subjects.filter(({ ref }) => ref.kind === 'enclosure').length;
  const all = { value: '', label: rooms > 1 ? `All ${rooms} rooms` : 'Choose one' };
  const options = subjects.map(({ ref, name }) => ({ value: refKey(ref), label: ref.kind === 'network' ? `Unit: ${name}` : name }));
  const take = (value: string): void => {
    const subject = subjects.find(({ ref }) => refKey(ref) === value)?.ref;
    const level = subject?.kind === 'enclosure' ? subject.level : subject && plan.networks[subject.id]?.level;
    store.session({ selection: subject ? [subject] : [], ...(level ? { level } : {}) });
  };
  return <Choice label="Sums of" value={chosen ? refKey(chosen) : ''} options={rooms > 1 || !chosen ? [all, ...options] : options} onCommit={take} wide />;
}

const TOPIC_WORDS: Readonly<Record<CalculationTopic, string>> = {
  agent: 'Agent',
  people: 'People',
  discharge: 'Discharge',
  vent: 'Vent',
  hold: 'Hold time',
  strength: 'Strength',
  supports: 'Supports',
  supervision: 'Cylinder pressure',
  wiring: 'Wiring',
  battery: 'Battery',
};

/** Goes to a sum of the panel. */
const showTopic = (panel: Element | null, topic: CalculationTopic): void => panel?.querySelector(`[data-topic="${topic}"]`)?.scrollIntoView({ block: 'start' });

/** The sums below by name, those with something missing marked. */
function Contents({ calculations }: { readonly calculations: readonly Calculation[] }) {
  const topics = CALCULATION_TOPICS.filter((topic) => calculations.some((each) => each.topic === topic));
  return (
    <nav className="sum-contents" aria-label="Sums below">
      {topics.map((topic) => (
        <span key={topic}>
          <button type="button" className="link" onClick={(event) => showTopic(event.currentTarget.closest('.sums'), topic)}>
            {TOPIC_WORDS[topic]}
          </button>
          {calculations.some((each) => each.topic === topic && each.missing.length > 0) ? <VerdictMark verdict="not-checked" /> : null}
        </span>
      ))}
    </nav>
  );
}

const SubjectSums = memo(function SubjectSums({ subject, evaluation }: { readonly subject: SumSubject; readonly evaluation: Evaluation }) {
  const { derived } = evaluation;
  const joined = joinedTo(derived, subject);
  const calculations = calculationsOf(evaluation, (ref) => joined.some((each) => isSameRef(each, ref)));
  const shown = calculationsAbout(calculations, joined);
  const slips = shown.map((calculation) => {
    const of = subjectOf(calculation.subject);
    return (
      <CalculationSlip key={`${calculation.topic} ${calculation.title} ${refKey(calculation.subject)}`} calculation={calculation} showsName={joined.length > 1} fields={of && calculation.missing.length > 0 ? missingFields(derived.plan, calculation.topic, joinedTo(derived, of)) : []}>
        <SumPicture calculation={calculation} evaluation={evaluation} />
      </CalculationSlip>
    );
  });
  return (
    <>
      <Contents calculations={shown} />
      {slips}
    </>
  );
});

/** Every calculation about a room and the units that serve it, live. */
export function SumsPanel({ topic }: { readonly topic: CalculationTopic | null }) {
  const evaluation = useStore(selectEvaluation);
  const { subjects, chosen } = useSubject(evaluation);
  const run = useRun();
  const panel = useRef<HTMLDivElement>(null);
  // A figure of the ledger leads to its own sum.
  useEffect(() => {
    if (topic) showTopic(panel.current, topic);
  }, [topic]);
  return (
    <div className="sums" ref={panel}>
      <div className="sums-head">
        {subjects.length > 1 ? <SubjectChoice subjects={subjects} chosen={chosen} /> : null}
        <button type="button" className="link" onClick={() => run('basis')}>
          Basis of design: editions and methods…
        </button>
      </div>
      {subjects.length === 0 ? (
        <>
          <p className="quiet">Nothing is drawn to work with. Draw the room first: its volume is what every sum begins with.</p>
          <button type="button" className="button" onClick={() => run('tool-enclosure')}>
            Draw an enclosure
          </button>
        </>
      ) : null}
      {chosen ? <SubjectSums key={refKey(chosen)} subject={chosen} evaluation={evaluation} /> : subjects.length > 0 ? <RoomsOverview evaluation={evaluation} /> : null}
      <p className="sums-foot">{PRELIMINARY}</p>
    </div>
  );
}
