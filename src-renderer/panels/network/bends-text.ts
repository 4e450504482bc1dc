import type { LengthSystem } from '#shared/units/length-text';
import { formatQuantity, parseQuantity } from '#shared/units/quantity-text';
import type { Reading } from '../fields/typed-field.tsx';

/** More bends than this in one stretch are a slip of the hand. */
const MOST_BENDS = 50;

/** Bends in a row: "90°, 90°, 45°". */
export const bendsText = (bends_rad: readonly number[], system: LengthSystem): string => bends_rad.map((bend_rad) => formatQuantity(bend_rad, 'angle', system)).join(', ');

/** Reads bends that were typed in a row, with commas, semicolons or blanks between them; none is a straight stretch. */
export function readBends(typed: string, system: LengthSystem): Reading<number[]> {
  const bends_rad: number[] = [];
  for (const piece of typed.split(/[\s;,+]+/).filter(Boolean)) {
    const parsed = parseQuantity(piece, 'angle', system);
    if (!parsed.ok) return { ok: false, reason: `${parsed.reason} Write bends in a row: 90 90 45.` };
    if (parsed.value < 0 || parsed.value > Math.PI + 1e-9) return { ok: false, reason: 'A bend turns by 0° to 180°.' };
    bends_rad.push(Math.min(parsed.value, Math.PI));
  }
  return bends_rad.length > MOST_BENDS ? { ok: false, reason: `No more than ${MOST_BENDS} bends in one stretch.` } : { ok: true, value: bends_rad };
}
