import type { JudgedDimension, SiteAnswer } from './judge-measurements.ts';

/** Answers, gravest first, as they are counted and listed. */
export const SITE_ANSWERS: readonly SiteAnswer[] = ['does-not-close', 'breaks', 'inside', 'fits', 'not-measured'];

/** How an answer is named in a count. */
export const ANSWER_NAMES: Readonly<Record<SiteAnswer, string>> = {
  'does-not-close': 'room does not close',
  breaks: 'ask the designer',
  inside: 'inside, to be recorded',
  fits: 'fits',
  'not-measured': 'not measured',
};

/** An answer as it is read beside its dimension. */
export function answerWords({ dimension, answer, breaks, isAlone, mend }: Omit<JudgedDimension, 'words'>): string {
  const supports = mend.length > 0 ? '; see to the supports' : '';
  const rules = [...new Set(breaks.map(({ rule }) => rule))].join(', ');
  switch (answer) {
    case 'does-not-close':
      return 'Room does not close: measure again';
    case 'breaks':
      return `Breaks ${rules}${isAlone ? '' : ' together with others'}: ask the designer`;
    case 'inside':
      return `${dimension.kind === 'nozzle' ? 'Inside the allowed patch: record' : 'Breaks no check: record'}${supports}`;
    case 'fits':
      return `Fits${supports}`;
    default:
      return 'Not measured';
  }
}
