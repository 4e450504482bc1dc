import type { LengthSystem } from '../../units/length-text.ts';
import { toBar, toFeet, toPsi } from '../../units/convert.ts';
import { type QuantityKind, formatFigures, formatQuantity, formatQuantityAgainstLimit } from '../../units/quantity-text.ts';

/** Significant figures of a number inside a formula: more than of its result, so that the result comes out of them. */
const IN_FORMULA = 6;
/** Significant figures of a result. */
const IN_RESULT = 4;
/** Figures below this are shown in full; a formula never needs smaller ones in the units it is written in. */
const SMALLEST = 1e-9;

/** With a true minus, and none before nought. */
const signed = (digits: string): string => (Number.parseFloat(digits) === 0 ? digits.replace(/^-/, '') : digits.replace(/^-/, '−'));
/** Without zeros behind the point: "24.70 kg" as "24.7 kg". */
const trimmed = (words: string): string => words.replace(/(\.\d*?)0+(?=\D|$)/u, (_, kept: string) => (kept === '.' ? '' : kept));

/** A number as it stands in a formula: "39.8659", "0.85242", with a true minus, no zeros behind. */
export function figure(value: number, figures: number = IN_FORMULA): string {
  if (!Number.isFinite(value)) return 'not known';
  if (Math.abs(value) < SMALLEST) return '0';
  const decimals = Math.min(12, Math.max(0, figures - 1 - Math.floor(Math.log10(Math.abs(value)))));
  const digits = value.toFixed(decimals);
  return signed(digits.includes('.') ? digits.replace(/\.?0+$/, '') : digits);
}

/** A negative number in brackets, so that it can stand behind a sign. */
export const bracketed = (value: number): string => (value < 0 ? `(${figure(value)})` : figure(value));

/** SI first, for formulas are worked out in it; where lengths are in feet the trade's unit beside it. */
const both = (write: (system: LengthSystem) => string, lengths: LengthSystem): string => {
  const metric = write('metric');
  if (lengths === 'metric') return metric;
  const feet = write('feet');
  return feet === metric ? metric : `${metric} = ${feet}`;
};

/** A quantity with its unit: "24.13 kg", and beside it "= 53.20 lb" where lengths are in feet. */
export function amount(value: number, kind: QuantityKind, lengths: LengthSystem): string {
  if (kind === 'length') return both((system) => signed(formatQuantity(value, kind, system)), lengths);
  // What is left of forces that cancel is noise of binary numbers.
  const shown = Math.abs(value) < SMALLEST ? 0 : value;
  return both((system) => signed(trimmed(formatFigures(shown, kind, system, kind === 'temperature' ? 1 : IN_RESULT))), lengths);
}

/** A quantity and its limit, printed so finely that they read differently whenever they differ. */
export function amountsApart(value: number, limit: number, kind: QuantityKind, lengths: LengthSystem): { readonly value: string; readonly limit: string } {
  const plain = { value: amount(value, kind, lengths), limit: amount(limit, kind, lengths) };
  if (plain.value !== plain.limit) return plain;
  const fine = (system: LengthSystem) => formatQuantityAgainstLimit(value, limit, kind, system);
  if (fine('metric').value === fine('metric').limit) return plain;
  return { value: both((system) => fine(system).value, lengths), limit: both((system) => fine(system).limit, lengths) };
}

/** Pressure over that around: "137.8 bar gauge", and beside it "= 1999 psi gauge". */
export function gauge(gauge_Pa: number, lengths: LengthSystem): string {
  return both((system) => (system === 'metric' ? `${decimals(toBar(gauge_Pa))} bar gauge` : `${decimals(toPsi(gauge_Pa))} psi gauge`), lengths);
}

/** Four figures. */
const decimals = (value: number): string => signed(trimmed(value.toFixed(Math.min(6, Math.max(0, IN_RESULT - 1 - Math.floor(Math.log10(Math.max(1e-3, Math.abs(value)))))))));

/** A gauge pressure and its limit, told apart whenever they differ. */
export function gaugesApart(value_Pa: number, limit_Pa: number, lengths: LengthSystem): { readonly value: string; readonly limit: string } {
  const plain = { value: gauge(value_Pa, lengths), limit: gauge(limit_Pa, lengths) };
  if (plain.value !== plain.limit || Math.abs(value_Pa - limit_Pa) <= 1e-9 * Math.abs(limit_Pa)) return plain;
  return { value: `${figure(toBar(value_Pa), 12)} bar gauge`, limit: `${figure(toBar(limit_Pa), 12)} bar gauge` };
}

/** A time in seconds, from two minutes on in minutes as well; what never ends says so. */
export function duration(time_s: number): string {
  if (Number.isNaN(time_s)) return 'not known';
  if (time_s > 86_400) return 'longer than a day';
  const seconds = `${decimals(time_s)} s`;
  return time_s >= 120 ? `${seconds} = ${decimals(time_s / 60)} min` : seconds;
}

/** A time and its limit, told apart whenever they differ. */
export function durationsApart(time_s: number, limit_s: number): { readonly value: string; readonly limit: string } {
  const plain = { value: duration(time_s), limit: duration(limit_s) };
  if (plain.value !== plain.limit || Math.abs(time_s - limit_s) <= 1e-9 * limit_s || !Number.isFinite(time_s)) return plain;
  return { value: `${figure(time_s, 12)} s`, limit: `${figure(limit_s, 12)} s` };
}

/** A share of the volume or of a whole, given in per cent: "40.3 %". */
export const percent = (value_pct: number): string => `${figure(value_pct, IN_RESULT)} %`;

/** A percentage and its limit, told apart whenever they differ. */
export function percentsApart(value_pct: number, limit_pct: number): { readonly value: string; readonly limit: string } {
  const plain = { value: percent(value_pct), limit: percent(limit_pct) };
  if (plain.value !== plain.limit || Math.abs(value_pct - limit_pct) <= 1e-9 * Math.abs(limit_pct)) return plain;
  return { value: `${figure(value_pct, 12)} %`, limit: `${figure(limit_pct, 12)} %` };
}

/** A number with a unit that the trade writes one way only: "0.8524 m³/kg". */
export const plainAmount = (value: number, unit: string): string => `${figure(value, IN_RESULT + 1)} ${unit}`.trimEnd();

/** A height above the sea, in whole units of its own rather than feet and inches. */
export const altitude = (altitude_m: number, lengths: LengthSystem): string => both((system) => (system === 'metric' ? `${figure(altitude_m)} m` : `${figure(toFeet(altitude_m))} ft`), lengths);

/** Counted things: "1 cylinder", "5 cylinders". */
export const counted = (count: number, one: string, many: string = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
