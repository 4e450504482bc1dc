const MINUS = 45;
const PLUS = 43;
const POINT = 46;
const ZERO = 48;
const NINE = 57;
const BIG_E = 69;
const SMALL_E = 101;

/** Powers of ten that a double holds exactly. */
const EXACT_POWERS = Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));

const isSpace = (byte: number): boolean => byte === 32 || byte === 9;

/** ASCII text of a few bytes. */
export const asciiOf = (bytes: Uint8Array, start: number, end: number): string => {
  let text = '';
  for (let i = start; i < end; i += 1) text += String.fromCharCode(bytes[i] ?? 0);
  return text;
};

/**
 * Reads a decimal number from ASCII bytes without making a string.
 * Up to 15 digits with a small exponent are exact by one multiplication or division of exact doubles;
 * anything longer goes the language's own way. Same result as `Number()` for every decimal number.
 * @returns NaN when the bytes are no finite decimal number
 */
export function parseNumber(bytes: Uint8Array, start: number, end: number): number {
  let at = start;
  let last = end;
  while (at < last && isSpace(bytes[at] ?? 0)) at += 1;
  while (last > at && isSpace(bytes[last - 1] ?? 0)) last -= 1;
  const first = at;
  let sign = 1;
  if (bytes[at] === MINUS) {
    sign = -1;
    at += 1;
  } else if (bytes[at] === PLUS) {
    at += 1;
  }
  let mantissa = 0;
  let digits = 0;
  let anyDigit = false;
  let exponent = 0;
  let inFraction = false;
  for (; at < last; at += 1) {
    const byte = bytes[at] ?? 0;
    if (byte >= ZERO && byte <= NINE) {
      anyDigit = true;
      mantissa = mantissa * 10 + (byte - ZERO);
      if (mantissa > 0) digits += 1;
      if (inFraction) exponent -= 1;
    } else if (byte === POINT && !inFraction) {
      inFraction = true;
    } else {
      break;
    }
  }
  if (!anyDigit) return Number.NaN;
  if (at < last) {
    const byte = bytes[at] ?? 0;
    if (byte !== BIG_E && byte !== SMALL_E) return Number.NaN;
    at += 1;
    const isNegative = bytes[at] === MINUS;
    if (isNegative || bytes[at] === PLUS) at += 1;
    if (at === last) return Number.NaN;
    let power = 0;
    for (; at < last; at += 1) {
      const digit = (bytes[at] ?? 0) - ZERO;
      if (digit < 0 || digit > 9) return Number.NaN;
      power = Math.min(power * 10 + digit, 10_000);
    }
    exponent += isNegative ? -power : power;
  }
  const scale = EXACT_POWERS[Math.abs(exponent)];
  if (digits <= 15 && scale !== undefined) return sign * (exponent < 0 ? mantissa / scale : mantissa * scale);
  const value = Number(asciiOf(bytes, first, last));
  return Number.isFinite(value) ? value : Number.NaN;
}
