import type { Info } from '../model/plan.ts';
import { infoSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';

const FIELDS = infoSchema.partial();

/** Changes what the plan says of its job: project, people, code, notes, revisions. Refuses a text that is too long. */
export const editInfo = command('Edit project data', (draft, change: Partial<Info>) => {
  applyChange(draft.info, FIELDS, change);
});
