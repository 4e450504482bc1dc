import type { SheetSettings } from '../model/plan.ts';
import { firstIssues } from '../model/first-issues.ts';
import { sheetsSchema } from '../model/schema.ts';
import { command, refuse } from './command.ts';

/**
 * Puts the text of a printed dimension where the user wants it [mm]: along the measured way from its middle, and its line
 * off the thing. Refuses a place off every paper.
 * @param key  that of the dimension, as composing names it
 */
export const moveDimensionText = command('Move dimension text', (draft, key: string, { along_mm, off_mm }: SheetSettings['dimensions'][string]) => {
  const next = { [key]: { along_mm, off_mm } };
  if (key === '' || firstIssues(sheetsSchema.shape.dimensions, next, 1).length > 0) refuse('The text of a dimension stands on the paper.');
  Object.assign(draft.settings.sheets.dimensions, next);
});
