import type { MarginField } from '#shared/margins/margin-field';
import type { Ink } from '../ink.ts';
import { write } from './lettering.ts';
import { type Pen, type Px, line, pieces, setLine } from './pen.ts';
import { type Viewport, toScreen } from './viewport.ts';

/** How strongly the least and the greatest margin are painted. */
const FAINT = 0.1;
const STRONG = 0.4;
const SHADES = 6;
/** Lines of the hatch over what fails are so far apart [px]. */
const HATCH_px = 7;

/** What the legend says. */
export interface MarginLegend {
  readonly title: string;
  /** Figures at the ends of the ramp, in the plan's units. */
  readonly least: string;
  readonly greatest: string;
  readonly most: number;
}

/** Shade of a margin: 1 to 6, darker the farther from nothing left or from the limit broken. */
const shadeOf = (value: number, most: number): number => Math.min(SHADES, 1 + Math.floor((Math.abs(value) / most) * SHADES));
const alphaOf = (shade: number): number => FAINT + ((STRONG - FAINT) * (shade - 1)) / (SHADES - 1);

/**
 * Margins of a rule over the plan: cool where it is kept, warm and hatched where it is broken, stronger the farther from the
 * limit, with a line where nothing is left. Where the rule asks nothing the paper stays bare.
 */
export function drawMarginField(pen: Pen, view: Viewport, field: MarginField, most: number, ink: Ink): void {
  const { minX, minY, step_m, columns, rows, values } = field;
  const size = step_m * view.camera.scale_px_m;
  const at = (i: number, j: number): Px => toScreen(view, { x: minX + i * step_m, y: minY + j * step_m });
  const broken = new Path2D();
  let areBroken = false;
  for (let j = 0; j < rows; j += 1) {
    for (let i = 0; i < columns; i += 1) {
      const value = values[j * columns + i] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      const p = at(i, j);
      pen.globalAlpha = alphaOf(shadeOf(value, most));
      pen.fillStyle = value >= 0 ? ink.cool : ink.warm;
      // Whole pixels, so that no seams show between the squares.
      const [x, y] = [Math.round(p.x - size / 2), Math.round(p.y - size / 2)];
      const [width, height] = [Math.round(p.x + size / 2) - x, Math.round(p.y + size / 2) - y];
      pen.fillRect(x, y, width, height);
      if (value < 0) {
        broken.rect(x, y, width, height);
        areBroken = true;
      }
    }
  }
  pen.globalAlpha = 1;
  if (areBroken) hatch(pen, view, broken, ink.warm);
  setLine(pen, { colour: ink.paper, width: 4 });
  pieces(pen, zeroLine(field, at));
  setLine(pen, { colour: ink.ink, width: 1.75 });
  pieces(pen, zeroLine(field, at));
}

function hatch(pen: Pen, { width, height }: Viewport, area: Path2D, colour: string): void {
  pen.save();
  pen.clip(area);
  pen.globalAlpha = 0.75;
  setLine(pen, { colour, width: 1 });
  const lines: [Px, Px][] = [];
  for (let x = -height; x < width; x += HATCH_px) lines.push([{ x, y: height }, { x: x + height, y: 0 }]);
  pieces(pen, lines);
  pen.restore();
}

/** Pieces of the line on which nothing is left, square by square. */
function zeroLine({ columns, rows, values }: MarginField, at: (i: number, j: number) => Px): [Px, Px][] {
  const lines: [Px, Px][] = [];
  for (let j = 0; j + 1 < rows; j += 1) {
    for (let i = 0; i + 1 < columns; i += 1) {
      const corners = [
        [i, j],
        [i + 1, j],
        [i + 1, j + 1],
        [i, j + 1],
      ] as const;
      const met: Px[] = [];
      for (const [k, [ai, aj]] of corners.entries()) {
        const [bi, bj] = corners[(k + 1) % 4] ?? [ai, aj];
        const [a, b] = [values[aj * columns + ai] ?? Number.NaN, values[bj * columns + bi] ?? Number.NaN];
        if (Number.isNaN(a) || Number.isNaN(b) || a >= 0 === b >= 0) continue;
        const share = a / (a - b);
        met.push(at(ai + (bi - ai) * share, aj + (bj - aj) * share));
      }
      const [p, q, r, s] = met;
      if (p && q) lines.push([p, q]);
      if (r && s) lines.push([r, s]);
    }
  }
  return lines;
}

const SWATCH_px = 22;

/** The legend in the lower left corner: what is shown, the ramp with its figures, and how failing looks. */
export function drawMarginLegend(pen: Pen, view: Viewport, { title, least, greatest }: MarginLegend, ink: Ink): void {
  const width = Math.max(SWATCH_px * SHADES * 2 + 24, 344);
  const [x, y] = [16, view.height - 102];
  pen.globalAlpha = 0.94;
  pen.fillStyle = ink.panel;
  pen.fillRect(x, y, width, 86);
  pen.globalAlpha = 1;
  setLine(pen, { colour: ink.rule, width: 1 });
  pen.strokeRect(x + 0.5, y + 0.5, width - 1, 85);
  write(pen, title, { x: x + 12, y: y + 15 }, { colour: ink.ink, bold: true });
  const [left, top, middle] = [x + 12, y + 28, x + 12 + SWATCH_px * SHADES];
  for (let k = 0; k < SHADES; k += 1) {
    pen.globalAlpha = alphaOf(SHADES - k);
    pen.fillStyle = ink.warm;
    pen.fillRect(left + k * SWATCH_px, top, SWATCH_px, 16);
    pen.globalAlpha = alphaOf(k + 1);
    pen.fillStyle = ink.cool;
    pen.fillRect(middle + k * SWATCH_px, top, SWATCH_px, 16);
  }
  pen.globalAlpha = 1;
  const failing = new Path2D();
  failing.rect(left, top, SWATCH_px * SHADES, 16);
  hatch(pen, view, failing, ink.warm);
  setLine(pen, { colour: ink.ink, width: 1.75 });
  line(pen, { x: middle, y: top - 3 }, { x: middle, y: top + 19 });
  const words = { colour: ink.ink, halo: ink.panel };
  write(pen, `−${least}`, { x: left, y: top + 29 }, words);
  write(pen, '0', { x: middle, y: top + 29 }, { ...words, align: 'center' });
  write(pen, `${greatest} and more`, { x: middle + SWATCH_px * SHADES, y: top + 29 }, { ...words, align: 'right' });
  write(pen, 'hatched: the rule is broken there · line: nothing is left', { x: left, y: top + 46 }, { colour: ink.quiet, halo: ink.panel });
}
