import type { Box } from '#shared/geometry/outline';
import type { Sheet, SheetView } from '#shared/sheets/sheet';
import type { PaperBox } from '#shared/sheets/text-box';
import { textHolds } from './dimension-handle.ts';

/** A place on paper [mm]. */
export interface PaperPlace {
  readonly x: number;
  readonly y: number;
}

/** What lies under the pointer. */
export type PaperHit = { readonly kind: 'view'; readonly key: string } | { readonly kind: 'note'; readonly id: string } | { readonly kind: 'dimension'; readonly key: string };

const holds = ({ left, top, right, bottom }: PaperBox, { x, y }: PaperPlace): boolean => x >= left && x <= right && y >= top && y <= bottom;
const areaOf = ({ left, top, right, bottom }: PaperBox): number => (right - left) * (bottom - top);

/** Texts of dimensions are taken hold of this far around their words [mm]. */
const AROUND_TEXT_mm = 1;

/** The note, else the text of a dimension, else the smallest view, at a place of a sheet. */
export function hitAt({ views, notes, dimensions }: Pick<Sheet, 'views' | 'notes' | 'dimensions'>, at: PaperPlace): PaperHit | undefined {
  const note = notes.findLast(({ box }) => holds(box, at));
  if (note) return { kind: 'note', id: note.id };
  const text = dimensions.findLast(({ box }) => textHolds(box, at, AROUND_TEXT_mm));
  if (text) return { kind: 'dimension', key: text.key };
  const [view] = views.filter(({ box }) => holds(box, at)).sort((a, b) => areaOf(a.box) - areaOf(b.box));
  return view && { kind: 'view', key: view.key };
}

/** How far a box is moved, and the lines that it then stands on. */
export interface Snapped {
  readonly dx: number;
  readonly dy: number;
  /** Upright and level guide lines [mm]. */
  readonly xs: readonly number[];
  readonly ys: readonly number[];
}

/** The shift that brings one of the edges of a moved stretch onto a line, within reach. */
function shiftOnto(edges: readonly number[], by: number, lines: readonly number[], reach: number): { readonly by: number; readonly lines: readonly number[] } {
  let best: number | undefined;
  for (const edge of edges) {
    for (const line of lines) {
      const off = line - edge - by;
      if (Math.abs(off) <= reach && (best === undefined || Math.abs(off) < Math.abs(best))) best = off;
    }
  }
  const done = by + (best ?? 0);
  return { by: done, lines: best === undefined ? [] : lines.filter((line) => edges.some((edge) => Math.abs(edge + done - line) < 1e-6)) };
}

/** A move that brings edges or middle of a box in line with those of others, and with the drawing area, where they are near. */
export function snapMove(box: PaperBox, dx: number, dy: number, others: readonly PaperBox[], reach_mm: number): Snapped {
  const across = ({ left, right }: PaperBox): number[] => [left, (left + right) / 2, right];
  const down = ({ top, bottom }: PaperBox): number[] => [top, (top + bottom) / 2, bottom];
  const x = shiftOnto(across(box), dx, others.flatMap(across), reach_mm);
  const y = shiftOnto(down(box), dy, others.flatMap(down), reach_mm);
  return { dx: x.by, dy: y.by, xs: x.lines, ys: y.lines };
}

/** The corners by which the shown part is taken. */
export type Corner = 'nw' | 'ne' | 'se' | 'sw';
export const CORNERS: readonly Corner[] = ['nw', 'ne', 'se', 'sw'];

/** Paper that the shown part of a plan fills; undefined for what cannot be cropped. */
export function shownBox({ shown, scale, corner }: SheetView): PaperBox | undefined {
  if (!shown || scale === null) return undefined;
  const mm = 1000 / scale;
  return { left: corner.x_mm, top: corner.y_mm, right: corner.x_mm + (shown.maxX - shown.minX) * mm, bottom: corner.y_mm + (shown.maxY - shown.minY) * mm };
}

export const cornerOf = (box: PaperBox, corner: Corner): PaperPlace => ({ x: corner === 'nw' || corner === 'sw' ? box.left : box.right, y: corner === 'nw' || corner === 'ne' ? box.top : box.bottom });

/** A part is at least this large on paper [mm]. */
const LEAST_mm = 10;

/** The box with one corner pulled, never turned inside out. */
export function pulled({ left, top, right, bottom }: PaperBox, corner: Corner, { x, y }: PaperPlace): PaperBox {
  const isWest = corner === 'nw' || corner === 'sw';
  const isNorth = corner === 'nw' || corner === 'ne';
  return {
    left: isWest ? Math.min(x, right - LEAST_mm) : left,
    right: isWest ? right : Math.max(x, left + LEAST_mm),
    top: isNorth ? Math.min(y, bottom - LEAST_mm) : top,
    bottom: isNorth ? bottom : Math.max(y, top + LEAST_mm),
  };
}

/** The part of the plan that a box on paper shows, in a view as it is drawn now [m]. */
export function partOf({ shown, scale, corner }: SheetView, box: PaperBox): Box | undefined {
  if (!shown || scale === null) return undefined;
  const m = scale / 1000;
  const x = (at: number): number => shown.minX + (at - corner.x_mm) * m;
  const y = (at: number): number => shown.maxY - (at - corner.y_mm) * m;
  return { minX: x(box.left), maxX: x(box.right), minY: y(box.bottom), maxY: y(box.top) };
}
