import { command, refuse } from './command.ts';

/** Gives the text of a printed dimension back to the program: it stands where it disturbs least. Refuses one that nobody moved. */
export const resetDimensionText = command('Reset dimension text', (draft, key: string) => {
  const { dimensions } = draft.settings.sheets;
  if (!(key in dimensions)) refuse('This dimension text stands as the program put it already.');
  delete dimensions[key];
});
