import type { Verdict } from '#shared/rules/finding';
import type { FormTick, FormTickKind } from '#shared/site/form-ticks';
import { VerdictMark } from '../verdict-mark.tsx';

const MARKS: Readonly<Record<FormTickKind, Verdict>> = { can: 'ok', already: 'note', 'out-of-order': 'stop', lacks: 'stop', unsigned: 'warn', 'not-read': 'warn' };

const HEADS: Readonly<Record<FormTickKind, string>> = {
  can: 'can be ticked',
  already: 'ticked already',
  'out-of-order': 'out of order: not ticked',
  lacks: 'something is missing: not ticked',
  unsigned: 'not signed: not ticked',
  'not-read': 'not taken',
};

interface FormTickListProps {
  readonly ticks: readonly FormTick[];
  readonly taken: ReadonlySet<string>;
  onToggle(id: string): void;
}

/** The hold points that a form ticks, each with what comes before it or is missing for it. */
export function FormTickList({ ticks, taken, onToggle }: FormTickListProps) {
  if (ticks.length === 0) return null;
  return (
    <>
      <h4>Hold points on the form</h4>
      <ul className="read-back-rows" aria-label="Hold points on the form">
        {ticks.map(({ id, kind, tick, words, where }) => (
          <li key={id} data-hold-point={id} data-kind={kind}>
            <label className="check">
              <input type="checkbox" disabled={kind !== 'can'} checked={kind === 'can' && taken.has(id)} onChange={() => onToggle(id)} /> <strong>{id}</strong> {HEADS[kind]}
              {tick.by === '' ? null : <span className="quiet"> by {tick.by}{tick.witness === '' ? '' : `, seen by ${tick.witness}`}</span>}
            </label>
            {words.map((text, i) => (
              <p key={text}>
                {i === 0 ? <VerdictMark verdict={MARKS[kind]} silent /> : null} {text}
              </p>
            ))}
            <p className="quiet">{where}</p>
          </li>
        ))}
      </ul>
    </>
  );
}
