import type { SheetSettings } from '../model/plan.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';
import { printable } from './font-widths.ts';
import { text } from './marks.ts';
import type { Mark, SheetNotePlace } from './sheet.ts';
import { wrapText } from './text-box.ts';

/** Line pitch over the height of capitals. */
const PITCH = 1.6;

/** The user's notes of one sheet, as marks and as places. @param home  name of the sheet, as notes know it */
export function notesOnSheet(notes: SheetSettings['notes'], home: string, { text_mm }: TypeSizes): { readonly marks: Mark[]; readonly places: SheetNotePlace[] } {
  const own = Object.values(notes).filter(({ sheet }) => sheet === home);
  const marks: Mark[] = [];
  const places = own.map(({ id, x_mm, y_mm, width_mm, text: words }): SheetNotePlace => {
    const lines = words.split(/\r?\n/).flatMap((part) => (part.trim() === '' ? [''] : wrapText(printable(part), width_mm, text_mm, 'plain')));
    lines.forEach((each, i) => {
      if (each !== '') marks.push({ ...text(x_mm, y_mm + text_mm * (1 + i * PITCH), each, { height_mm: text_mm, halo: true }), layer: 'notes' });
    });
    return { id, box: { left: x_mm, top: y_mm, right: x_mm + width_mm, bottom: y_mm + text_mm * (1 + (Math.max(1, lines.length) - 1) * PITCH + 0.5) } };
  });
  return { marks, places };
}
