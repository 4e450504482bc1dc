import { useState } from 'react';
import { removeLogEntry } from '#shared/commands/remove-log-entry';
import type { LogEntry } from '#shared/model/plan';
import { LOG_WORDS, readingText } from '#shared/site/log-words';
import { GONE_WORDS, namesByKey } from '#shared/site/name-of-key';
import { useCommit, useFigures, useShownPlan } from '../bench/use-plan.ts';
import { Choice, optionsOf } from '../fields/choice.tsx';
import { ReadingForm } from './reading-form.tsx';
import { RowButtons } from '../network/row-buttons.tsx';
import type { SitePeople } from './site-people.tsx';

/** So many of the newest are shown at once. */
const SHOWN = 40;

/** Adds a reading of any kind about any thing: what nobody asked for, oxygen, or a note. */
function FreeReading({ people, onDone }: { readonly people: SitePeople; onDone(): void }) {
  const plan = useShownPlan();
  const [kind, setKind] = useState<LogEntry['kind']>('oxygen');
  const [about, setAbout] = useState('');
  const things = [...namesByKey(plan)].map(([value, label]) => ({ value, label }));
  return (
    <div className="part-fields">
      <div className="fields">
        <Choice label="What is logged" value={kind} options={optionsOf(LOG_WORDS)} onCommit={(chosen) => setKind(chosen)} />
        <Choice label="Of" value={about} options={things} onCommit={setAbout} />
      </div>
      <ReadingForm key={kind} kind={kind} about={about} people={people} onDone={onDone} />
    </div>
  );
}

/** The log as it was recorded, newest first, and adding to it. */
export function LogList({ people }: { readonly people: SitePeople }) {
  const plan = useShownPlan();
  const commit = useCommit();
  const { system } = useFigures();
  const [isAdding, add] = useState(false);
  const { log } = plan.siteRecord;
  const names = namesByKey(plan);
  const shown = log.toReversed().slice(0, SHOWN);
  return (
    <details className="folded" data-part="arming-log">
      <summary>Log as recorded: {log.length === 0 ? 'empty' : log.length === 1 ? 'one entry' : `${log.length} entries`}</summary>
      {isAdding ? (
        <FreeReading people={people} onDone={() => add(false)} />
      ) : (
        <button type="button" className="button is-slim" onClick={() => add(true)}>
          Log something else
        </button>
      )}
      <ul className="log-list">
        {shown.map((entry) => (
          <li key={entry.id}>
            <span>
              <strong>{names.get(entry.about) ?? GONE_WORDS}</strong> {LOG_WORDS[entry.kind].toLowerCase()} {readingText(entry, system)} {entry.note}
              <span className="quiet log-who">{[entry.at, entry.by, entry.instrument].filter(Boolean).join(', ')}</span>
            </span>
            <RowButtons what={`${LOG_WORDS[entry.kind].toLowerCase()} of ${entry.at}`} onTakeOut={() => commit(removeLogEntry(entry.id))} />
          </li>
        ))}
      </ul>
      {log.length > shown.length ? <p className="quiet">The {log.length - shown.length} older ones are printed on the sheet.</p> : null}
    </details>
  );
}
