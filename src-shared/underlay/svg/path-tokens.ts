const COMMANDS = 'MmLlHhVvCcSsQqTtAaZz';

const isDigit = (code: number): boolean => code >= 48 && code <= 57;
const isSign = (code: number): boolean => code === 43 || code === 45;
const isSeparator = (code: number): boolean => code === 32 || code === 44 || (code >= 9 && code <= 13);

/** Walks the letters and numbers of path data; flags of an arc are single digits and may stand unseparated. */
export class PathTokens {
  private at = 0;
  constructor(private readonly text: string) {}

  private skip(): void {
    while (isSeparator(this.text.charCodeAt(this.at))) this.at += 1;
  }

  /** The next letter, or undefined when something else stands there. */
  command(): string | undefined {
    this.skip();
    const letter = this.text[this.at];
    if (letter === undefined || !COMMANDS.includes(letter)) return undefined;
    this.at += 1;
    return letter;
  }

  /** The next number, or undefined. */
  number(): number | undefined {
    this.skip();
    const { text } = this;
    let end = this.at;
    if (isSign(text.charCodeAt(end))) end += 1;
    const whole = end;
    while (isDigit(text.charCodeAt(end))) end += 1;
    let digits = end - whole;
    if (text.charCodeAt(end) === 46) {
      const fraction = end + 1;
      end = fraction;
      while (isDigit(text.charCodeAt(end))) end += 1;
      digits += end - fraction;
    }
    if (digits === 0) return undefined;
    const mark = text.charCodeAt(end);
    if (mark === 69 || mark === 101) {
      const power = isSign(text.charCodeAt(end + 1)) ? end + 2 : end + 1;
      if (isDigit(text.charCodeAt(power))) {
        end = power + 1;
        while (isDigit(text.charCodeAt(end))) end += 1;
      }
    }
    const value = Number(text.slice(this.at, end));
    this.at = end;
    return Number.isFinite(value) ? value : undefined;
  }

  /** The next flag, 0 or 1, or undefined. */
  flag(): number | undefined {
    this.skip();
    const c = this.text[this.at];
    if (c !== '0' && c !== '1') return undefined;
    this.at += 1;
    return Number(c);
  }
}
