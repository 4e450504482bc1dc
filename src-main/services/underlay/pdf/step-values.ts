import type { Matrix } from '#shared/underlay/matrix';

/** Whether a value of a step is a list of numbers. */
export const isNumbers = (value: unknown): value is ArrayLike<number> => Array.isArray(value) || ArrayBuffer.isView(value);
/** A number of a step; anything else is 0. */
export const numberOf = (value: unknown): number => (typeof value === 'number' && Number.isFinite(value) ? value : 0);
/** A colour of a step as `#rrggbb`; anything else is black. */
export const colourOf = (value: unknown): string => (typeof value === 'string' && /^#[0-9a-f]{6}$/i.test(value) ? value.toLowerCase() : '#000000');

/** A transform of a step, or undefined. */
export function matrixOf(value: unknown): Matrix | undefined {
  if (!isNumbers(value) || value.length < 6) return undefined;
  return [numberOf(value[0]), numberOf(value[1]), numberOf(value[2]), numberOf(value[3]), numberOf(value[4]), numberOf(value[5])];
}
