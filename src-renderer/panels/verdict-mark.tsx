import type { Verdict } from '#shared/rules/finding';
import { VERDICT_WORDS } from '../plan-words.ts';

const SHAPES: Readonly<Record<Verdict, React.ReactNode>> = {
  stop: (
    <>
      <rect x="2" y="2" width="12" height="12" rx="1" fill="currentColor" />
      <rect x="4.5" y="6.8" width="7" height="2.4" className="mark-gap" />
    </>
  ),
  warn: <path d="M8 2.5 14.3 13.5H1.7Z" fill="none" stroke="currentColor" strokeWidth="1.8" strokeLinejoin="round" />,
  note: <circle cx="8" cy="8" r="3" fill="currentColor" />,
  'not-checked': <circle cx="8" cy="8" r="5.5" fill="none" stroke="currentColor" strokeWidth="1.8" strokeDasharray="2.6 2.3" />,
  ok: <path d="m3 8.5 3.5 3.5L13 4.5" fill="none" stroke="currentColor" strokeWidth="1.5" />,
};

/** The mark of a verdict: its shape tells it as well as its colour. */
export function VerdictMark({ verdict, silent }: { readonly verdict: Verdict; /** The words stand beside it already. */ readonly silent?: boolean }) {
  return (
    <>
      <svg className={`verdict-mark is-${verdict}`} viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        {SHAPES[verdict]}
      </svg>
      {silent ? null : <span className="out-of-sight">{VERDICT_WORDS[verdict].one}: </span>}
    </>
  );
}
