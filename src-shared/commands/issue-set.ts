import { type IssuedSet, takeId } from '../model/plan.ts';
import { issuedSetSchema } from '../model/schema.ts';
import { enterRevision } from './add-revision.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';
import { type AssetEntry, holdAsset } from './hold-asset.ts';

/** What a set is given out as. */
export type Issuing = Pick<IssuedSet, 'mark' | 'date' | 'by' | 'purpose'>;

/** What the host keeps of an issue: digest of the plan's text, the frozen plan, and the printed sheets. null: not kept. */
export interface KeptIssue {
  readonly sha256: string;
  readonly plan: AssetEntry | null;
  readonly sheets: AssetEntry | null;
}

const FIELDS = issuedSetSchema.pick({ mark: true, date: true, by: true, purpose: true, sha256: true }).partial();
const UNKEPT = 'The set could not be kept with the plan. Issue it again.';

/**
 * Issues a set: adds the revision, renews what changes are measured from, and enters the set in the log with the
 * files that keep it. Refuses what `addRevision` refuses, a set without date, issuer or purpose, and more than 200.
 */
export const issueSet = command(
  (_, { mark }: Issuing, __: KeptIssue) => `Issue set ${mark.trim()}`,
  (draft, issuing: Issuing, kept: KeptIssue) => {
    const [date, by, purpose] = [issuing.date.trim(), issuing.by.trim(), issuing.purpose.trim()];
    if (date === '') refuse('Enter the date of issue.');
    if (by === '') refuse('Enter the name of whoever issues the set.');
    if (purpose === '') refuse('Enter what the set is issued for.');
    if (draft.issuedSets.length >= 200) refuse('A plan takes 200 issued sets at most.');
    enterRevision(draft, { mark: issuing.mark, date, text: purpose });
    const number = (draft.issuedSets.at(-1)?.number ?? 0) + 1;
    const set: IssuedSet = { id: takeId(draft, 'set'), number, mark: '', date: '', by: '', purpose: '', sha256: '', plan: null, sheets: null, approved: null };
    applyChange(set, FIELDS, { mark: issuing.mark.trim(), date, by, purpose, sha256: kept.sha256 });
    if (kept.plan) set.plan = holdAsset(draft, kept.plan, UNKEPT);
    if (kept.sheets) set.sheets = holdAsset(draft, kept.sheets, UNKEPT);
    draft.issuedSets.push(set);
  },
);
