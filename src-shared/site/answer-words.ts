import type { JudgedDimension, SiteAnswer } from './judge-measurements.ts';

/** Answers, gravest first, as they are counted and listed. */
export const SITE_ANSWERS: readonly SiteAnswer[] = ['does-not-close', 'breaks', 'supports', 'inside', 'fits', 'not-measured'];

/** How an answer is named in a count. */
export const ANSWER_NAMES: Readonly<Record<SiteAnswer, string>> = {
  'does-not-close': 'room does not close',
  breaks: 'ask the designer',
  supports: 'support to add or shift',
  inside: 'inside, to be recorded',
  fits: 'fits',
  'not-measured': 'not measured',
};

/** An answer as it is read beside its dimension. */
export function answerWords({ dimension, answer, breaks, isAlone, mend }: Omit<JudgedDimension, 'words'>): string {
  const named = (findings: typeof breaks): string => [...new Set(findings.map(({ rule }) => rule))].join(', ');
  switch (answer) {
    case 'does-not-close':
      return 'Room does not close: measure again';
    case 'breaks':
      return `Breaks ${named(breaks)}${isAlone ? '' : ' together with others'}: ask the designer`;
    case 'supports':
      return `Add or shift a support (${named(mend)}), then record`;
    case 'inside':
      return dimension.kind === 'nozzle' ? 'Inside the allowed patch: record' : 'Breaks no check: record';
    case 'fits':
      return 'Fits';
    default:
      return 'Not measured';
  }
}
