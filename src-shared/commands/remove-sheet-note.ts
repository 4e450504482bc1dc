import { command, refuse } from './command.ts';

/** Takes a note off its sheet. */
export const removeSheetNote = command('Remove note from sheet', (draft, id: string) => {
  const { notes } = draft.settings.sheets;
  if (!(id in notes)) refuse('This note is no longer on its sheet.');
  delete notes[id];
});
