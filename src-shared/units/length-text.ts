import { FOOT_m, INCH_m } from './convert.ts';

/** How the user wants lengths shown. Either way of writing is understood at any time. */
export type LengthSystem = 'feet' | 'metric';
/** A length that was understood, or a sentence that says why not, with an example. */
export type ParsedLength = { readonly ok: true; readonly length_m: number } | { readonly ok: false; readonly reason: string };
/** `site`: 1/16 in or 1 mm, what a tape shows. `fine`: 1/64 in or 0.1 mm. */
export type LengthPrecision = 'site' | 'fine';

/** Longest length that is understood [m]; nothing on a plan is larger. */
const LONGEST_m = 100_000;
const LONGEST_TEXT = 60;

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2', '⅓': '1/3', '⅔': '2/3', '¼': '1/4', '¾': '3/4', '⅕': '1/5', '⅖': '2/5', '⅗': '3/5', '⅘': '4/5',
  '⅙': '1/6', '⅚': '5/6', '⅐': '1/7', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8', '⅑': '1/9', '⅒': '1/10',
};
const METRES_PER: Readonly<Record<string, number>> = { mm: 0.001, cm: 0.01, m: 1 };

const number = String.raw`(?:\d+(?:\.\d*)?|\.\d+)`;
const fraction = String.raw`\d+/\d+`;
/** Whole inches with a fraction, a fraction alone, or a decimal number. A dash may join whole and fraction. */
const amount = String.raw`(?:(?<whole>\d+)(?:[ ]*-[ ]*|[ ]+)(?<part>${fraction})|(?<only>${fraction})|(?<decimal>${number}))`;

const METRIC = new RegExp(`^(?<value>${number}) ?(?<unit>mm|cm|m)$`);
const BARE = new RegExp(`^${number}$`);
const FEET_ONLY = new RegExp(`^${amount} ?'$`);
const INCHES_ONLY = new RegExp(`^${amount} ?"$`);
const FEET_MARK_INCHES = new RegExp(`^(?<feet>\\d+) ?'(?: ?- ?| ?)${amount} ?"?$`);
const FEET_DASH_INCHES = new RegExp(`^(?<feet>\\d+) ?- ?${amount} ?"?$`);

/** Brings the many ways of writing marks, spaces and fractions to one. */
const plain = (text: string): string =>
  text
    .replace(/[½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒]/g, (sign) => ` ${VULGAR[sign] ?? sign}`)
    .toLowerCase()
    .replace(/[′’‘ʹʼ`´]/g, "'")
    .replace(/[″”“ʺ]|''/g, '"')
    .replace(/[‐‑‒–—−]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/ ?\/ ?/g, '/')
    .replace(/(?<=[\d. ])(?:feet|foot|ft)\.?(?![a-z])/g, "'")
    .replace(/(?<=[\d. ])(?:inches|inch|in)\.?(?![a-z])/g, '"')
    .replace(/(?<=[\d. ])(?:millimet(?:re|er)s?)(?![a-z])/g, 'mm')
    .replace(/(?<=[\d. ])(?:centimet(?:re|er)s?)(?![a-z])/g, 'cm')
    .replace(/(?<=[\d. ])(?:met(?:re|er)s?)(?![a-z])/g, 'm')
    .replace(/\s+/g, ' ')
    .replace(/ (?=['"])/g, '')
    .replace(/- (?=\d)/g, '-')
    .trim();

const exampleFor = (system: LengthSystem): string => (system === 'feet' ? `11' 4 1/2", 11-4 1/2 or 136.5"` : '3.46, 3460 mm or 346 cm');

/** Value of a matched `amount`, or a sentence that says what is wrong with it. */
function amountOf(groups: Readonly<Record<string, string | undefined>>): number | string {
  const { whole, part, only, decimal } = groups;
  if (decimal !== undefined) return Number(decimal);
  const [top = '', bottom = ''] = (part ?? only ?? '').split('/');
  if (Number(bottom) === 0) return 'A fraction cannot have 0 below its line.';
  if (Number(top) >= Number(bottom)) return `The fraction ${top}/${bottom} is not less than 1. Write whole inches apart from the fraction, such as 5 1/2".`;
  return Number(whole ?? 0) + Number(top) / Number(bottom);
}

/** Understands an unsigned length in plain writing, in metres, or says what is wrong. */
function unsigned_m(text: string, system: LengthSystem): number | string {
  const metric = METRIC.exec(text)?.groups;
  if (metric) return Number(metric.value) * (METRES_PER[metric.unit ?? ''] ?? Number.NaN);
  if (BARE.test(text)) return Number(text) * (system === 'feet' ? FOOT_m : 1);

  const inchesOnly = INCHES_ONLY.exec(text)?.groups;
  if (inchesOnly) {
    const inches = amountOf(inchesOnly);
    return typeof inches === 'string' ? inches : inches * INCH_m;
  }
  const feetOnly = FEET_ONLY.exec(text)?.groups;
  if (feetOnly) {
    const feet = amountOf(feetOnly);
    return typeof feet === 'string' ? feet : feet * FOOT_m;
  }
  const both = (FEET_MARK_INCHES.exec(text) ?? FEET_DASH_INCHES.exec(text))?.groups;
  if (!both) {
    if (/^(?:\d+[ -]+)?\d+\/\d+$/.test(text)) return `Say whether ${text} is feet or inches, such as 4 1/2" or 0-4 1/2.`;
    return '';
  }
  if (both.only !== undefined && !text.includes("'")) return `Say whether ${text} is feet or inches, such as 4 1/2" or 0-4 1/2.`;
  const inches = amountOf(both);
  if (typeof inches === 'string') return inches;
  if (inches >= 12) return 'After feet, inches must be less than 12. Write 12-2 for 11 feet 14 inches, or 146" in inches alone.';
  return Number(both.feet) * FOOT_m + inches * INCH_m;
}

/**
 * Understands a typed length, whichever way of writing is set: feet, inches and fractions in every usual
 * form (`11' 4 1/2"`, `11-4 1/2`, `11.375'`, `136.5"`), or metric with its unit. A bare number is feet
 * when lengths are shown in feet and metres when they are shown metric; nothing is ever guessed from its size.
 * @returns the length [m], negative with a leading minus; or a sentence for the user with an example
 */
export function parseLength(text: string, system: LengthSystem): ParsedLength {
  const no = (reason: string): ParsedLength => ({ ok: false, reason });
  const example = exampleFor(system);
  if (text.trim() === '') return no(`Type a length, such as ${example}.`);
  const shown = text.trim().slice(0, 24);
  const written = text.length > LONGEST_TEXT ? '' : plain(text);
  const sign = /^[+-]? ?/.exec(written)?.[0] ?? '';
  let body = written.slice(sign.length);
  const comma = /^(\d+),(\d+)(?= ?(?:$|mm$|cm$|m$|'$|"$))/.exec(body);
  if (comma) {
    if (comma[2]?.length === 3 && (comma[1]?.length ?? 0) <= 3 && !comma[1]?.startsWith('0')) {
      return no(`“${shown}” can be read in two ways. Write the decimals after a point and no sign between thousands, such as 3.46 m or 3460 mm.`);
    }
    body = body.replace(',', '.');
  }
  const length_m = unsigned_m(body, system);
  if (typeof length_m === 'string') {
    return no(length_m || `“${shown}” is not a length. Write it as ${example}; a number alone is ${system === 'feet' ? 'feet' : 'metres'}.`);
  }
  if (!(length_m <= LONGEST_m)) return no(`“${shown}” is longer than anything on a plan. Write a length such as ${example}.`);
  return { ok: true, length_m: sign.trim() === '-' && length_m > 0 ? -length_m : length_m };
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** Feet, inches and a fraction, rounded to 1/parts of an inch. */
function feetText(length_m: number, parts: number): string {
  const ticks = Math.round((Math.abs(length_m) / INCH_m) * parts);
  const feet = Math.floor(ticks / (12 * parts));
  const inches = Math.floor((ticks - feet * 12 * parts) / parts);
  const rest = ticks - (feet * 12 + inches) * parts;
  const shared = gcd(parts, rest);
  const fraction = rest === 0 ? '' : `${rest / shared}/${parts / shared}`;
  const sign = length_m < 0 && ticks > 0 ? '-' : '';
  if (feet > 0) return `${sign}${feet}'-${inches}${fraction && ` ${fraction}`}"`;
  return `${sign}${[inches || !fraction ? inches : '', fraction].filter((part) => part !== '').join(' ')}"`;
}

/** Metres from one metre on, millimetres below; `digits` are those of the millimetre. */
function metricText(length_m: number, digits: number): string {
  const size_m = Math.abs(length_m);
  const inMillimetres = (size_m * 1000).toFixed(digits);
  const sign = length_m < 0 && Number(inMillimetres) > 0 ? '-' : '';
  return Number(inMillimetres) < 1000 ? `${sign}${inMillimetres} mm` : `${sign}${size_m.toFixed(digits + 3)} m`;
}

/**
 * A length as the user reads it, rounded to what a tape shows: `11'-4 1/2"` and `9 1/2"` (1/16 in), or `3.460 m` and `254 mm` (1 mm).
 * What it prints can be typed back. A length that is not a number prints as “not known”.
 * @param options.precision `fine` rounds to 1/64 in or 0.1 mm
 */
export function formatLength(length_m: number, system: LengthSystem, options: { readonly precision?: LengthPrecision } = {}): string {
  if (!Number.isFinite(length_m)) return 'not known';
  const isFine = options.precision === 'fine';
  return system === 'feet' ? feetText(length_m, isFine ? 64 : 16) : metricText(length_m, isFine ? 1 : 0);
}

/** Differences below this are float noise, not a difference [m]: the slack that the checks give too. */
const SAME_LENGTH_m = 1e-9;
/** Digits of the inch or millimetre, tried one after the other. */
const FINER_DIGITS = [3, 5, 9];

/**
 * A value and its limit, printed alike and so finely that they read differently whenever they differ:
 * 9.97 in against 10 in never prints as 10 (check D8). Rounding then never hides a fault.
 * @returns both texts, each to be shown in place of `formatLength`
 */
export function formatAgainstLimit(value_m: number, limit_m: number, system: LengthSystem): { readonly value: string; readonly limit: string } {
  const both = (way: (length_m: number) => string) => ({ value: way(value_m), limit: way(limit_m) });
  const coarse = both((length_m) => formatLength(length_m, system));
  if (coarse.value !== coarse.limit || !(Math.abs(value_m - limit_m) > SAME_LENGTH_m)) return coarse;
  const fine = both((length_m) => formatLength(length_m, system, { precision: 'fine' }));
  if (fine.value !== fine.limit) return fine;
  for (const digits of FINER_DIGITS) {
    const printed = both((length_m) => (system === 'feet' ? `${(length_m / INCH_m).toFixed(digits)}"` : metricText(length_m, digits)));
    if (printed.value !== printed.limit) return printed;
  }
  return coarse;
}
