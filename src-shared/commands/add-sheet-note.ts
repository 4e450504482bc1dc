import { takeId } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { soundNote } from './edit-sheet-note.ts';

/** Writes a note on one sheet: its place and width on paper [mm]. Refuses a blank one, and one off every paper. @param sheet name of the sheet */
export const addSheetNote = command('Add note to sheet', (draft, sheet: string, x_mm: number, y_mm: number, width_mm: number, text: string) => {
  if (text.trim() === '') refuse('A note needs a text.');
  const id = takeId(draft, 'sheet-note');
  draft.settings.sheets.notes[id] = soundNote({ id, sheet, x_mm, y_mm, width_mm, text });
});
