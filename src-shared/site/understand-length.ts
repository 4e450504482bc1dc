import type { FieldDimension } from '../derived/field-dimensions.ts';
import { type LengthSystem, type ParsedLength, formatLength, parseLength } from '../units/length-text.ts';
import { bareUnitOf } from './bare-unit.ts';

const BARE_NUMBER = /^[-+−]?\s*(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
const BARE_INCHES = /^(?:\d+[\s-]+)?\d+\s*[/⁄]\s*\d+$/;

/**
 * Reads a measured length as it was written for a dimension: any way of feet and inches, or metric with its unit.
 * A number alone is in the unit that the planned value is printed in.
 */
export function understandLength(written: string, { planned_m }: Pick<FieldDimension, 'planned_m'>, lengths: LengthSystem): ParsedLength {
  const text = written.trim();
  const unit = bareUnitOf(planned_m, lengths);
  if (BARE_NUMBER.test(text) || (unit.words === 'inches' && BARE_INCHES.test(text))) return parseLength(`${text}${unit.sign}`, lengths);
  const read = parseLength(text, lengths);
  return read.ok ? read : { ok: false, reason: read.reason.replace(/a number alone is \w+\./, `a number alone is ${unit.words}.`) };
}

/** A measured value further from the planned one than both is looked at again: share of the planned value, and length [m] (common practice). */
const FAR_SHARE = 0.2;
const FAR_m = 0.1;
/** Least difference that is asked whether it is a slip of the unit [m]. */
const SLIP_m = 0.01;

/** What a value looks like that is so many times the planned one: which unit was meant, and which was read. */
const SLIPS: readonly (readonly [times: number, words: string])[] = [
  [1000, 'millimetres written as metres'],
  [100, 'centimetres written as metres'],
  [10, 'a decimal point one place too far to the right'],
  [0.1, 'a decimal point one place too far to the left'],
  [12, 'inches written as feet'],
  [1 / 12, 'feet written as inches'],
  [25.4, 'millimetres written as inches'],
  [1 / 25.4, 'inches written as millimetres'],
  [304.8, 'millimetres written as feet'],
  [1 / 304.8, 'feet written as millimetres'],
  [3.2808, 'feet written as metres'],
  [0.3048, 'metres written as feet'],
  [39.37, 'inches written as metres'],
  [2.54, 'centimetres written as inches'],
  [1 / 2.54, 'inches written as centimetres'],
  [30.48, 'centimetres written as feet'],
  [1 / 1000, 'metres written as millimetres'],
  [-1, 'a minus sign left out or put in'],
];
/** How near to such a ratio a value must be to be taken for a slip. */
const SLIP_SHARE = 0.03;

/**
 * Why a measured value is not believed before somebody has looked at it: it is less than nothing, more than a fifth off
 * the planned one and in a ratio to it that a slip of the unit gives, or both a fifth and 100 mm off.
 * Undefined: nothing speaks against it.
 */
export function doubtAbout(value_m: number, { planned_m, name }: Pick<FieldDimension, 'planned_m' | 'name'>, lengths: LengthSystem): string | undefined {
  const shown = formatLength(value_m, lengths);
  const planned = formatLength(planned_m, lengths);
  const off_m = Math.abs(value_m - planned_m);
  if (off_m <= SLIP_m || off_m <= FAR_SHARE * Math.abs(planned_m)) return undefined;
  const times = planned_m === 0 ? Number.NaN : value_m / planned_m;
  const slip = SLIPS.find(([ratio]) => Math.abs(times / ratio - 1) <= SLIP_SHARE);
  if (slip) return `${name} reads ${shown}, planned is ${planned}. That looks like ${slip[1]}. Correct it, or say that it is right.`;
  if (value_m < 0 && planned_m >= 0) return `${name} reads ${shown}, less than nothing. Planned is ${planned}. Measure it again from the stated face.`;
  if (off_m <= FAR_m) return undefined;
  return `${name} reads ${shown}, planned is ${planned}: ${formatLength(off_m, lengths)} off. Measure it again, or say that it is right.`;
}
