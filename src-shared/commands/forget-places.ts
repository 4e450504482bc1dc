import { command, refuse } from './command.ts';

/** Forgets where views and dimension texts were put that no sheet shows any more. Refuses when nothing is known of any of them. */
export const forgetPlaces = command('Forget places on sheets', (draft, views: readonly string[], dimensions: readonly string[]) => {
  const { sheets } = draft.settings;
  const known = [...views.filter((key) => key in sheets.views), ...dimensions.filter((key) => key in sheets.dimensions)];
  if (known.length === 0) refuse('These places are forgotten already.');
  for (const key of views) delete sheets.views[key];
  for (const key of dimensions) delete sheets.dimensions[key];
});
