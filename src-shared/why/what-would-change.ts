import type { Settings } from '../model/plan.ts';
import type { Finding, MeasureKind } from '../rules/finding.ts';
import { formatQuantity, formatQuantityAgainstLimit } from '../units/quantity-text.ts';

/** Words for less and more of what is measured. */
const WORDS: Readonly<Partial<Record<MeasureKind, readonly [string, string]>>> = {
  length: ['shorter', 'longer'],
  angle: ['smaller', 'larger'],
  area: ['smaller', 'larger'],
  orificeArea: ['smaller', 'larger'],
  volume: ['smaller', 'larger'],
  temperature: ['colder', 'warmer'],
  time: ['shorter', 'longer'],
  count: ['fewer', 'more'],
  mass: ['less', 'more'],
};

const sentence = (words: string): string => (/[.!?]$/.test(words) ? words : `${words}.`);
const worded = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/**
 * What would make a finding say something else, in plain words: how far the measured value is from its limit, and
 * which change clears it.
 * @returns sentences, nearest first; none where the check cannot tell
 */
export function whatWouldChange({ verdict, measure, measured, limit, margin, cure, waiver }: Finding, lengths: Settings['lengths']): string[] {
  const said: string[] = [];
  if (verdict === 'not-checked') said.push('It is asked as soon as what is missing has been entered.');
  if (measured !== undefined && limit !== undefined && margin !== undefined && Number.isFinite(margin)) {
    const [less, more] = WORDS[measure] ?? ['less', 'more'];
    // The margin grows with the measured value where a least one is asked, and shrinks with it where a greatest is.
    const isLeast = measured - limit === margin || Math.abs(measured - limit - margin) <= 1e-9 * Math.max(1, Math.abs(limit));
    const isGreatest = Math.abs(limit - measured - margin) <= 1e-9 * Math.max(1, Math.abs(limit));
    const by = formatQuantityAgainstLimit(Math.abs(margin), 0, measure, lengths).value;
    const at = formatQuantity(limit, measure, lengths);
    const isKept = verdict === 'ok' || (verdict !== 'not-checked' && margin >= 0);
    if (margin !== 0 && isLeast !== isGreatest) {
      const way = isLeast === isKept ? less : more;
      said.push(isKept ? `It would no longer be kept once the measured value is more than ${by} ${way}, beyond ${at}.` : `It is kept once the measured value is ${by} ${way}: ${at} or ${isLeast ? 'more' : 'less'}.`);
    } else if (margin === 0) said.push(`The measured value stands exactly at its limit of ${at}.`);
  }
  if (verdict !== 'ok' && cure && !waiver) said.push(sentence(cure.kind === 'advice' ? `By hand: ${cure.text}` : `The button above does it: ${cure.text.charAt(0).toLowerCase()}${cure.text.slice(1)}`));
  return said.map(worded);
}
