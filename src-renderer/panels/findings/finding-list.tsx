import { type KeyboardEvent, useEffect, useRef } from 'react';
import { type Finding, findingKey } from '#shared/rules/finding';
import { VERDICT_WORDS, countOf } from '../../plan-words.ts';
import { FindingRow } from './finding-row.tsx';
import type { VerdictGroup } from './finding-groups.ts';

const HEADINGS = {
  stop: 'must be cured',
  warn: 'need a decision',
  'not-checked': 'data is missing',
  note: 'to be known',
  ok: 'limits kept',
} as const;

/** Up and down go from line to line, wherever the lines stand; Enter opens the one that has the keyboard. */
function walk(event: KeyboardEvent<HTMLElement>): void {
  const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
  if (by === 0 || !(event.target instanceof HTMLElement) || !event.target.classList.contains('finding-head')) return;
  const heads = [...event.currentTarget.querySelectorAll<HTMLElement>('.finding-head')];
  const next = heads[heads.indexOf(event.target) + by];
  event.preventDefault();
  event.stopPropagation();
  next?.focus();
  next?.scrollIntoView({ block: 'nearest' });
}

interface FindingListProps {
  readonly groups: readonly VerdictGroup[];
  /** Key of the finding that is open. */
  readonly open: string | null;
  /** At most so many lines are painted. */
  readonly most: number;
}

/** Findings under headings: by verdict, and within it by thing, check or level. */
export function FindingList({ groups, open, most }: FindingListProps) {
  const list = useRef<HTMLDivElement>(null);
  // Going to a finding by key brings its line into sight.
  useEffect(() => {
    if (open !== null) list.current?.querySelector(`[data-finding="${CSS.escape(open)}"]`)?.scrollIntoView({ block: 'nearest' });
  }, [open]);
  let left = most;
  const taken = (findings: readonly Finding[]): readonly Finding[] => {
    const shown = findings.slice(0, left);
    left -= shown.length;
    return shown;
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the lines in it are buttons; the arrows only go from one to the next
    <div ref={list} onKeyDown={walk}>
      {groups.map(({ verdict, count, groups: parts }) => {
        const shown = parts.map((part) => ({ ...part, shown: taken(part.findings) })).filter((part) => part.shown.length > 0);
        if (shown.length === 0) return null;
        return (
          <section key={verdict} className="verdict-group" data-group={verdict}>
            <h3>
              {countOf(count, VERDICT_WORDS[verdict].one, VERDICT_WORDS[verdict].many)} <span className="quiet">{HEADINGS[verdict]}</span>
            </h3>
            {shown.map((part) => (
              <div key={part.key}>
                {parts.length > 1 ? (
                  <h4>
                    {part.title} <span className="quiet">{part.findings.length}</span>
                  </h4>
                ) : null}
                <ul className="finding-list">
                  {part.shown.map((finding) => {
                    const key = findingKey(finding);
                    return <FindingRow key={key} finding={finding} isOpen={key === open} />;
                  })}
                </ul>
              </div>
            ))}
          </section>
        );
      })}
    </div>
  );
}
