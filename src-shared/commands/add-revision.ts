import type { Plan, Revision } from '../model/plan.ts';
import { revisionSchema } from '../model/schema.ts';
import { changedKeys, thingDigests } from '../model/thing-digests.ts';
import { applyChange } from './apply-change.ts';
import { asItStood } from './as-it-stood.ts';
import { command, refuse } from './command.ts';

const FIELDS = revisionSchema.partial();

/** Enters a revision in a plan under change, with the digest of everything as it is issued. Refuses as `addRevision` does. */
export function enterRevision(draft: Plan, revision: Revision): void {
  const { revisions } = draft.info;
  const mark = revision.mark.trim();
  if (mark === '') refuse('A revision needs a mark, such as A.');
  if (revisions.some((each) => each.mark === mark)) refuse(`Revision ${mark} is there already. Choose the next mark.`);
  if (revisions.length >= 200) refuse('A plan takes 200 revisions at most.');
  const added: Revision = { mark: '', date: '', text: '' };
  applyChange(added, FIELDS, { ...revision, mark });
  revisions.push(added);
  const plan = asItStood(draft);
  const things = thingDigests(plan);
  draft.lastIssue = { mark, date: added.date, things, changed: plan.lastIssue ? changedKeys(plan.lastIssue.things, things) : [] };
}

/**
 * Adds a revision, and keeps what the plan is now as what was issued with it: what has changed since the issue before
 * is clouded on the sheets, what changes later is found by check D7.
 * Refuses a blank mark, one that was used before, a text that is too long, and more than 200 of them.
 */
export const addRevision = command('Add revision', (draft, revision: Revision) => enterRevision(draft, revision));
