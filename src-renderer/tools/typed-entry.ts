import { parseLength } from '#shared/units/length-text';
import { parseQuantity } from '#shared/units/quantity-text';
import type { Settings } from '#shared/model/plan';
import type { Sketch, ToolEvent } from './tool.ts';
import { type TypedLine, type TypedRun, isInWords, readWords } from './typed-words.ts';

/** One value that the field at the pointer takes. */
export type TypedField = NonNullable<Sketch['asks']>[number];

/** What each part of the field is called. */
export const TYPED_FIELD_WORDS: Readonly<Record<TypedField, string>> = { length: 'Length', angle: 'Direction', height: 'Height', words: 'In words' };

/** What was typed into each part, as it stands. */
export type TypedTexts = Readonly<Partial<Record<TypedField, string>>>;

/** The event for the tool, or which part was not understood and why. */
export type TypedEntry =
  | { readonly ok: true; readonly event: Extract<ToolEvent, { kind: 'typed' }> }
  | { readonly ok: false; readonly field: TypedField; readonly reason: string };

const NOTHING: TypedLine = { length_m: null, angle_rad: null, height_m: null, rise_m: null, x_m: null, y_m: null, turn_rad: null, offset: null };
const KEYS = Object.keys(NOTHING) as (keyof TypedLine)[];

/** What one part says, or why it was not understood. */
function readPart(field: TypedField, text: string, takesWords: boolean, system: Settings['lengths']): Partial<TypedLine> | string {
  if (field === 'words' || (takesWords && isInWords(text))) return readWords(text, system);
  if (field === 'angle') {
    const angle = parseQuantity(text, 'angle', system);
    return angle.ok ? { angle_rad: angle.value } : angle.reason;
  }
  const length = parseLength(text, system);
  if (!length.ok) return length.reason;
  return field === 'length' ? { length_m: length.length_m } : { height_m: length.length_m };
}

/**
 * Reads the parts of the field at the pointer. A part left empty is not given; directions are in degrees,
 * counter-clockwise from east; lengths and heights are understood in feet-inches and metric alike. A tool that takes
 * words takes them in any part: `up 1-6`, `offset 12" left`.
 * @param asks  parts that the tool takes now; what stands in others is passed over
 */
export function readTyped(texts: TypedTexts, asks: readonly TypedField[], system: Settings['lengths']): TypedEntry {
  let all: TypedLine = NOTHING;
  for (const field of asks) {
    const text = texts[field]?.trim() ?? '';
    if (text === '') continue;
    const part = readPart(field, text, asks.includes('words'), system);
    if (typeof part === 'string') return { ok: false, field, reason: part };
    const given = Object.fromEntries(KEYS.flatMap((key) => (part[key] === undefined || part[key] === null ? [] : [[key, part[key]]])));
    if (KEYS.some((key) => key in given && all[key] !== null)) return { ok: false, field, reason: 'This is given twice.' };
    all = { ...all, ...given };
  }
  if (all.height_m !== null && all.rise_m !== null) return { ok: false, field: 'height', reason: 'Say either a height, or how far up or down.' };
  const first = asks[0];
  if (first && KEYS.every((key) => all[key] === null)) return { ok: false, field: first, reason: `Type a ${TYPED_FIELD_WORDS[first].toLowerCase()}.` };
  const { length_m, angle_rad, height_m, ...said } = all;
  const run: TypedRun | undefined = Object.values(said).every((value) => value === null) ? undefined : said;
  return { ok: true, event: { kind: 'typed', length_m, angle_rad, height_m, ...(run ? { run } : {}) } };
}
