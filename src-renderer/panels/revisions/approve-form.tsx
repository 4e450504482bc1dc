import { type FormEvent, useEffect, useId, useRef, useState } from 'react';
import { type Approval, approveSet } from '#shared/commands/approve-set';
import type { IssuedSet } from '#shared/model/plan';
import { useShownPlan } from '../bench/use-plan.ts';
import { today } from '../findings/today.ts';
import { useActionContext } from '../window-context.ts';

/** Asks who approved a set, when and under which reference. */
export function ApproveForm({ set, onDone }: { readonly set: IssuedSet; onDone(): void }) {
  const { store } = useActionContext();
  const { info } = useShownPlan();
  const id = useId();
  const first = useRef<HTMLInputElement>(null);
  const [approval, setApproval] = useState<Approval>({ by: info.approvedBy, date: today(), reference: '' });
  useEffect(() => first.current?.focus(), []);
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (store.commit(approveSet(set.id, approval))) onDone();
  };
  const fields: readonly { readonly key: keyof Approval; readonly label: string }[] = [
    { key: 'by', label: 'Approved by' },
    { key: 'date', label: 'Date' },
    { key: 'reference', label: 'Reference' },
  ];
  return (
    <form className="accept-form" onSubmit={submit} onKeyDown={(event) => event.key === 'Escape' && onDone()}>
      <div className="fields">
        {fields.map(({ key, label }, i) => (
          <div key={key} className="field">
            <label htmlFor={`${id}-${key}`}>{label}</label>
            <input ref={i === 0 ? first : undefined} id={`${id}-${key}`} type="text" value={approval[key]} onChange={(event) => setApproval({ ...approval, [key]: event.target.value })} />
          </div>
        ))}
      </div>
      <p className="field-help">The set stays as it was issued. An approval is not written over.</p>
      <div className="row">
        <button type="submit" className="button" disabled={approval.by.trim() === '' || approval.date.trim() === ''}>
          Note it
        </button>
        <button type="button" className="button is-plain" onClick={onDone}>
          Not now
        </button>
      </div>
    </form>
  );
}
