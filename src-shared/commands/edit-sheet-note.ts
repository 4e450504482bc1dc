import type { SheetSettings } from '../model/plan.ts';
import { firstIssues } from '../model/first-issues.ts';
import { sheetNoteSchema } from '../model/schema.ts';
import { command, refuse } from './command.ts';

type SheetNote = SheetSettings['notes'][string];

/** The note, once the plan can hold it; refuses otherwise. */
export function soundNote(note: SheetNote): SheetNote {
  if (firstIssues(sheetNoteSchema, note, 1).length > 0) refuse('A note stands on the paper, is 5 to 2000 mm wide and has 20 000 characters at most.');
  return { ...note };
}

/** Changes words, place or width of a note on a sheet, or moves it to another one. Refuses a blank text. */
export const editSheetNote = command('Edit note on sheet', (draft, id: string, change: Partial<Omit<SheetNote, 'id'>>) => {
  const { notes } = draft.settings.sheets;
  const note = notes[id] ?? refuse('This note is no longer on its sheet.');
  if (change.text?.trim() === '') refuse('A note needs a text. Remove it if it is no longer wanted.');
  notes[id] = soundNote({ ...note, ...change });
});
