import type { SheetSettings } from '../model/plan.ts';
import { sheetsSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';

const FIELDS = sheetsSchema.pick({ titleBlock: true, hasStampBox: true }).partial();

/** Changes the user's own head of the title block, up to 8 lines, and whether sheets keep a box clear for a stamp. */
export const editTitleBlock = command('Change title block', (draft, change: Partial<Pick<SheetSettings, 'titleBlock' | 'hasStampBox'>>) => {
  if ((change.titleBlock?.lines.length ?? 0) > 8) refuse('The title block has 8 lines of your own at most.');
  applyChange(draft.settings.sheets, FIELDS, change);
});
