import { printable, textWidth_mm } from '../font-widths.ts';
import { box, line, pen, segments, text } from '../marks.ts';
import { PRINT, WEIGHT } from '../print-ink.ts';
import type { Mark } from '../sheet.ts';
import type { Drawing } from '../tables.ts';
import { shortened } from '../text-box.ts';
import type { TypeSizes } from '../../paper/type-sizes.ts';
import { axisOver, shareOn } from './axis.ts';

/** Bars of what fits, with the one value that is asked about. */
export interface BandChart {
  readonly title: string;
  readonly bands: readonly { readonly name: string; readonly least: number; readonly greatest: number; /** Of the number that is drawn: hatched. */ readonly isDrawn: boolean }[];
  readonly value: number;
  readonly valueName: string;
}

/** Draws bars one below the other and a line through all of them. */
export function drawBandChart(chart: BandChart, width_mm: number, sizes: TypeSizes): Drawing {
  const row_mm = sizes.text_mm * 2.4;
  const height_mm = sizes.text_mm * 7 + chart.bands.length * row_mm;
  return { kind: 'drawing', width_mm, height_mm, draw: (x, y) => marksOf(chart, x, y, width_mm, row_mm, sizes) };
}

function marksOf({ title, bands, value, valueName }: BandChart, left: number, top: number, width: number, row: number, { factor, text_mm: size }: TypeSizes): Mark[] {
  const all = [value, ...bands.flatMap(({ least, greatest }) => [least, greatest])];
  const axis = axisOver(Math.min(...all), Math.max(...all), 6);
  const names = Math.max(...bands.map(({ name }) => textWidth_mm(printable(name), size, 'bold')));
  const plot = { left: left + names + 3 * factor, right: left + width - 6 * factor, top: top + size * 4.2 };
  const bottom = plot.top + bands.length * row;
  const at = (each: number): number => plot.left + shareOn(axis, each) * (plot.right - plot.left);
  const marks: Mark[] = [text(left, top + size * 1.1, shortened(printable(title), width, size, 'bold'), { height_mm: size, font: 'bold' })];
  for (const { at: tick, words } of axis.ticks) {
    marks.push(line(pen(WEIGHT.hair, PRINT.faint), at(tick), plot.top, at(tick), bottom + factor));
    marks.push(text(at(tick), bottom + size * 2, words, { height_mm: size, align: 'middle' }));
  }
  marks.push(line(pen(WEIGHT.thin), plot.left, bottom, plot.right, bottom));
  bands.forEach(({ name, least, greatest, isDrawn }, i) => {
    const middle = plot.top + (i + 0.5) * row;
    marks.push(text(plot.left - 2 * factor, middle + size / 2, printable(name), { height_mm: size, align: 'right', font: isDrawn ? 'bold' : 'plain' }));
    if (greatest <= least) {
      marks.push(text(at(greatest), middle + size / 2, 'none', { height_mm: size, align: 'middle', halo: true }));
      return;
    }
    const [x, wide, high] = [at(least), at(greatest) - at(least), row * 0.62];
    marks.push(box(pen(isDrawn ? WEIGHT.wide * factor : WEIGHT.thin), x, middle - high / 2, wide, high, PRINT.paper));
    if (isDrawn) marks.push(segments(pen(WEIGHT.hair), hatch(x, middle - high / 2, wide, high, 1.4 * factor)));
  });
  const words = printable(valueName);
  const half = textWidth_mm(words, size, 'bold') / 2;
  marks.push(line(pen(WEIGHT.heavy * factor), at(value), plot.top - size * 0.6, at(value), bottom));
  marks.push(text(Math.min(Math.max(at(value), left + half), left + width - half), plot.top - size, words, { height_mm: size, font: 'bold', align: 'middle' }));
  return marks;
}

/** Slanting lines inside a box. */
function hatch(x: number, y: number, width: number, height: number, pitch: number): number[] {
  const pieces: number[] = [];
  for (let along = pitch; along < width + height; along += pitch) {
    const [x0, x1] = [Math.max(0, along - height), Math.min(along, width)];
    if (x1 > x0) pieces.push(x + x0, y + along - x0, x + x1, y + along - x1);
  }
  return pieces;
}
