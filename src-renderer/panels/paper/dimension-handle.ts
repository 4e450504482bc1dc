import { alongBy, asideBy } from '#shared/sheets/dimension-line';
import type { SheetDimension } from '#shared/sheets/sheet';
import type { TurnedBox } from '#shared/sheets/text-box';
import type { TextPlace } from '#shared/sheets/hand-placed';
import type { PaperPlace } from './paper-geometry.ts';

/** Whether a place lies in the paper of a text, or nearly. @param grow_mm how far around it counts */
export function textHolds({ x, y, halfWidth, halfHeight, rotation_rad }: TurnedBox, at: PaperPlace, grow_mm: number): boolean {
  const along = alongBy(rotation_rad, at.x - x, at.y - y);
  const aside = asideBy(rotation_rad, at.x - x, at.y - y);
  return Math.abs(along) <= halfWidth + grow_mm && Math.abs(aside) <= halfHeight + grow_mm;
}

/** Where a text stands after a move on paper [mm], to the tenth of a millimetre. */
export const textMovedBy = ({ along_mm, off_mm, along_rad }: SheetDimension, dx: number, dy: number): TextPlace => ({
  along_mm: Math.round((along_mm + alongBy(along_rad, dx, dy)) * 10) / 10,
  off_mm: Math.round((off_mm + asideBy(along_rad, dx, dy)) * 10) / 10,
});

/** A move that keeps a text on its line, and in the middle of it, where it is nearly there. */
export function snapText({ along_mm, along_rad }: SheetDimension, dx: number, dy: number, reach_mm: number): { readonly dx: number; readonly dy: number } {
  const [along, aside] = [alongBy(along_rad, dx, dy), asideBy(along_rad, dx, dy)];
  const a = Math.abs(along_mm + along) <= reach_mm ? -along_mm : along;
  const o = Math.abs(aside) <= reach_mm ? 0 : aside;
  return { dx: a * Math.cos(along_rad) - o * Math.sin(along_rad), dy: -a * Math.sin(along_rad) - o * Math.cos(along_rad) };
}
