import { UnderlayProblem } from '../drawing.ts';
import { asciiOf, parseNumber } from './parse-number.ts';

const LINE_FEED = 10;
const RETURN = 13;
const HIGHEST_CODE = 1100;
/** From this code on a record holds an embedded object, whose codes would be mistaken for its own. */
const EMBEDDED_OBJECT = 101;
const COMMENT = 999;
/** No length, place or count of a plan is larger; the header alone may hold 1e20 for "nothing drawn". */
const LARGEST = 1e15;

/** Turns the bytes of one value into text. */
export type ReadText = (bytes: Uint8Array) => string;

/**
 * Walks a DXF file record by record. The file is pairs of lines, a group code and a value; a record is the
 * pairs from one code 0 up to the next. Numbers and texts are read from the bytes only when asked for.
 */
export class Records {
  /** Value of the record's code 0: "LINE", "SECTION" … */
  type = '';
  /** Pairs after code 0. */
  count = 0;
  /** How text is decoded; set once the header has told. */
  readText: ReadText = (bytes) => asciiOf(bytes, 0, bytes.length);

  private codes = new Int32Array(256);
  private starts = new Int32Array(256);
  private ends = new Int32Array(256);
  private readonly firstAt = new Int32Array(HIGHEST_CODE);
  private readonly seenIn = new Int32Array(HIGHEST_CODE);
  private serial = 0;
  private at: number;
  private lineStart = 0;
  private lineEnd = 0;
  private nextType: string | undefined;

  constructor(private readonly bytes: Uint8Array) {
    // A byte order mark may precede the first code.
    this.at = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
    this.readPairsUntilRecord(true);
  }

  /** How much of the file has been read, 0 … 1. */
  get done(): number {
    return this.bytes.length === 0 ? 1 : this.at / this.bytes.length;
  }

  /** Type of the record that `next` will move to; undefined at the end of the data. */
  get upcoming(): string | undefined {
    return this.nextType;
  }

  /** Moves to the next record. @returns false at the end of the data */
  next(): boolean {
    if (this.nextType === undefined) return false;
    this.type = this.nextType;
    this.count = 0;
    this.serial += 1;
    this.readPairsUntilRecord(false);
    return true;
  }

  /** Group code of pair `i`. */
  codeAt(i: number): number {
    return this.codes[i] ?? -1;
  }

  has(code: number): boolean {
    return this.seenIn[code] === this.serial;
  }

  /** Index of the first pair with this code, or −1. */
  indexOf(code: number): number {
    return this.has(code) ? (this.firstAt[code] ?? -1) : -1;
  }

  /** Number of the first pair with this code; `otherwise` when there is none. @throws {UnderlayProblem} when it is no number */
  number(code: number, otherwise: number): number {
    const i = this.indexOf(code);
    return i < 0 ? otherwise : this.numberAt(i);
  }

  /** Whole number of the first pair with this code. */
  whole(code: number, otherwise: number): number {
    return Math.trunc(this.number(code, otherwise));
  }

  text(code: number, otherwise = ''): string {
    const i = this.indexOf(code);
    return i < 0 ? otherwise : this.textAt(i);
  }

  numberAt(i: number): number {
    const start = this.starts[i] ?? 0;
    const end = this.ends[i] ?? 0;
    const value = parseNumber(this.bytes, start, end);
    if (Number.isNaN(value) || (Math.abs(value) > LARGEST && this.type !== 'SECTION')) {
      throw new UnderlayProblem(
        'The file is damaged: a number in it cannot be true.',
        `line ${this.lineNumberOf(start)}, ${this.type.slice(0, 40)}, “${this.readText(this.bytes.subarray(start, Math.min(end, start + 30))).trim()}”`,
        'Export the plan again as ASCII DXF.',
      );
    }
    return value;
  }

  textAt(i: number): string {
    return this.readText(this.bytes.subarray(this.starts[i] ?? 0, this.ends[i] ?? 0));
  }

  /** Where the reader is, for messages. */
  get whereNow(): string {
    return `line ${this.lineNumberOf(this.lineStart)}`;
  }

  private lineNumberOf(offset: number): number {
    let lines = 1;
    for (let i = 0; i < offset; i += 1) if (this.bytes[i] === LINE_FEED || (this.bytes[i] === RETURN && this.bytes[i + 1] !== LINE_FEED)) lines += 1;
    return lines;
  }

  /** Sets lineStart and lineEnd to the next line without its end. @returns false at the end of the data */
  private nextLine(): boolean {
    const { bytes } = this;
    const { length } = bytes;
    let at = this.at;
    if (at >= length) return false;
    this.lineStart = at;
    while (at < length) {
      const byte = bytes[at];
      if (byte === LINE_FEED || byte === RETURN) break;
      at += 1;
    }
    this.lineEnd = at;
    this.at = bytes[at] === RETURN && bytes[at + 1] === LINE_FEED ? at + 2 : at + 1;
    return true;
  }

  /** Group code on the current line, or −1. */
  private readCode(): number {
    const { bytes } = this;
    let at = this.lineStart;
    let end = this.lineEnd;
    while (at < end && (bytes[at] === 32 || bytes[at] === 9)) at += 1;
    while (end > at && (bytes[end - 1] === 32 || bytes[end - 1] === 9)) end -= 1;
    if (at === end || end - at > 5) return -1;
    let code = 0;
    const isNegative = bytes[at] === 45;
    if (isNegative) at += 1;
    for (; at < end; at += 1) {
      const digit = (bytes[at] ?? 0) - 48;
      if (digit < 0 || digit > 9) return -1;
      code = code * 10 + digit;
    }
    // Codes below zero are marks inside a program, never in a plan; they are passed over like comments.
    return isNegative ? COMMENT : code;
  }

  private readPairsUntilRecord(isStart: boolean): void {
    let isEmbedded = false;
    this.nextType = undefined;
    while (this.nextLine()) {
      const code = this.readCode();
      if (code < 0) {
        // A last line without a value is the rest of a cut file, and blank lines may follow EOF.
        if (this.at >= this.bytes.length || this.type === 'EOF') return;
        throw new UnderlayProblem(
          isStart ? 'This is not a DXF file.' : 'The file is damaged: a group code is missing where one must stand.',
          this.whereNow,
          'Export the plan again as ASCII DXF.',
        );
      }
      if (!this.nextLine()) return;
      if (code === 0) {
        let start = this.lineStart;
        let end = this.lineEnd;
        while (start < end && (this.bytes[start] ?? 0) <= 32) start += 1;
        while (end > start && (this.bytes[end - 1] ?? 0) <= 32) end -= 1;
        this.nextType = asciiOf(this.bytes, start, Math.min(end, start + 60));
        return;
      }
      if (code === EMBEDDED_OBJECT) isEmbedded = true;
      if (code === COMMENT || isEmbedded || isStart) continue;
      this.keepPair(code);
    }
  }

  private keepPair(code: number): void {
    const i = this.count;
    if (i === this.codes.length) {
      const grown = (old: Int32Array) => {
        const bigger = new Int32Array(old.length * 2);
        bigger.set(old);
        return bigger;
      };
      this.codes = grown(this.codes);
      this.starts = grown(this.starts);
      this.ends = grown(this.ends);
    }
    this.codes[i] = code;
    this.starts[i] = this.lineStart;
    this.ends[i] = this.lineEnd;
    this.count = i + 1;
    if (code < HIGHEST_CODE && this.seenIn[code] !== this.serial) {
      this.seenIn[code] = this.serial;
      this.firstAt[code] = i;
    }
  }
}
