import type { Note, RefOf } from '../model/plan.ts';
import { noteSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';
import { noteOf } from './lookup.ts';

const PICK = { at: true, text: true } as const;
const FIELDS = noteSchema.pick(PICK).partial();

/** Changes text or place of a note. Refuses a blank text: delete the note instead. */
export const editNote = command('Edit note', (draft, ref: RefOf<'note'>, change: Partial<Pick<Note, keyof typeof PICK>>) => {
  const note = noteOf(draft, ref);
  if (change.text !== undefined && change.text.trim() === '') refuse('A note needs a text. Delete it if it is no longer wanted.');
  applyChange(note, FIELDS, change);
});
