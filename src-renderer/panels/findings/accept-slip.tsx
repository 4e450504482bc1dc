import { type FormEvent, useId, useState } from 'react';
import { acceptFinding, whyNotAccepted } from '#shared/commands/accept-finding';
import { withdrawWaiver } from '#shared/commands/withdraw-waiver';
import type { Finding } from '#shared/rules/finding';
import { useShownPlan } from '../bench/use-plan.ts';
import { useActionContext } from '../window-context.ts';
import { today } from './today.ts';

/** Asks for reason and name, and accepts a finding as it is. */
function AcceptForm({ finding, onDone }: { readonly finding: Finding; onDone(): void }) {
  const { store } = useActionContext();
  const { info } = useShownPlan();
  const id = useId();
  const [reason, setReason] = useState('');
  const [by, setBy] = useState(info.approvedBy || info.checkedBy || info.drawnBy);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (store.commit(acceptFinding(finding, { reason, by, date: today() }))) onDone();
  };
  return (
    <form className="accept-form" onSubmit={submit}>
      <div className="field is-wide">
        <label htmlFor={`${id}-reason`}>Why it is acceptable</label>
        <textarea id={`${id}-reason`} rows={2} value={reason} placeholder="Agreed with the authority on site." onChange={(event) => setReason(event.target.value)} />
      </div>
      <div className="field is-wide">
        <label htmlFor={`${id}-by`}>Name of whoever accepts it</label>
        <input id={`${id}-by`} type="text" value={by} onChange={(event) => setBy(event.target.value)} />
      </div>
      <p className="field-help">Both are printed with the finding. It opens again by itself when its figures or its place change.</p>
      <div className="row">
        <button type="submit" className="button" disabled={reason.trim() === '' || by.trim() === ''}>
          Accept it
        </button>
        <button type="button" className="button is-plain" onClick={onDone}>
          Leave it open
        </button>
      </div>
    </form>
  );
}

/** What can be done with a finding that is to stay: accepting it, or withdrawing that. */
export function AcceptSlip({ finding }: { readonly finding: Finding }) {
  const { store } = useActionContext();
  const [isAsking, ask] = useState(false);
  const { waiver } = finding;
  if (waiver) {
    return (
      <div className="accepted">
        <p>
          <strong>Accepted</strong> by {waiver.by}
          {waiver.date ? `, ${waiver.date}` : ''}: {waiver.reason}
        </p>
        <button type="button" className="button is-slim" onClick={() => store.commit(withdrawWaiver([waiver.id]))}>
          Withdraw
        </button>
      </div>
    );
  }
  if (finding.verdict === 'ok') return null;
  const why = whyNotAccepted(finding);
  if (why) return <p className="quiet">{why}</p>;
  if (isAsking) return <AcceptForm finding={finding} onDone={() => ask(false)} />;
  return (
    <button type="button" className="link accept-link" onClick={() => ask(true)}>
      Accept it as it is…
    </button>
  );
}
