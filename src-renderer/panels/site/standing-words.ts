import type { Verdict } from '#shared/rules/finding';
import type { HoldPointStanding } from '#shared/site/arming-order';
import type { DueStanding } from '#shared/site/service-due';

/** How a hold point stands, in words and with the mark of a verdict. */
export const HOLD_POINT_WORDS: Readonly<Record<HoldPointStanding, { readonly words: string; readonly verdict: Verdict | null }>> = {
  done: { words: 'done', verdict: 'ok' },
  next: { words: 'next', verdict: 'note' },
  lost: { words: 'no longer holds', verdict: 'stop' },
  waits: { words: 'waits', verdict: null },
};

/** Mark of a service that is due. */
export const DUE_VERDICTS: Readonly<Record<DueStanding, Verdict>> = { overdue: 'stop', soon: 'warn', unknown: 'not-checked', ok: 'ok' };
