import type { SheetSettings } from '../model/plan.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';
import { printable } from './font-widths.ts';
import { text } from './marks.ts';
import type { Mark, SheetNotePlace } from './sheet.ts';
import { type TurnedBox, textBoxOf, turnedBoxesOverlap, wrapText } from './text-box.ts';

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

const textBoxes = (marks: readonly Mark[]): TurnedBox[] => marks.flatMap((mark) => (mark.kind === 'clip' ? textBoxes(mark.marks) : mark.kind === 'text' && mark.text !== '' ? [textBoxOf(mark)] : []));

/** Says which notes lie over other words of their sheet. @param others  all else on the sheet */
export function coveringNotes(notes: SheetSettings['notes'], home: string, sizes: TypeSizes, others: readonly Mark[]): string[] {
  const own = Object.values(notes).filter(({ sheet }) => sheet === home);
  const under = own.length > 0 ? textBoxes(others) : [];
  const lines = new Map(own.map((note) => [note, textBoxes(notesOnSheet({ [note.id]: note }, home, sizes).marks)]));
  return own.flatMap((note, i) => {
    // Of two notes over each other, the later tells.
    const below = [...under, ...own.slice(0, i).flatMap((other) => lines.get(other) ?? [])];
    const isOver = (lines.get(note) ?? []).some((line) => below.some((box) => turnedBoxesOverlap(line, box)));
    return isOver ? [`The note “${note.text.length > 60 ? `${note.text.slice(0, 59)}…` : note.text}” lies over other words. Move it.`] : [];
  });
}
