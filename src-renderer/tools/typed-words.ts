import { parseLength } from '#shared/units/length-text';
import type { Settings } from '#shared/model/plan';

/** How far a run is set over by two 45° elbows [m]; left and right are as seen in the direction of the run. */
export interface TypedOffset {
  /** Distance without a side: toward the pointer. */
  readonly plain_m: number | null;
  readonly left_m: number;
  readonly up_m: number;
  readonly east_m: number;
  readonly north_m: number;
}

/** What words say of a run besides length, direction and height. */
export interface TypedRun {
  /** Up from where the run is; down is negative [m]. */
  readonly rise_m: number | null;
  /** On to this far east or north of the plan's origin [m]. */
  readonly x_m: number | null;
  readonly y_m: number | null;
  /** Turn from the direction of the run, left positive [rad]. */
  readonly turn_rad: number | null;
  readonly offset: TypedOffset | null;
}

/** A whole line of words, with the figures that have a part of their own. */
export interface TypedLine extends TypedRun {
  readonly length_m: number | null;
  readonly angle_rad: number | null;
  readonly height_m: number | null;
}

const COMPASS = { east: 0, north: Math.PI / 2, west: Math.PI, south: -Math.PI / 2 } as const;
const WORD = /(?<=^|[\s,])(offset|north|south|east|west|left|right|up|down|at|then|and|x|y|z)(?=$|[\s,\d.'"+\-−½⅓⅔¼¾⅛⅜⅝⅞])/gi;

/** What such a line can look like. */
export const WORDS_EXAMPLE = `For example up 1-6, down 3", at 9-2, west 24-6, x 5-0, offset 12" left or offset 12" left 9" up.`;

/** Whether a text is said in words rather than as one figure. */
export const isInWords = (text: string): boolean => new RegExp(WORD.source, 'i').test(text);

type Item = { readonly word: string } | { readonly value_m: number };
const isWord = (item: Item | undefined): item is { readonly word: string } => item !== undefined && 'word' in item;

function itemsOf(text: string, system: Settings['lengths']): readonly Item[] | string {
  const items: Item[] = [];
  let from = 0;
  const figure = (upTo: number): string | null => {
    const part = text.slice(from, upTo).replace(/^[\s,]+|[\s,]+$/g, '');
    if (part === '') return null;
    const length = parseLength(part, system);
    if (!length.ok) return length.reason;
    items.push({ value_m: length.length_m });
    return null;
  };
  for (const match of text.matchAll(WORD)) {
    const refused = figure(match.index);
    if (refused) return refused;
    const word = (match[1] ?? '').toLowerCase();
    if (word !== 'and' && word !== 'then') items.push({ word });
    from = match.index + match[0].length;
  }
  return figure(text.length) ?? items;
}

/** Side words and figures in pairs, whichever comes first; a figure alone has no side. */
function pairsOf(items: readonly Item[]): readonly { readonly word: string | null; readonly value_m: number }[] | string {
  const wordFirst = isWord(items[0]);
  const pairs: { word: string | null; value_m: number }[] = [];
  for (let i = 0; i < items.length; i += 1) {
    const [one, other] = [items[i], items[i + 1]];
    if (isWord(one)) {
      if (!wordFirst || other === undefined || isWord(other)) return `Say how far “${one.word}”.`;
      pairs.push({ word: one.word, value_m: other.value_m });
      i += 1;
    } else if (one && !wordFirst && isWord(other)) {
      pairs.push({ word: other.word, value_m: one.value_m });
      i += 1;
    } else if (one) pairs.push({ word: null, value_m: one.value_m });
  }
  return pairs;
}

function offsetOf(items: readonly Item[]): TypedOffset | string {
  const pairs = pairsOf(items);
  if (typeof pairs === 'string') return pairs;
  const offset = { plain_m: null as number | null, left_m: 0, up_m: 0, east_m: 0, north_m: 0 };
  for (const { word, value_m } of pairs) {
    if (word === null) offset.plain_m = value_m;
    else if (word === 'left' || word === 'right') offset.left_m += word === 'left' ? value_m : -value_m;
    else if (word === 'up' || word === 'down') offset.up_m += word === 'up' ? value_m : -value_m;
    else if (word === 'east' || word === 'west') offset.east_m += word === 'east' ? value_m : -value_m;
    else offset.north_m += word === 'north' ? value_m : -value_m;
  }
  return pairs.length === 0 ? 'Say how far the run is set over.' : offset;
}

const SIDES: ReadonlySet<string> = new Set(['left', 'right', 'up', 'down', 'north', 'south', 'east', 'west']);

/**
 * Reads a line of words about a run: `up 1-6`, `down 3"`, `at 9-2` or `z 9-2`, `west 24-6`, `left 3-0`, `x 5-0 y 10-0`,
 * `offset 12" left`, `offset 12" left 9" up`. Several may follow each other in one line.
 * @returns what it says, lengths in metres, or a sentence that says what was not understood
 */
export function readWords(text: string, system: Settings['lengths']): TypedLine | string {
  const items = itemsOf(text, system);
  if (typeof items === 'string') return items;
  const begins = items.findIndex((item) => isWord(item) && item.word === 'offset');
  let before: readonly Item[] = items;
  let offset: TypedOffset | null = null;
  if (begins >= 0) {
    const rest = items.slice(begins + 1);
    const ends = rest.findIndex((item) => isWord(item) && !SIDES.has(item.word));
    const read = offsetOf(ends < 0 ? rest : rest.slice(0, ends));
    if (typeof read === 'string') return read;
    offset = read;
    before = [...items.slice(0, begins), ...(ends < 0 ? [] : rest.slice(ends))];
  }
  const pairs = pairsOf(before);
  if (typeof pairs === 'string') return pairs;
  const line = { length_m: null as number | null, angle_rad: null as number | null, height_m: null as number | null, rise_m: null as number | null, x_m: null as number | null, y_m: null as number | null, turn_rad: null as number | null };
  for (const { word, value_m } of pairs) {
    switch (word) {
      case 'x':
      case 'y':
        if (line[`${word}_m`] !== null) return `“${word}” is said twice.`;
        line[`${word}_m`] = value_m;
        break;
      case 'z':
      case 'at':
        if (line.height_m !== null) return 'The height is said twice.';
        line.height_m = value_m;
        break;
      case 'up':
      case 'down':
        line.rise_m = (line.rise_m ?? 0) + (word === 'up' ? value_m : -value_m);
        break;
      default:
        if (line.length_m !== null) return 'Only one length can be said at a time.';
        line.length_m = value_m;
        if (word === 'left' || word === 'right') line.turn_rad = word === 'left' ? Math.PI / 2 : -Math.PI / 2;
        else if (word === 'north' || word === 'south' || word === 'east' || word === 'west') line.angle_rad = COMPASS[word];
    }
  }
  if (line.rise_m !== null && line.height_m !== null) return 'Say either a height, or how far up or down.';
  return { ...line, offset };
}
