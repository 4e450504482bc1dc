import { useState } from 'react';
import type { JudgedReading } from '#shared/site/judge-reading';
import { LOG_WORDS, readingText } from '#shared/site/log-words';
import { useFigures } from '../bench/use-plan.ts';
import { VerdictMark } from '../verdict-mark.tsx';
import { ReadingForm } from './reading-form.tsx';
import type { SitePeople } from './site-people.tsx';

interface ReadingLineProps {
  readonly reading: JudgedReading;
  readonly people: SitePeople;
  readonly isOpen: boolean;
  onOpen(isOpen: boolean): void;
}

/** What is read, what it must be, what it was, and logging it. */
function ReadingLine({ reading: { need, entry, verdict, text }, people, isOpen, onOpen }: ReadingLineProps) {
  const { system } = useFigures();
  const read = entry ? readingText(entry, system) : '';
  return (
    <li className="reading-line">
      <div className="reading-head">
        <VerdictMark verdict={verdict} />
        <span className="reading-words">
          <strong>{need.name}</strong> {LOG_WORDS[need.kind].toLowerCase()}
          {read === '' ? '' : `: ${read}`}
          <span className="quiet reading-asks">Asked: {need.asks}.</span>
          {entry && verdict !== 'ok' ? <span className="reading-fault">{verdict === 'stop' ? need.remedy : text}</span> : null}
        </span>
        {isOpen ? null : (
          <button type="button" className="button is-slim" aria-label={`Log ${LOG_WORDS[need.kind].toLowerCase()} of ${need.name}`} onClick={() => onOpen(true)}>
            {entry ? 'Again' : 'Log'}
          </button>
        )}
      </div>
      {isOpen ? <ReadingForm kind={need.kind} about={need.about} people={people} onDone={() => onOpen(false)} /> : null}
    </li>
  );
}

/** So many are shown at once: the next come up as these are logged. */
const SHOWN = 60;

/** The readings that a hold point stands on: those that are open first in sight, kept ones folded away where there are many. */
export function ReadingList({ readings, people }: { readonly readings: readonly JudgedReading[]; readonly people: SitePeople }) {
  const [open, setOpen] = useState<string | null>(null);
  const keyOf = ({ need }: JudgedReading): string => `${need.kind} ${need.about}`;
  const line = (reading: JudgedReading) => {
    const key = keyOf(reading);
    return <ReadingLine key={key} reading={reading} people={people} isOpen={open === key} onOpen={(isOpen) => setOpen(isOpen ? key : null)} />;
  };
  const lacking = readings.filter(({ verdict }) => verdict !== 'ok');
  const kept = readings.filter(({ verdict }) => verdict === 'ok');
  return (
    <>
      {lacking.length > 0 ? <ul className="reading-list">{lacking.slice(0, SHOWN).map(line)}</ul> : null}
      {lacking.length > SHOWN ? <p className="quiet">{`${lacking.length - SHOWN} more follow.`}</p> : null}
      {kept.length > 0 ? (
        <details className="folded">
          <summary>{kept.length === 1 ? 'One reading is as asked' : `${kept.length} readings are as asked`}</summary>
          <ul className="reading-list">{kept.slice(0, SHOWN).map(line)}</ul>
        </details>
      ) : null}
    </>
  );
}
