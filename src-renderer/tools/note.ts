import { addNote } from '#shared/commands/add-note';
import { commitOr } from './attempt.ts';
import type { Tool } from './tool.ts';

/** What a new note says until it is written. */
export const NEW_NOTE = 'Note';

/** Puts a note on the plan; its text is written on the bench. */
export const noteTool: Tool<null> = {
  id: 'note',
  start: null,
  hint: () => 'Click where the note stands; write its text on the right.',
  sketch: () => ({}),
  step(state, event, view) {
    if (event.kind === 'cancel') return { state, finished: true };
    if (event.kind === 'down') return commitOr(view, addNote(view.session.level, event.point, NEW_NOTE), { state, finished: true }, state);
    return { state };
  },
};
