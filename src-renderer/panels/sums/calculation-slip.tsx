import { type ReactNode, memo, useId, useState } from 'react';
import type { Calculation, CalculationLine } from '#shared/calculations/lines/calculation';
import { CHOSEN } from '#shared/calculations/lines/draft';
import { isAlike } from '#shared/derived/remember';
import { countOf } from '../../plan-words.ts';
import { VerdictMark } from '../verdict-mark.tsx';
import { useRun } from '../window-context.ts';
import type { MissingField } from './missing-fields.ts';
import { WhereToEnter } from './where-to-enter.tsx';

/** Words with the small letters of their symbols set low: "m_in" as m with "in" below. */
function Lowered({ text }: { readonly text: string }) {
  return text.split(/((?<=[\p{L}\d])_[\p{L}\d]+)/u).map((part, i) =>
    // biome-ignore lint/suspicious/noArrayIndexKey: parts of one text stand in their order
    part.startsWith('_') ? <sub key={i}>{part.slice(1)}</sub> : part,
  );
}

/** Plain props of a row: during a drag most rows read as they did. */
const readsAlike = <T,>(before: T, now: T): boolean => isAlike(before, now, 2);

/** One result; pressing it opens how it came about. */
const SumLine = memo(function SumLine({ line }: { readonly line: CalculationLine }) {
  const id = useId();
  const run = useRun();
  const [isOpen, open] = useState(false);
  const { label, formula, numbers, result, source, isMain } = line;
  return (
    <li className={isMain ? 'sum-line is-main' : 'sum-line'}>
      <button type="button" className="sum-line-head" aria-expanded={isOpen} aria-controls={isOpen ? id : undefined} onClick={() => open(!isOpen)}>
        <span className="sum-line-label">
          <Lowered text={label} />
        </span>
        <span className="sum-line-result">{result}</span>
      </button>
      {isOpen ? (
        <div className="sum-line-why" id={id}>
          {formula ? (
            <p className="sum-formula">
              <Lowered text={formula} />
            </p>
          ) : null}
          {numbers ? (
            <p className="sum-formula">
              = {numbers}
              <br />= {result}
            </p>
          ) : null}
          {source === '' ? null : <p className="quiet">Source: {source}</p>}
          {source === CHOSEN ? (
            <button type="button" className="link" onClick={() => run('basis')}>
              Change it in the basis of design…
            </button>
          ) : null}
        </div>
      ) : null}
    </li>
  );
}, readsAlike);

function Missing({ reasons, fields }: { readonly reasons: readonly string[]; readonly fields: readonly MissingField[] }) {
  if (reasons.length === 0) return null;
  return (
    <div className="sum-missing">
      {reasons.map((reason) => (
        <p key={reason}>
          <VerdictMark verdict="not-checked" silent />
          {reason}
        </p>
      ))}
      <WhereToEnter fields={fields} />
    </div>
  );
}

/** What can go wrong with a sum. Folded, for there are many; never left out. */
const Cautions = memo(function Cautions({ cautions }: { readonly cautions: readonly string[] }) {
  if (cautions.length === 0) return null;
  return (
    <details className="sum-cautions">
      <summary>
        <VerdictMark verdict="warn" silent /> {countOf(cautions.length, 'caution')}: read before you rely on this
      </summary>
      {cautions.map((caution) => (
        <p key={caution} className="caution">
          {caution}
        </p>
      ))}
    </details>
  );
}, readsAlike);

/** Lines of a sum that has no main result. */
const FEW = 4;

interface CalculationSlipProps {
  readonly calculation: Calculation;
  /** Said when sums of several things stand together. */
  readonly showsName: boolean;
  readonly fields: readonly MissingField[];
  readonly children?: ReactNode;
}

/** One calculation: what it comes to, a picture of it, and on request every step. */
export function CalculationSlip({ calculation, showsName, fields, children }: CalculationSlipProps) {
  const { topic, title, subjectName, lines, missing, cautions, isStale } = calculation;
  const [showsAll, showAll] = useState(false);
  const main = lines.filter(({ isMain }) => isMain);
  const few = main.length > 0 ? main : lines.slice(0, FEW);
  const others = lines.length - few.length;
  const shown = showsAll ? lines : few;
  return (
    <section className="slip sum-slip" data-topic={topic} aria-busy={isStale}>
      <h3>
        <span>{title}</span>
        <span className="sum-aside">{isStale ? 'being worked out…' : showsName ? subjectName : ''}</span>
      </h3>
      {shown.length > 0 ? (
        <ul className="sum-lines">
          {shown.map((line, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two lines may have the same label; their order is theirs
            <SumLine key={`${line.label} ${i}`} line={line} />
          ))}
        </ul>
      ) : null}
      <Missing reasons={missing} fields={missing.length > 0 ? fields : []} />
      {others > 0 ? (
        <button type="button" className="link sum-more" aria-expanded={showsAll} onClick={() => showAll(!showsAll)}>
          {showsAll ? 'Show the results only' : `Show every step (${countOf(others, 'more line')})`}
        </button>
      ) : null}
      {children}
      <Cautions cautions={cautions} />
    </section>
  );
}
