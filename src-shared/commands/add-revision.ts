import type { Revision } from '../model/plan.ts';
import { revisionSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';

const FIELDS = revisionSchema.partial();

/** Adds a revision. Refuses a blank mark, one that was used before, a text that is too long, and more than 200 of them. */
export const addRevision = command('Add revision', (draft, revision: Revision) => {
  const { revisions } = draft.info;
  const mark = revision.mark.trim();
  if (mark === '') refuse('A revision needs a mark, such as A.');
  if (revisions.some((each) => each.mark === mark)) refuse(`Revision ${mark} is there already. Choose the next mark.`);
  if (revisions.length >= 200) refuse('A plan takes 200 revisions at most.');
  const added: Revision = { mark: '', date: '', text: '' };
  applyChange(added, FIELDS, { ...revision, mark });
  revisions.push(added);
});
