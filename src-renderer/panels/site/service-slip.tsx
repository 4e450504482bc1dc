import { useState } from 'react';
import type { Visit } from '#shared/model/plan';
import { DUE_WORDS, SERVICE_WORDS, type ServiceDue, serviceDue } from '#shared/site/service-due';
import { useStoreItself } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useShownPlan } from '../bench/use-plan.ts';
import { today } from '../findings/today.ts';
import { VerdictMark } from '../verdict-mark.tsx';
import { PressureReadings } from './pressure-readings.tsx';
import { ServiceIntervalFields } from './service-intervals.tsx';
import { DUE_VERDICTS } from './standing-words.ts';
import { VisitForm } from './visit-form.tsx';
import { VisitList } from './visit-list.tsx';

/** What is due of one kind, most pressing first, with a way to the thing and to its visit. */
function DueLine({ due: { kind, ref, name, standing, text }, onDone }: { readonly due: ServiceDue; onDone(): void }) {
  const store = useStoreItself();
  return (
    <li data-standing={standing}>
      <span className="pressure-line">
        <VerdictMark verdict={DUE_VERDICTS[standing]} silent />
        <span>
          <button type="button" className="link" onClick={() => store.session({ selection: [ref] })}>
            {name}
          </button>{' '}
          {SERVICE_WORDS[kind].toLowerCase()}
          <span className="log-who">
            <b>{DUE_WORDS[standing]}</b> <span className="quiet">{text}</span>
          </span>
        </span>
      </span>
      <button type="button" className="button is-slim" aria-label={`${SERVICE_WORDS[kind]} of ${name}: done`} onClick={onDone}>
        Done
      </button>
    </li>
  );
}

/** What is due when, the visits, and the pressures over time. */
export function ServiceSlip() {
  const plan = useShownPlan();
  const [asked, ask] = useState<{ readonly kind: Visit['kind']; readonly about: string } | null>(null);
  const all = serviceDue(plan, today());
  const things = [...new Map(all.map(({ about, name, ref }) => [about, { value: about, label: name, isEnclosure: ref.kind === 'enclosure' }])).values()];
  const late = all.filter(({ standing }) => standing === 'overdue').length;
  return (
    <Slip title="Service" part="service" aside={late > 0 ? <span className="quiet">{`${late} overdue`}</span> : undefined}>
      {all.length === 0 ? <p className="quiet">No cylinder and no enclosure is drawn yet: nothing is to be serviced.</p> : null}
      {asked ? (
        <VisitForm key={`${asked.kind} ${asked.about}`} things={things} start={asked} onDone={() => ask(null)} />
      ) : all.length > 0 ? (
        <button type="button" className="button is-slim" onClick={() => ask({ kind: 'pressure', about: '' })}>
          Add a visit
        </button>
      ) : null}
      <ul className="log-list" aria-label="Due">
        {all.map((due) => (
          <DueLine key={`${due.kind} ${due.about}`} due={due} onDone={() => ask({ kind: due.kind, about: due.about })} />
        ))}
      </ul>
      <VisitList />
      <ServiceIntervalFields />
      <PressureReadings />
    </Slip>
  );
}
