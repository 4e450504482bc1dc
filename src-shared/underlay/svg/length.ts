const PIXELS_PER: Readonly<Record<string, number>> = { '': 1, px: 1, in: 96, cm: 96 / 2.54, mm: 96 / 25.4, q: 96 / 101.6, pt: 96 / 72, pc: 16 };

/** A length attribute taken apart: number and unit, lower case. */
export function lengthParts(text: string | undefined): { value: number; unit: string } | undefined {
  const found = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z]*|%)\s*$/i.exec(text ?? '');
  const value = Number(found?.[1]);
  return found && Number.isFinite(value) ? { value, unit: (found[2] ?? '').toLowerCase() } : undefined;
}

/**
 * A length attribute in user units.
 * @param whole what 100 % is
 * @param font  size of the font, for `em` and `ex`
 */
export function lengthOf(text: string | undefined, otherwise: number, whole: number, font = 16): number {
  const parts = lengthParts(text);
  if (!parts) return otherwise;
  const { value, unit } = parts;
  if (unit === '%') return (value / 100) * whole;
  if (unit === 'em' || unit === 'rem') return value * font;
  if (unit === 'ex') return (value * font) / 2;
  const scale = PIXELS_PER[unit];
  return scale === undefined ? otherwise : value * scale;
}
