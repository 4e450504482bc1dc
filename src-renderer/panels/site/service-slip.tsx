import { useState } from 'react';
import { type DueGroup, groupDue } from '#shared/site/group-due';
import { DUE_WORDS, SERVICE_WORDS, serviceDue } from '#shared/site/service-due';
import { useStoreItself } from '../../store/use-store.ts';
import { Slip } from '../bench/slip.tsx';
import { useShownPlan } from '../bench/use-plan.ts';
import { today } from '../findings/today.ts';
import { VerdictMark } from '../verdict-mark.tsx';
import { PressureReadings } from './pressure-readings.tsx';
import { ServiceIntervalFields } from './service-intervals.tsx';
import { DUE_VERDICTS } from './standing-words.ts';
import { type AskedVisit, VisitForm } from './visit-form.tsx';
import { VisitList } from './visit-list.tsx';

/** What is due of one kind on one day, with a way to the things and to their visit. */
function DueLine({ group, onDone }: { readonly group: DueGroup; onDone(): void }) {
  const store = useStoreItself();
  const [{ kind, standing, text }] = group;
  return (
    <li data-standing={standing}>
      <span className="pressure-line">
        <VerdictMark verdict={DUE_VERDICTS[standing]} silent />
        <span>
          <b>{SERVICE_WORDS[kind]}</b>:{' '}
          {group.map(({ about, ref, name }, i) => (
            <span key={about}>
              {i > 0 ? ', ' : ''}
              <button type="button" className="link" onClick={() => store.session({ selection: [ref] })}>
                {name}
              </button>
            </span>
          ))}
          <span className="log-who">
            <b>{DUE_WORDS[standing]}</b>: <span className="quiet">{text}</span>
          </span>
        </span>
      </span>
      <button type="button" className="button is-slim" aria-label={`${SERVICE_WORDS[kind]} of ${group.map(({ name }) => name).join(', ')}: done`} onClick={onDone}>
        Done
      </button>
    </li>
  );
}

/** What is due when, the visits, and the pressures over time. */
export function ServiceSlip() {
  const plan = useShownPlan();
  const [asked, ask] = useState<AskedVisit | null>(null);
  const all = serviceDue(plan, today());
  const things = [...new Map(all.map(({ about, name, ref }) => [about, { value: about, label: name, isEnclosure: ref.kind === 'enclosure' }])).values()];
  const late = all.filter(({ standing }) => standing === 'overdue').length;
  return (
    <Slip title="Service" part="service" aside={late > 0 ? <span className="quiet">{`${late} overdue`}</span> : undefined}>
      {all.length === 0 ? <p className="quiet">No cylinder and no enclosure is drawn yet: nothing is to be serviced.</p> : null}
      {asked ? (
        <VisitForm key={`${asked.kind} ${asked.abouts.join(' ')}`} things={things} start={asked} onDone={() => ask(null)} />
      ) : all.length > 0 ? (
        <button type="button" className="button is-slim" onClick={() => ask({ kind: 'pressure', abouts: [] })}>
          Add a visit
        </button>
      ) : null}
      <ul className="log-list" aria-label="Due">
        {groupDue(all).map((group) => (
          <DueLine key={`${group[0].kind} ${group[0].about}`} group={group} onDone={() => ask({ kind: group[0].kind, abouts: group.map(({ about }) => about) })} />
        ))}
      </ul>
      <VisitList />
      <ServiceIntervalFields />
      <PressureReadings />
    </Slip>
  );
}
