import type { IssuedSet } from '../model/plan.ts';
import { issuedSetSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';

/** Who approved a set, when, and under which reference of theirs. */
export type Approval = NonNullable<IssuedSet['approved']>;

const FIELDS = issuedSetSchema.shape.approved.unwrap().partial();

/**
 * Notes the approval of an issued set. The set itself stays as it was issued. Refuses a set that is not there or is
 * approved already, and an approval without name or date.
 */
export const approveSet = command('Note approval', (draft, setId: string, approval: Approval) => {
  const set = draft.issuedSets.find(({ id }) => id === setId);
  if (!set) refuse('This set is not in the log of issued sets.');
  if (set.approved) refuse(`Set ${set.mark} is approved already. An approval is not written over: issue a new set.`);
  const [by, date] = [approval.by.trim(), approval.date.trim()];
  if (by === '') refuse('Enter who approved the set.');
  if (date === '') refuse('Enter the date of the approval.');
  const approved: Approval = { by: '', date: '', reference: '' };
  applyChange(approved, FIELDS, { by, date, reference: approval.reference.trim() });
  set.approved = approved;
});
