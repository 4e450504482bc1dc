import type { LogEntry, Settings } from '../model/plan.ts';
import type { Verdict } from '../rules/finding.ts';
import { slackOf } from '../rules/slack.ts';
import { formatQuantityAgainstLimit } from '../units/quantity-text.ts';
import { LOG_QUANTITY, LOG_WORDS, shownOf } from './log-words.ts';
import type { ReadingBounds, ReadingNeed } from './reading-need.ts';

/** A reading that a hold point stands on, and how it turned out. */
export interface JudgedReading {
  readonly need: ReadingNeed;
  /** The newest of its kind; null: none yet. */
  readonly entry: LogEntry | null;
  readonly verdict: Extract<Verdict, 'ok' | 'stop' | 'not-checked'>;
  /** What is wrong or missing and what to do, as sentences; or that it is kept. */
  readonly text: string;
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

/** Whether a reading belongs to the same circuit; panel and room belong to all. */
const isOf = (about: string, entry: LogEntry): boolean => about === '' || entry.about === about || entry.kind === 'puff';

function faultOf({ least, most, isOverLeast }: ReadingBounds, value: number): { readonly limit: number; readonly words: string } | null {
  if (least !== null && (isOverLeast ? value <= least : value < least - slackOf(least))) return { limit: least, words: isOverLeast ? 'not more than' : 'less than' };
  if (most !== null && value > most + slackOf(most)) return { limit: most, words: 'more than' };
  return null;
}

/**
 * Judges the newest reading of a kind: missing, old, outside, or kept. A reading without a figure where one is asked,
 * or whose limit is not known, is not checked.
 * @param log  oldest first
 */
export function judgeReading(need: ReadingNeed, log: readonly LogEntry[], lengths: Settings['lengths']): JudgedReading {
  const { kind, about, name, asks, after, proved, remedy } = need;
  const what = `${name}: ${lower(LOG_WORDS[kind])}`;
  const index = log.findLastIndex((each) => each.kind === kind && each.about === about);
  const entry = log[index] ?? null;
  const answer = (verdict: JudgedReading['verdict'], text: string): JudgedReading => ({ need, entry, verdict, text });
  if (!entry) return answer('not-checked', `${what} is not logged yet. Asked: ${asks}.`);
  const { value, isGood } = entry;
  if (isGood === false) return answer('stop', `${what} was not good. ${remedy}`);
  const bounds = need.bounds(entry);
  if (bounds === null) {
    if (isGood === null) return answer('not-checked', `${what}: nobody has said how it turned out.`);
  } else {
    if (value === null) return answer('not-checked', `${what} was logged without its figure. Asked: ${asks}.`);
    if (!bounds.isKnown) return answer('not-checked', `${what} cannot be judged: ${bounds.because}`);
    const fault = faultOf(bounds.sums, value);
    const quantity = LOG_QUANTITY[kind];
    if (fault && quantity) {
      const figures = formatQuantityAgainstLimit(shownOf(kind, value), shownOf(kind, fault.limit), quantity, lengths);
      return answer('stop', `${what} is ${figures.value}, ${fault.words} ${figures.limit}. ${remedy}`);
    }
  }
  const newer = log.slice(index + 1).find((each) => after.includes(each.kind) && isOf(about, each));
  if (newer) return answer('not-checked', `${what} was read before the last ${lower(LOG_WORDS[newer.kind])}. Read it again.`);
  if (proved !== null && !log.slice(0, index).some((each) => each.kind === proved && each.about === about && (each.value ?? 0) > 0)) {
    return answer('not-checked', `${what}: no voltage was read on this circuit before, so the meter is not proved. Prove it on live terminals, log that, and read again.`);
  }
  return answer('ok', `${what} is as asked.`);
}
