import { circle, line, pen, ring, text } from '../marks.ts';
import { PRINT, WEIGHT } from '../print-ink.ts';
import type { Mark } from '../sheet.ts';
import { deviceSymbol } from '../symbols.ts';
import type { RiserSign } from './riser-circuits.ts';

/** Half of the paper that a sign takes on its wire [mm at factor 1]. */
export const SIGN_mm = 2.8;

/**
 * The sign of a station with its middle at a place. Devices have the sign that they have on the plans. A resistor is a
 * bare box and a solenoid a box with a slanted line, as IEC 60617 and ISO 1219-1 draw them (memory); the others are our own.
 */
export function riserSign(x: number, y: number, sign: RiserSign, factor: number): Mark[] {
  const stroke = pen(WEIGHT.medium * factor);
  const box = (halfX: number, halfY: number): Mark => ring(stroke, [x - halfX * factor, y - halfY * factor, x + halfX * factor, y - halfY * factor, x + halfX * factor, y + halfY * factor, x - halfX * factor, y + halfY * factor], PRINT.paper);
  const at = (...places: number[]): Mark => line(stroke, ...places.map((value, i) => (i % 2 === 0 ? x : y) + value * factor));
  switch (sign.kind) {
    case 'device':
      return deviceSymbol(x, y, { ...sign.device, facing_rad: null }, factor * 1.15);
    case 'solenoid':
      return [box(2.6, 1.6), at(-1, 1.6, 1, -1.6)];
    case 'load':
      return [box(1.8, 1.8)];
    case 'end-of-line':
      return [box(1.1, 2.4)];
    case 'pressure-switch':
      return [circle(stroke, x, y, 2.3 * factor, PRINT.paper), text(x, y + 1.3 * factor, 'P', { height_mm: 2.6 * factor, align: 'middle', font: 'bold' })];
    case 'contact':
      return [circle(undefined, x - 1.9 * factor, y, 0.5 * factor, PRINT.ink), at(-1.9, 0, 1.5, -1.6), circle(undefined, x + 1.9 * factor, y, 0.5 * factor, PRINT.ink)];
    case 'missing':
      return [circle(pen(WEIGHT.thin * factor, PRINT.quiet, [1 * factor, 0.7 * factor]), x, y, 2.2 * factor, PRINT.paper)];
  }
}
