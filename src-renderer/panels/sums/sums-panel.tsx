import { useEffect, useRef } from 'react';
import { PRELIMINARY, type CalculationTopic } from '#shared/calculations/lines/calculation';
import { refKey } from '#shared/model/plan';
import { selectCalculations, selectEvaluation } from '../../store/selectors.ts';
import type { State } from '../../store/state.ts';
import { useStore, useStoreItself } from '../../store/use-store.ts';
import { useShownPlan } from '../bench/use-plan.ts';
import { Choice } from '../fields/choice.tsx';
import { useRun } from '../window-context.ts';
import { CalculationSlip } from './calculation-slip.tsx';
import { missingFields } from './missing-fields.ts';
import { RoomsOverview } from './rooms-overview.tsx';
import { SumPicture } from './sum-picture.tsx';
import { type SumSubject, calculationsAbout, joinedTo, subjectOf, subjectsOf } from './sum-subjects.ts';

const selectionOf = (state: State) => state.session.selection;

/** The subject on show: of the selection, or the only room there is; undefined while there is a choice to make. */
function useSubject(): { readonly subjects: ReturnType<typeof subjectsOf>; readonly chosen: SumSubject | undefined } {
  const { derived } = useStore(selectEvaluation);
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

function SubjectSums({ subject }: { readonly subject: SumSubject }) {
  const evaluation = useStore(selectEvaluation);
  const calculations = useStore(selectCalculations);
  const { derived } = evaluation;
  const joined = joinedTo(derived, subject);
  const shown = calculationsAbout(calculations, joined);
  return shown.map((calculation) => {
    const of = subjectOf(calculation.subject);
    return (
      <CalculationSlip key={`${calculation.topic} ${calculation.title} ${refKey(calculation.subject)}`} calculation={calculation} showsName={joined.length > 1} fields={of ? missingFields(derived.plan, calculation.topic, joinedTo(derived, of)) : []}>
        <SumPicture calculation={calculation} evaluation={evaluation} />
      </CalculationSlip>
    );
  });
}

/** Every calculation about a room and the units that serve it, live. */
export function SumsPanel({ topic }: { readonly topic: CalculationTopic | null }) {
  const { subjects, chosen } = useSubject();
  const run = useRun();
  const panel = useRef<HTMLDivElement>(null);
  // A figure of the ledger leads to its own sum.
  useEffect(() => {
    if (topic) panel.current?.querySelector(`[data-topic="${topic}"]`)?.scrollIntoView({ block: 'start' });
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
      {chosen ? <SubjectSums key={refKey(chosen)} subject={chosen} /> : subjects.length > 0 ? <RoomsOverview /> : null}
      <p className="sums-foot">{PRELIMINARY}</p>
    </div>
  );
}
