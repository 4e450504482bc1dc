import type { Settings } from '../model/plan.ts';
import { FOOT_m } from '../units/convert.ts';
import { formatLength } from '../units/length-text.ts';
import { textWidth_mm } from './font-widths.ts';
import { box, line, pen, text } from './marks.ts';
import { PRINT, WEIGHT } from './print-ink.ts';
import type { Mark } from './sheet.ts';
import { northSymbol } from './symbols.ts';
import { wrapText } from './text-box.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';

/** Length of the check bar's upper edge: 100 mm, and of its lower: 4 in. */
export const CHECK_BAR_mm = 100;
const FOUR_INCHES_mm = 101.6;

/** Paper that the strip at the foot of a sheet with views takes [mm at factor 1]. */
export const STRIP_HEIGHT_mm = 15;

/**
 * The bar that a user lays a ruler on: 100 mm above, 4 in below, from one zero. Never scaled with the text.
 * @param x,y left end of its middle line
 */
export function checkBar(x: number, y: number, sizes: TypeSizes): Mark[] {
  const tall = 1.5 * sizes.factor;
  const marks: Mark[] = [line(pen(WEIGHT.medium), x, y, x + FOUR_INCHES_mm, y)];
  for (let i = 0; i < 10; i += 2) marks.push(box(pen(WEIGHT.hair), x + i * 10, y - tall, 10, tall, PRINT.ink));
  marks.push(line(pen(WEIGHT.hair), x, y - tall, x + CHECK_BAR_mm, y - tall, x + CHECK_BAR_mm, y));
  for (let i = 1; i < 4; i += 2) marks.push(box(pen(WEIGHT.hair), x + i * 25.4, y, 25.4, tall, PRINT.ink));
  marks.push(line(pen(WEIGHT.hair), x, y - tall, x, y + tall, x + FOUR_INCHES_mm, y + tall, x + FOUR_INCHES_mm, y));
  const style = { height_mm: sizes.note_mm };
  marks.push(
    text(x, y - tall - 0.8 * sizes.factor, '0', style),
    text(x + CHECK_BAR_mm, y - tall - 0.8 * sizes.factor, '100 mm', { ...style, align: 'right' }),
    text(x + FOUR_INCHES_mm, y + tall + 1.2 * sizes.factor + sizes.note_mm, '4 in', { ...style, align: 'right' }),
  );
  return marks;
}

/** The longest round length, 1, 2 or 4 (5 metric) times a power of ten, that is not above the wished one. */
function roundLength(wished: number, lengths: Settings['lengths']): number {
  const power = 10 ** Math.floor(Math.log10(wished));
  const steps = lengths === 'feet' ? [4, 2, 1] : [5, 2, 1];
  return (steps.find((step) => step * power <= wished * (1 + 1e-9)) ?? 1) * power;
}

/** A bar of site lengths at a view's scale, 20 to 42 mm long. */
export function groundBar(x: number, y: number, scale: number, lengths: Settings['lengths'], sizes: TypeSizes): { readonly marks: Mark[]; readonly width_mm: number } {
  const wished_m = (42 * sizes.factor * scale) / 1000;
  const unit_m = lengths === 'feet' ? FOOT_m : 1;
  const whole = roundLength(wished_m / unit_m, lengths);
  const width = (whole * unit_m * 1000) / scale;
  const tall = 1.1 * sizes.factor;
  const marks: Mark[] = [box(pen(WEIGHT.hair), x, y - tall, width, tall)];
  for (const i of [0, 2]) marks.push(box(pen(WEIGHT.hair), x + (i * width) / 4, y - tall, width / 4, tall, PRINT.ink));
  const name = `${Number(whole.toPrecision(3))} ${lengths === 'feet' ? 'ft' : 'm'}`;
  const style = { height_mm: sizes.note_mm };
  marks.push(text(x, y + sizes.note_mm + 0.9 * sizes.factor, '0', style), text(x + width, y + sizes.note_mm + 0.9 * sizes.factor, name, { ...style, align: 'middle' }));
  return { marks, width_mm: width };
}

/** Parts of a view's bar, filled in turn: inches, or 20 mm. */
const BAR_PARTS = { feet: 4, metric: 5 } as const;

/**
 * The bar below a view: 4 in long on paper, 100 mm on a metric sheet, with the length on site that it stands for. A view
 * that is copied out of its sheet can still be checked with a ruler. Never scaled with the text.
 */
export function viewBar(x: number, y: number, scale: number, lengths: Settings['lengths'], sizes: TypeSizes): { readonly marks: Mark[]; readonly width_mm: number } {
  const long = lengths === 'feet' ? FOUR_INCHES_mm : CHECK_BAR_mm;
  const parts = BAR_PARTS[lengths];
  const tall = 1.1 * sizes.factor;
  const marks: Mark[] = [box(pen(WEIGHT.hair), x, y - tall, long, tall)];
  for (let i = 0; i < parts; i += 2) marks.push(box(pen(WEIGHT.hair), x + (i * long) / parts, y - tall, long / parts, tall, PRINT.ink));
  const words = `${lengths === 'feet' ? '4 in' : '100 mm'} = ${formatLength((long * scale) / 1000, lengths)}`;
  const left = long + 2 * sizes.factor;
  marks.push(text(x + left, y - tall / 2 + sizes.text_mm / 2, words, { height_mm: sizes.text_mm }));
  return { marks, width_mm: left + textWidth_mm(words, sizes.text_mm, 'plain') };
}

/** The strip at the foot of a sheet with views: check bar, what to do with it, and plan north. */
export function printStrip(left: number, right: number, bottom: number, hasPlan: boolean, sizes: TypeSizes): Mark[] {
  const { factor, note_mm } = sizes;
  const middle = bottom - 6.2 * factor;
  const wordsLeft = left + FOUR_INCHES_mm + 5 * factor;
  const northLeft = hasPlan ? right - 12 * factor - textWidth_mm('plan north', note_mm, 'plain') : right;
  const lines = [
    ...wrapText('Print at 100 %, not “fit to page”.', northLeft - wordsLeft, note_mm, 'bold').map((words) => ({ words, font: 'bold' as const })),
    ...wrapText('Check with a ruler.', northLeft - wordsLeft, note_mm, 'plain').map((words) => ({ words, font: 'plain' as const })),
  ];
  const pitch = note_mm * (lines.length > 2 ? 1.55 : 1.9);
  const marks = [
    line(pen(WEIGHT.thin), left, bottom - STRIP_HEIGHT_mm * factor, right, bottom - STRIP_HEIGHT_mm * factor),
    ...checkBar(left, middle, sizes),
    ...lines.map(({ words, font }, i) => text(wordsLeft, middle - 0.4 * factor + (i - (lines.length - 1) / 2) * pitch + note_mm / 2, words, { height_mm: note_mm, font })),
  ];
  if (hasPlan) {
    const x = right - 5 * factor;
    marks.push(...northSymbol(x, middle - 0.6 * factor, 9.5 * factor), text(x - 4 * factor, middle + note_mm / 2, 'plan north', { height_mm: note_mm, align: 'right' }));
  }
  return marks;
}
