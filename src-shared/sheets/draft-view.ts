import type { Box } from '../geometry/outline.ts';
import { shiftMarks } from './marks.ts';
import type { Mark } from './sheet.ts';
import type { SymbolName } from './symbol-names.ts';
import { type PaperBox, marksBox } from './text-box.ts';

/** How a plan of the site lies on paper: what it shows, and where the north-west corner of that is [mm]. */
export interface Ground {
  readonly shown: Box;
  readonly x_mm: number;
  readonly y_mm: number;
}

/** A view that is drawn anew: at another scale, or a part of it only. */
export interface ViewWish {
  readonly scale: number;
  /** Part of the plan that it shows; all of it when null. */
  readonly crop: Box | null;
}

/** A view where composing put it, before the user's own places are looked at. */
export interface DraftView {
  /** The same for the same view however often the set is composed. */
  readonly key: string;
  readonly title: string;
  /** Its drawing and its title. */
  readonly marks: readonly Mark[];
  /** Site length over paper length; null where it is not to scale. */
  readonly scale: number | null;
  readonly used: ReadonlySet<SymbolName>;
  /** Known for plans, which can be cropped. */
  readonly ground: Ground | null;
  /** Draws it anew anywhere on paper; null where nothing about it can be chosen, undefined where it cannot be drawn so. */
  readonly again: ((wish: ViewWish) => DraftView | undefined) | null;
}

/** The same view moved on paper [mm]. */
export const shiftView = (view: DraftView, dx: number, dy: number): DraftView => ({
  ...view,
  marks: shiftMarks(view.marks, dx, dy),
  ground: view.ground && { ...view.ground, x_mm: view.ground.x_mm + dx, y_mm: view.ground.y_mm + dy },
});

/** Paper that a view and its title fill. */
export const viewBox = ({ marks }: DraftView): PaperBox => marksBox(marks);

/** The corner by which a view is placed: the north-west one of what a plan shows, else the upper left one of its paper. Labels that come and go never move it. */
export function viewCorner(view: DraftView): { readonly x_mm: number; readonly y_mm: number } {
  if (view.ground) return { x_mm: view.ground.x_mm, y_mm: view.ground.y_mm };
  const { left, top } = viewBox(view);
  return { x_mm: left, y_mm: top };
}
