import type { Derived } from '../derived/derived.ts';
import { fieldDimensionsOf } from '../derived/field-dimensions.ts';
import { HOLD_POINTS } from '../model/hold-points.ts';
import { toMillimetres } from '../units/convert.ts';
import { exactLengthText } from '../units/exact-length-text.ts';
import { formatLength } from '../units/length-text.ts';
import { formIdentityOf, identityText } from './form-identity.ts';

/** Headings of the table of field dimensions, as it is written and read. */
export const FIELD_HEADS = ['id', 'dimension', 'from', 'to', 'planned', 'planned mm', 'measured', 'by', 'when', 'instrument', 'reason', 'done', 'witness', 'form'] as const;

/** A cell that a spreadsheet takes for a formula is written so that it does not. */
const harmless = (text: string): string => (/^[=+@\t\r-]/.test(text) ? `'${text}` : text);
const written = (text: string): string => {
  const safe = harmless(text);
  return /[",;\t\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
};

/**
 * The field dimensions and hold points of a plan as comma-separated text to be filled in with a spreadsheet: what is
 * measured already is in it. UTF-8 with a byte order mark, so that spreadsheets read it right.
 */
export function fieldTableText(derived: Derived): string {
  const dimensions = fieldDimensionsOf(derived);
  const form = identityText(formIdentityOf(derived, dimensions));
  const { lengths } = derived.plan.settings;
  const { measurements, checks } = derived.plan.siteRecord;
  const rows = dimensions.map(({ id, name, from, to, planned_m }) => {
    const kept = measurements[id];
    return [id, name, from, to, formatLength(planned_m, lengths), toMillimetres(planned_m).toFixed(1), kept ? exactLengthText(kept.value_m, lengths) : '', kept?.by ?? '', kept?.at ?? '', kept?.instrument ?? '', kept?.reason ?? '', '', '', form];
  });
  const points = HOLD_POINTS.map(({ id, words }) => {
    const kept = checks[id];
    return [id, words, '', '', '', '', '', kept?.by ?? '', kept?.at ?? '', '', '', kept?.done ? 'yes' : '', kept?.witness ?? '', form];
  });
  return `\ufeff${[FIELD_HEADS, ...rows, ...points].map((cells) => `${cells.map(written).join(',')}\r\n`).join('')}`;
}
