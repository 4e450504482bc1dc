import type { Settings } from '../model/plan.ts';
import { settingsSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';

const FIELDS = settingsSchema.partial();

/** Changes how lengths are shown, or the grid. Refuses a grid below 1 mm or above 10 m. */
export const editSettings = command('Change settings', (draft, change: Partial<Settings>) => {
  applyChange(draft.settings, FIELDS, change);
});
