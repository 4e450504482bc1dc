import type { Measurement } from '../model/plan.ts';
import { siteRecordSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';

/** A measured dimension under its printed id; what is left out stays as the record has it, else blank. */
export type MeasuredEntry = { readonly id: string; readonly value_m: number } & Partial<Omit<Measurement, 'value_m'>>;

const BLANK: Omit<Measurement, 'value_m'> = { by: '', at: '', instrument: '', reason: '', approvedBy: '', photos: [] };
const FIELDS = siteRecordSchema.shape.measurements.valueType.partial();

const labelOf = (_plan: unknown, entries: readonly MeasuredEntry[]): string => (entries.length === 1 ? 'Record measurement' : `Record ${entries.length} measurements`);

/**
 * Takes measured dimensions into the site record, any number in one step. The plan itself stays as it is drawn.
 * Refuses an empty list, a blank id, a length that is no number or too long, and words that are too long.
 */
export const recordMeasurements = command(labelOf, (draft, entries: readonly MeasuredEntry[]) => {
  if (entries.length === 0) refuse('Nothing was measured: there is nothing to record.');
  const { measurements } = draft.siteRecord;
  for (const { id, ...change } of entries) {
    if (id.trim() === '' || id.length > 200) refuse('This dimension has no name that it could be kept under.');
    if (!Number.isFinite(change.value_m)) refuse('A measured length must be a number.');
    const kept: Measurement = Object.hasOwn(measurements, id) ? { ...BLANK, ...measurements[id], value_m: change.value_m } : { ...BLANK, value_m: change.value_m };
    applyChange(kept, FIELDS, change);
    measurements[id] = kept;
  }
});
