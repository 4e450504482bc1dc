import type { LengthSystem } from '../units/length-text.ts';
import { moveWords } from './field-words.ts';
import type { ChangeKind, FieldChange, PlanChange } from './plan-change.ts';

/** Kinds of change as they head a list. */
export const CHANGE_WORDS: Readonly<Record<ChangeKind, string>> = { added: 'Added', moved: 'Moved', changed: 'Changed', removed: 'Removed' };

/** One field in words: "Height: 2.40 m, now 2.70 m". */
export const fieldChangeWords = ({ label, before, now }: FieldChange): string => (before === '' ? `${label} ${now}` : `${label}: ${before}, now ${now}`);

/** What happened to a thing, in words, without its name. Further fields are counted. */
export function changeDetails({ kind, move, fields }: PlanChange, system: LengthSystem, most = 12): string[] {
  const shown = fields.slice(0, most).map(fieldChangeWords);
  const left = fields.length - shown.length;
  return [...(move && kind === 'moved' ? [`Moved ${moveWords(move, system)}`] : []), ...shown, ...(left > 0 ? [left === 1 ? 'and one figure more' : `and ${left} figures more`] : [])];
}
