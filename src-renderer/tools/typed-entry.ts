import { parseLength } from '#shared/units/length-text';
import { parseQuantity } from '#shared/units/quantity-text';
import type { Settings } from '#shared/model/plan';
import type { Sketch, ToolEvent } from './tool.ts';

/** One value that the field at the pointer takes. */
export type TypedField = NonNullable<Sketch['asks']>[number];

/** What each part of the field is called. */
export const TYPED_FIELD_WORDS: Readonly<Record<TypedField, string>> = { length: 'Length', angle: 'Direction', height: 'Height' };

/** What was typed into each part, as it stands. */
export type TypedTexts = Readonly<Partial<Record<TypedField, string>>>;

/** The event for the tool, or which part was not understood and why. */
export type TypedEntry =
  | { readonly ok: true; readonly event: Extract<ToolEvent, { kind: 'typed' }> }
  | { readonly ok: false; readonly field: TypedField; readonly reason: string };

/**
 * Reads the parts of the field at the pointer. A part left empty is not given; directions are in degrees,
 * counter-clockwise from east; lengths and heights are understood in feet-inches and metric alike.
 * @param asks  parts that the tool takes now; what stands in others is passed over
 */
export function readTyped(texts: TypedTexts, asks: readonly TypedField[], system: Settings['lengths']): TypedEntry {
  const values: Record<TypedField, number | null> = { length: null, angle: null, height: null };
  for (const field of asks) {
    const text = texts[field]?.trim() ?? '';
    if (text === '') continue;
    if (field === 'angle') {
      const angle = parseQuantity(text, 'angle', system);
      if (!angle.ok) return { ok: false, field, reason: angle.reason };
      values.angle = angle.value;
    } else {
      const length = parseLength(text, system);
      if (!length.ok) return { ok: false, field, reason: length.reason };
      values[field] = length.length_m;
    }
  }
  const first = asks[0];
  if (first && asks.every((field) => values[field] === null)) return { ok: false, field: first, reason: `Type a ${TYPED_FIELD_WORDS[first].toLowerCase()}.` };
  return { ok: true, event: { kind: 'typed', length_m: values.length, angle_rad: values.angle, height_m: values.height } };
}
