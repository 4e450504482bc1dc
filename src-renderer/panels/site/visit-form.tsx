import { type FormEvent, useState } from 'react';
import { sequence } from '#shared/commands/command';
import { addVisit } from '#shared/commands/add-visit';
import type { Visit } from '#shared/model/plan';
import { SERVICE_WORDS } from '#shared/site/service-due';
import { useCommit, useShownPlan } from '../bench/use-plan.ts';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { TextField } from '../fields/text-field.tsx';
import { today } from '../findings/today.ts';

interface VisitFormProps {
  readonly things: readonly { readonly value: string; readonly label: string; readonly isEnclosure: boolean }[];
  readonly start: AskedVisit;
  onDone(): void;
}

/** What is to be done, of which things; none: of all. */
export interface AskedVisit {
  readonly kind: Visit['kind'];
  readonly abouts: readonly string[];
}

/** Stands for several things at once. */
const THESE = 'these';

/** Asks what was done, of what, when and by whom. */
export function VisitForm({ things, start, onDone }: VisitFormProps) {
  const commit = useCommit();
  const { siteRecord: { service } } = useShownPlan();
  const several = start.abouts.length > 1;
  const [visit, setVisit] = useState<Omit<Visit, 'id'>>({ kind: start.kind, about: several ? THESE : (start.abouts[0] ?? ''), on: today(), by: service.visits.at(-1)?.by ?? '', note: '' });
  const change = (part: Partial<Visit>): void => setVisit({ ...visit, ...part });
  const these = several && (visit.kind === 'enclosure') === (start.kind === 'enclosure') ? [{ value: THESE, label: `These ${start.abouts.length}` }] : [];
  const options = [...these, { value: '', label: visit.kind === 'enclosure' ? 'All enclosures' : 'All cylinders' }, ...things.filter(({ isEnclosure }) => isEnclosure === (visit.kind === 'enclosure'))];
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    const all = visit.about === THESE ? start.abouts.map((about) => addVisit({ ...visit, about })) : [addVisit(visit)];
    if (commit(sequence('Add service visit', all))) onDone();
  };
  return (
    <form className="part-fields" onSubmit={submit}>
      <div className="fields">
        <Choice label="What was done" value={visit.kind} options={optionsOf(SERVICE_WORDS)} onCommit={(kind) => change({ kind, about: (kind === 'enclosure') === (visit.kind === 'enclosure') ? visit.about : '' })} wide />
        <Choice label="Of" value={visit.about} options={options} onCommit={(about) => change({ about })} />
        <TextField label="On" value={visit.on} onCommit={(on) => change({ on })} placeholder="2026-03-04" />
        <TextField label="By" value={visit.by} onCommit={(by) => change({ by })} />
        <TextField label="Remark" value={visit.note} onCommit={(note) => change({ note })} most={2000} />
      </div>
      <div className="row">
        <button type="submit" className="button">
          Add it
        </button>
        <button type="button" className="button is-plain" onClick={onDone}>
          Leave it
        </button>
      </div>
    </form>
  );
}
