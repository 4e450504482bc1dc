import { command, refuse } from './command.ts';

/** Gives a view of the sheets back to the program: its place, scale and part are as composed. Refuses one that nobody placed. */
export const resetView = command('Reset view', (draft, key: string) => {
  const { views } = draft.settings.sheets;
  if (!(key in views)) refuse('This view stands as the program put it already.');
  delete views[key];
});
