import type { FieldDimension } from '../derived/field-dimensions.ts';
import type { Measurement } from '../model/plan.ts';
import { toMillimetres } from '../units/convert.ts';
import { exactLengthText } from '../units/exact-length-text.ts';
import { type LengthSystem, formatLength } from '../units/length-text.ts';
import { cellText, isDamaged, quoted } from './entry-texts.ts';
import type { FieldEntry, FieldMatch, FieldRowAnswer } from './field-entries.ts';
import { doubtAbout, understandLength } from './understand-length.ts';

/** What a row is judged by besides its dimension. */
export interface RowContext {
  /** What the plan's site record has of it. */
  readonly kept: Measurement | undefined;
  readonly lengths: LengthSystem;
  readonly match: FieldMatch;
}

/** Values that differ by less are one value [m]: half of what a tape shows. */
const SAME_m = 0.0005;
/** A form prints what is planned to a tenth of a millimetre. */
const SAME_PLANNED_mm = 0.06;

const bare = { written: '', value_m: null, by: '', at: '', instrument: '', reason: '' } as const;

/** A dimension of which the file says nothing. */
export const missingRow = (dimension: FieldDimension, kept: Measurement | undefined): FieldRowAnswer => ({
  ...bare,
  kind: 'missing',
  id: dimension.id,
  name: dimension.name,
  where: '',
  planned_m: dimension.planned_m,
  kept_m: kept?.value_m ?? null,
  words: `The file has no row for ${dimension.name}. If a sheet is lost, have it handed over again.`,
});

/** A row that belongs to no dimension and no hold point of the plan. */
export const unknownRow = (entry: FieldEntry): FieldRowAnswer => ({
  ...bare,
  kind: 'unknown',
  id: entry.id.slice(0, 200),
  name: [...entry.id].slice(0, 60).join(''),
  where: entry.where,
  written: cellText(entry, 'measured'),
  by: cellText(entry, 'by'),
  at: cellText(entry, 'when'),
  instrument: cellText(entry, 'instrument'),
  reason: cellText(entry, 'reason'),
  planned_m: null,
  kept_m: null,
  words: entry.id.trim() === '' ? 'The row does not say which dimension it is.' : `${quoted(entry.id)} is no dimension of this plan, or the name of several. Find out what was measured, and type it in by hand.`,
});

const NOTES = ['by', 'when', 'instrument', 'reason'] as const;

/** Rows of one dimension as one, or undefined when they say different things. */
function joined(entries: readonly FieldEntry[]): FieldEntry | undefined {
  const filled = entries.filter((entry) => cellText(entry, 'measured') !== '');
  const [first] = filled;
  if (!first) return entries.find((entry) => NOTES.some((cell) => cellText(entry, cell) !== '')) ?? entries[0];
  return filled.every((entry) => cellText(entry, 'measured') === cellText(first, 'measured')) ? first : undefined;
}

function isReplanned({ planned_m }: FieldDimension, entries: readonly FieldEntry[]): boolean {
  return entries.some((entry) => {
    const printed_mm = Number(cellText(entry, 'planned') || Number.NaN);
    return Number.isFinite(printed_mm) && Math.abs(printed_mm - toMillimetres(planned_m)) > SAME_PLANNED_mm;
  });
}

const hasPlanned = (entries: readonly FieldEntry[]): boolean => entries.some((entry) => cellText(entry, 'planned') !== '');

/** Judges the rows of one dimension. @param entries  at least one */
export function answerRow(dimension: FieldDimension, entries: readonly FieldEntry[], { kept, lengths, match }: RowContext): FieldRowAnswer {
  const { id, name, planned_m } = dimension;
  const entry = joined(entries);
  const shown = entry ?? entries[0];
  const where = [...new Set(entries.map((each) => each.where))].join(' and ');
  const about = { id, name, where, planned_m, kept_m: kept?.value_m ?? null };
  const notes = shown ? { by: cellText(shown, 'by'), at: cellText(shown, 'when'), instrument: cellText(shown, 'instrument'), reason: cellText(shown, 'reason') } : bare;
  const said = { ...bare, ...about, ...notes };
  if (!entry) {
    const values = entries.map((each) => cellText(each, 'measured')).filter(Boolean);
    return { ...said, kind: 'twice', written: values.join(' and ').slice(0, 200), words: `${name} stands in the file more than once, with different values: ${[...new Set(values)].slice(0, 3).map(quoted).join(', ')}. Find out which one is right.` };
  }
  const written = cellText(entry, 'measured');
  if (written === '') return { ...said, kind: 'empty', words: NOTES.some((cell) => cellText(entry, cell) !== '') ? `Nothing was measured for ${name}, though something is written beside it.` : `Nothing is written for ${name}.` };
  const length = understandLength(written, dimension, lengths);
  if (!length.ok) return { ...said, kind: 'not-understood', written, words: isDamaged(written) ? `${quoted(written)} has letters that were lost on the way: the file was saved in another encoding. Save it as UTF-8 and read it again.` : length.reason };
  const value_m = length.length_m;
  const value = formatLength(value_m, lengths);
  if (match === 'other-plan') return { ...said, kind: 'other-plan', written, value_m, words: `${name} was measured for another plan. Nothing of it is taken.` };
  if (isReplanned(dimension, entries)) {
    return { ...said, kind: 'other-revision', written, value_m, words: `${name} was planned otherwise on that form; now it is ${formatLength(planned_m, lengths)}. Take ${value} only if it was built by the plan as it is now.` };
  }
  if (match === 'other-revision' && !hasPlanned(entries)) {
    return { ...said, kind: 'other-revision', written, value_m, words: `${name} comes from another state of the plan, and the form does not say what was planned then. Take ${value} only if you know that it is the same place.` };
  }
  const doubt = doubtAbout(value_m, dimension, lengths);
  if (doubt) return { ...said, kind: 'implausible', written, value_m, words: doubt };
  if (kept && isAsKept(kept, value_m, notes, written, lengths)) return { ...said, kind: 'unchanged', written, value_m: kept.value_m, words: `${name} stands in the plan already as ${formatLength(kept.value_m, lengths)}.` };
  return { ...said, kind: 'taken', written, value_m, words: kept ? `${name} becomes ${value}; it was ${formatLength(kept.value_m, lengths)}.` : `${name} is ${value}, planned ${formatLength(planned_m, lengths)}.` };
}

/** Whether a row says only what the site record has already: what was printed into the form counts as the value behind it. */
function isAsKept(kept: Measurement, value_m: number, notes: { readonly by: string; readonly at: string; readonly instrument: string; readonly reason: string }, written: string, lengths: LengthSystem): boolean {
  const isSameValue = Math.abs(kept.value_m - value_m) < SAME_m || written === exactLengthText(kept.value_m, lengths) || written === formatLength(kept.value_m, lengths);
  return isSameValue && kept.by === notes.by && kept.at === notes.at && kept.instrument === notes.instrument && kept.reason.replace(/\s+/g, ' ').trim() === notes.reason;
}
