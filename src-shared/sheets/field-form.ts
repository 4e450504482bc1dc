import type { FieldDimension } from '../derived/field-dimensions.ts';
import type { Measurement, Plan } from '../model/plan.ts';
import { bareUnitOf } from '../site/bare-unit.ts';
import type { FieldCell } from '../site/field-entries.ts';
import { IDENTITY_FIELD, fieldNameOf } from '../site/field-names.ts';
import { type FormIdentity, identityText } from '../site/form-identity.ts';
import { toMillimetres } from '../units/convert.ts';
import { exactLengthText } from '../units/exact-length-text.ts';
import { type LengthSystem, formatLength } from '../units/length-text.ts';
import type { FormCell } from './sheet.ts';
import type { Cell } from './tables.ts';

type Check = Plan['siteRecord']['checks'][string];

const text = (id: string, cell: FieldCell, tooltip: string, value = '', isLong = false): Cell => ({ kind: 'field', form: { name: fieldNameOf(id, cell), kind: 'text', tooltip, value, ...(isLong ? { isLong } : {}) } });

const EXAMPLES: Readonly<Record<LengthSystem, string>> = {
  feet: `Write feet and inches, such as 11' 4 1/2", or metric with its unit, such as 3467 mm`,
  metric: `Write metric with its unit, such as 3467 mm, or feet and inches, such as 11' 4 1/2"`,
};

/** What the viewer shows beside the field of a measured dimension: planned value and the units that are understood. */
export function measuredTooltip({ name, from, to, planned_m }: FieldDimension, lengths: LengthSystem): string {
  const planned = `Planned ${formatLength(planned_m, lengths)} (${toMillimetres(planned_m).toFixed(1)} mm)`;
  return `${name}, from ${from} to ${to}. ${planned}. ${EXAMPLES[lengths]}; a number alone is ${bareUnitOf(planned_m, lengths).words}.`;
}

/** The field for the measured value of a dimension. */
export const measuredField = (dimension: FieldDimension, lengths: LengthSystem, measured: Measurement | undefined): Cell =>
  text(dimension.id, 'measured', measuredTooltip(dimension, lengths), measured ? exactLengthText(measured.value_m, lengths) : '');

/** The fields for who measured, when, with what, and why it was built otherwise. */
export const noteFields = (id: string, name: string, measured: Measurement | undefined): Cell[] => [
  text(id, 'by', `${name}: initials of who measured`, measured?.by ?? ''),
  text(id, 'when', `${name}: date and time, such as 2026-03-04 15:20`, measured?.at ?? ''),
  text(id, 'instrument', `${name}: tape, laser or other instrument`, measured?.instrument ?? ''),
  text(id, 'reason', `${name}: why it was built otherwise than planned, or a note`, measured?.reason ?? '', true),
];

/** The fields of a hold point: done, by, witness, when. */
export const checkFields = (id: string, isWitnessed: boolean, check: Check | undefined): Cell[] => [
  { kind: 'field', form: { name: fieldNameOf(id, 'done'), kind: 'tick', tooltip: `${id}: tick it when it is done and found good`, value: check?.done ? 'yes' : '' } },
  text(id, 'by', `${id}: who did it`, check?.by ?? ''),
  text(id, 'witness', isWitnessed ? `${id}: who saw it` : `${id}: no witness is asked for`, check?.witness ?? ''),
  text(id, 'when', `${id}: date and time, such as 2026-03-04 15:20`, check?.at ?? ''),
];

/** Which form it is, on every sheet of it: a form of another plan or another state of it is recognised. */
export const identityCell = (identity: FormIdentity): FormCell => ({ name: IDENTITY_FIELD, kind: 'fixed', tooltip: 'Which plan, in which state, this form was printed from', value: identityText(identity) });
