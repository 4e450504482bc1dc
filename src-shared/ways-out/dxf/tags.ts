import { INCH_m } from '../../units/convert.ts';

/** Digits behind the point: a billionth of a metre, or of an inch. */
const DIGITS = 9;

/** Escapes what the format gives a meaning of its own, and what its code page does not hold, so that any text stays one line and itself. */
export function dxfWords(words: string): string {
  const oneLine = words.replace(/[\r\n\t]+/g, ' ');
  const percent = oneLine.includes('%%') ? oneLine.replaceAll('%', '%%%') : oneLine;
  return percent.replaceAll('^', '^ ').replace(/\\(?=[UM]\+)|[^\u0020-\u007e]/g, (sign) =>
    Array.from({ length: sign.length }, (_, i) => `\\U+${sign.charCodeAt(i).toString(16).toUpperCase().padStart(4, '0')}`).join(''),
  );
}

/** A number without exponent, in the shortest way. */
export function dxfNumber(value: number): string {
  if (!Number.isFinite(value)) return '0.0';
  const text = value.toFixed(DIGITS).replace(/0+$/, '');
  const whole = text.endsWith('.') ? `${text}0` : text;
  return /^-0\.0$/.test(whole) ? '0.0' : whole;
}

/** Group codes and values while a file is written. Handles are counted up, so that each is used once. */
export class DxfTags {
  private readonly rows: string[] = [];
  private lastHandle = 0;

  /** @param metresPerUnit  what a length of the file is on site */
  constructor(private readonly metresPerUnit: number) {}

  /** A handle that nothing else has. */
  handle(): string {
    this.lastHandle += 1;
    return this.lastHandle.toString(16).toUpperCase();
  }

  /** The handle that comes after all that were given. */
  get nextHandle(): string {
    return (this.lastHandle + 1).toString(16).toUpperCase();
  }

  /** Pairs of code and value as they stand. */
  put(...pairs: readonly (string | number)[]): this {
    for (let i = 0; i + 1 < pairs.length; i += 2) this.rows.push(`${String(pairs[i]).padStart(3)}\r\n${pairs[i + 1]}\r\n`);
    return this;
  }

  /** Words of the user. */
  words(code: number, words: string): this {
    return this.put(code, dxfWords(words));
  }

  /** A plain number or an angle in degrees. */
  number(code: number, value: number): this {
    return this.put(code, dxfNumber(value));
  }

  /** A length [m] in units of the file. */
  length(code: number, length_m: number): this {
    return this.number(code, length_m / this.metresPerUnit);
  }

  /** A place: code, code + 10, code + 20. */
  place(code: number, [x, y, z]: readonly [number, number, number]): this {
    return this.length(code, x).length(code + 10, y).length(code + 20, z);
  }

  /** Everything written so far, and a start afresh with the same handles. */
  take(): string {
    const text = this.rows.join('');
    this.rows.length = 0;
    return text;
  }
}

/** Metres on site per unit of the file. */
export const metresPerUnit = (lengths: 'feet' | 'metric'): number => (lengths === 'feet' ? INCH_m : 1);
