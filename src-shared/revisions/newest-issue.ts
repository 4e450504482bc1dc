import type { IssuedSet, Plan } from '../model/plan.ts';

/** The newest issue of a plan beside the one before it. */
export interface NewestIssue {
  readonly mark: string;
  readonly before: IssuedSet;
  /** Its own entry in the log; undefined while the set is being issued. */
  readonly self: IssuedSet | undefined;
}

/** Which two issues the newest sheets compare; undefined before a first issue, and for the first itself. */
export function newestIssueOf({ lastIssue, issuedSets }: Pick<Plan, 'lastIssue' | 'issuedSets'>): NewestIssue | undefined {
  if (!lastIssue) return undefined;
  const at = issuedSets.findIndex(({ mark }) => mark === lastIssue.mark);
  const before = at < 0 ? issuedSets.at(-1) : issuedSets[at - 1];
  return before && { mark: lastIssue.mark, before, self: issuedSets[at] };
}
