import { printable, textWidth_mm } from '../font-widths.ts';
import { box, line, pen, segments, text } from '../marks.ts';
import { PRINT, WEIGHT } from '../print-ink.ts';
import type { Mark, Stroke } from '../sheet.ts';
import type { Drawing } from '../tables.ts';
import { clipPiece, shortened } from '../text-box.ts';
import type { TypeSizes } from '../../paper/type-sizes.ts';
import { axisOver, shareOn } from './axis.ts';
import { spreadLabels } from './side-labels.ts';

export interface Curve {
  readonly name: string;
  readonly points: readonly (readonly [x: number, y: number])[];
}

/** A limit that the curves are read against. */
export interface LimitLine {
  readonly name: string;
  readonly at: number;
}

/** What a chart shows: told apart by dashes and by the label at the end of each curve, never by colour. */
export interface LineChart {
  /** With the units of both axes: "Flow [kg/s] against time [s]". */
  readonly title: string;
  readonly curves: readonly Curve[];
  readonly fromX: number;
  readonly toX: number;
  /** The y axis holds these too. */
  readonly holdsY: readonly number[];
  /** Across the chart, at a y. */
  readonly levels: readonly LimitLine[];
  /** Up the chart, at an x. */
  readonly moments: readonly LimitLine[];
}

const DASHES_mm: readonly (readonly number[] | undefined)[] = [undefined, [2.4, 1.2], [0.8, 0.8], [3.2, 0.9, 0.8, 0.9], [4.5, 1.2]];
const LIMIT_DASH_mm = [1.4, 1];
const curvePen = (curve: number, factor: number): Stroke => pen(WEIGHT.wide * factor, PRINT.ink, DASHES_mm[curve % DASHES_mm.length]?.map((each) => each * factor));

/** Draws curves over two axes, their names beside their ends. */
export function drawLineChart(chart: LineChart, width_mm: number, height_mm: number, sizes: TypeSizes): Drawing {
  return { kind: 'drawing', width_mm, height_mm, draw: (x, y) => marksOf(chart, x, y, width_mm, height_mm, sizes) };
}

function marksOf({ title, curves, fromX, toX, holdsY, levels, moments }: LineChart, left: number, top: number, width: number, height: number, sizes: TypeSizes): Mark[] {
  const { factor, text_mm: size } = sizes;
  const gap = factor;
  const values = [...curves.flatMap(({ points }) => points.filter(([x]) => x <= toX).map(([, y]) => y)), ...levels.map(({ at }) => at), ...holdsY].filter(Number.isFinite);
  const xAxis = axisOver(fromX, toX);
  const yAxis = axisOver(Math.min(...values), Math.max(...values), 4);
  const wide = (words: string): number => textWidth_mm(words, size, 'plain');

  const ends = curves.map(({ name, points }) => ({ words: name, y: points.filter(([x]) => x <= xAxis.greatest).at(-1)?.[1] ?? 0 }));
  const named = [...ends, ...levels.map(({ name, at }) => ({ words: name, y: at }))];
  // Several curves that end together are told apart by a piece of their dash before the name.
  const sample = curves.length > 1 ? 8 * factor : 0;
  const widest = sample + Math.min(width * 0.4, Math.max(0, ...named.map(({ words }) => wide(printable(words)))));
  const tickWidth = Math.max(...yAxis.ticks.map(({ words }) => wide(words)));
  const plot = {
    left: left + tickWidth + 2 * gap,
    right: left + width - widest - 3 * gap,
    // Room for the names of moments, so that charts side by side stand level.
    top: top + size * 4.6,
    bottom: top + height - size * 2.4,
  };
  const atX = (value: number): number => plot.left + shareOn(xAxis, value) * (plot.right - plot.left);
  const atY = (value: number): number => plot.bottom - shareOn(yAxis, value) * (plot.bottom - plot.top);

  const grid = pen(WEIGHT.hair, PRINT.faint);
  const marks: Mark[] = [
    text(left, top + size * 1.1, shortened(printable(title), width, size, 'bold'), { height_mm: size, font: 'bold' }),
    ...yAxis.ticks.flatMap(({ at, words }) => [
      line(grid, plot.left, atY(at), plot.right, atY(at)),
      text(plot.left - gap, atY(at) + size / 2, words, { height_mm: size, align: 'right' }),
    ]),
    ...xAxis.ticks.flatMap(({ at, words }) => [
      line(grid, atX(at), plot.bottom, atX(at), plot.bottom + gap),
      text(atX(at), plot.bottom + size * 1.9, words, { height_mm: size, align: 'middle' }),
    ]),
    box(pen(WEIGHT.thin), plot.left, plot.top, plot.right - plot.left, plot.bottom - plot.top),
  ];
  const limitPen = pen(WEIGHT.medium * factor, PRINT.ink, LIMIT_DASH_mm.map((each) => each * factor));
  for (const { at } of levels) marks.push(line(limitPen, plot.left, atY(at), plot.right, atY(at)));
  for (const { at, name } of moments) {
    if (at < xAxis.least || at > xAxis.greatest) continue;
    const words = printable(name);
    const half = wide(words) / 2;
    marks.push(line(limitPen, atX(at), plot.top - gap * 0.5, atX(at), plot.bottom));
    marks.push(text(Math.min(Math.max(atX(at), plot.left + half), left + width - half), plot.top - size * 0.7, words, { height_mm: size, align: 'middle' }));
  }
  // A curve along the edge of the plot is still a curve.
  const inside = { left: plot.left - 0.01, right: plot.right + 0.01, top: plot.top - 0.01, bottom: plot.bottom + 0.01 };
  curves.forEach(({ points }, i) => {
    const pieces: number[] = [];
    for (let k = 1; k < points.length; k += 1) {
      const [a, b] = [points[k - 1], points[k]];
      const piece = a && b ? clipPiece(inside, atX(a[0]), atY(a[1]), atX(b[0]), atY(b[1])) : undefined;
      if (piece) pieces.push(...piece);
    }
    marks.push(...runsOf(pieces).map((run) => line(curvePen(i, factor), ...run)));
  });
  const leaders: number[] = [];
  const labels = spreadLabels(named.map(({ words, y }, i) => ({ words, y: atY(y), curve: i < curves.length ? i : undefined })), size * 1.5, plot.top + size * 0.5, plot.bottom - size * 0.2);
  for (const { words, y, from, curve } of labels) {
    const start = plot.right + 2.6 * gap;
    leaders.push(plot.right, from, plot.right + 2 * gap, y);
    if (sample > 0 && curve !== undefined) marks.push(line(curvePen(curve, factor), start, y, start + sample - gap, y));
    const textLeft = start + (curve === undefined ? 0 : sample);
    marks.push(text(textLeft, y + size / 2, shortened(printable(words), left + width - textLeft, size, 'plain'), { height_mm: size }));
  }
  if (leaders.length > 0) marks.push(segments(pen(WEIGHT.hair), leaders));
  return marks;
}

/** Pieces that follow each other as runs of places, so that a dash runs through. */
function runsOf(pieces: readonly number[]): number[][] {
  const runs: number[][] = [];
  for (let i = 0; i + 3 < pieces.length; i += 4) {
    const [ax = 0, ay = 0, bx = 0, by = 0] = pieces.slice(i, i + 4);
    const run = runs.at(-1);
    if (run && Math.abs((run.at(-2) ?? 0) - ax) < 1e-9 && Math.abs((run.at(-1) ?? 0) - ay) < 1e-9) run.push(bx, by);
    else runs.push([ax, ay, bx, by]);
  }
  return runs;
}
