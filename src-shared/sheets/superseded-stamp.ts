import { printable, textWidth_mm } from './font-widths.ts';
import type { SheetLayout } from './frame.ts';
import { text } from './marks.ts';
import { PRINT } from './print-ink.ts';
import type { Mark } from './sheet.ts';

/** Words across a sheet that another revision has replaced. */
export const supersededWords = (mark: string): string => `SUPERSEDED BY ${printable(mark)}`;

/**
 * Says across a whole sheet that another revision has replaced it: pale and under everything, so that it hides
 * nothing. It falls from the upper left, across the stamp of a sample profile.
 */
export function supersededStamp({ area }: SheetLayout, mark: string): Mark[] {
  const words = supersededWords(mark);
  const [width, height] = [area.right - area.left, area.bottom - area.top];
  const angle = Math.atan2(height, width);
  const wide = textWidth_mm(words, 1, 'bold');
  // Its ends keep inside the area, as those of the sample stamp do.
  const height_mm = (0.86 * Math.hypot(width, height)) / (wide + 2 / Math.tan(angle) + 2 * Math.tan(angle) * 0.2);
  const x = (area.left + area.right) / 2 - (Math.sin(angle) * height_mm) / 2;
  const y = (area.top + area.bottom) / 2 + (Math.cos(angle) * height_mm) / 2;
  return [text(x, y, words, { height_mm, font: 'bold', align: 'middle', rotation_rad: -angle, colour: PRINT.stamp })];
}
