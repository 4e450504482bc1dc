import { type FormEvent, useState } from 'react';
import { addLogEntry } from '#shared/commands/add-log-entry';
import type { LogEntry } from '#shared/model/plan';
import { LOG_QUANTITY, LOG_WORDS } from '#shared/site/log-words';
import { absoluteOf_Pa } from '#shared/units/convert';
import { useCommit } from '../bench/use-plan.ts';
import { KnownChoice } from '../fields/choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { nowText } from './now-text.ts';
import type { SitePeople } from './site-people.tsx';

/** The figure of a field as the log keeps it: absolute, and oxygen in per cent. */
const loggedOf = (kind: LogEntry['kind'], shown: number): number => (kind === 'pressure' ? absoluteOf_Pa(shown) : kind === 'oxygen' ? shown * 100 : shown);

interface ReadingFormProps {
  readonly kind: LogEntry['kind'];
  readonly about: string;
  readonly people: SitePeople;
  onDone(): void;
}

/** Asks for one reading and logs it. */
export function ReadingForm({ kind, about, people, onDone }: ReadingFormProps) {
  const commit = useCommit();
  const quantity = LOG_QUANTITY[kind];
  const [shown, show] = useState<number | null>(null);
  const [temperature_K, warm] = useState<number | null>(null);
  const [isGood, judge] = useState<boolean | null>(null);
  const [note, write] = useState('');
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (commit(addLogEntry({ kind, about, value: shown === null ? null : loggedOf(kind, shown), isGood, temperature_K, by: people.by, at: nowText(), instrument: people.instrument, note }))) onDone();
  };
  return (
    <form className="reading-form" onSubmit={submit}>
      <div className="fields">
        {quantity ? (
          <QuantityField kind={quantity} label={LOG_WORDS[kind]} value={shown} least={0} onCommit={show} onEnter={show} blank={{ text: 'as read', commit: () => show(null) }} />
        ) : kind === 'note' ? null : (
          <KnownChoice label="How it turned out" value={isGood} onCommit={judge} yes="Good" no="Not good" unknown="Not yet said" />
        )}
        {kind === 'pressure' ? <QuantityField kind="temperature" label="Temperature of the cylinder" value={temperature_K} least={150} most={400} onCommit={warm} onEnter={warm} blank={{ text: 'as read', commit: () => warm(null) }} /> : null}
        <TextField label={kind === 'note' ? 'Note' : 'Remark'} value={note} onCommit={write} wide={kind === 'note'} />
      </div>
      {people.by.trim() === '' ? <p className="field-help">Enter the name under “Done by” first: it is printed with the reading.</p> : null}
      <div className="row">
        <button type="submit" className="button">
          Log it
        </button>
        <button type="button" className="button is-plain" onClick={onDone}>
          Leave it
        </button>
      </div>
    </form>
  );
}
