import { takeId } from '../model/plan.ts';
import { type Finding, findingKey, restsOn } from '../rules/finding.ts';
import { command, refuse } from './command.ts';

/** Who accepts a finding, why, and when. */
export interface Acceptance {
  readonly reason: string;
  readonly by: string;
  /** As it is printed. */
  readonly date: string;
}

/** Checks that nobody can accept away: blank or sample limits of the manual, and figures that rounding would hide. */
export const NEVER_ACCEPTED: ReadonlySet<string> = new Set(['D5', 'D8']);

/** Longest name and date, as the plan keeps them. */
const LONGEST_LABEL = 200;
const LONGEST_REASON = 20_000;

/** Why nobody can accept a finding; null when somebody can. */
export function whyNotAccepted({ rule, verdict, title }: Pick<Finding, 'rule' | 'verdict' | 'title'>): string | null {
  if (verdict === 'ok') return 'This limit is kept: there is nothing to accept.';
  if (NEVER_ACCEPTED.has(rule)) return `“${title}” cannot be accepted: it has to be cured.`;
  return null;
}

/**
 * Accepts a finding as it is. It stays in every list, marked with reason, name and date, and opens again as soon as
 * what it rests on becomes another. An earlier acceptance of the same finding is replaced.
 * Refuses a blank reason or name, a limit that is kept, and the checks that cannot be accepted.
 */
export const acceptFinding = command('Accept finding', (draft, finding: Finding, { reason, by, date }: Acceptance) => {
  const why = whyNotAccepted(finding);
  if (why) refuse(why);
  if (reason.trim() === '') refuse('Say why this is acceptable: the reason is printed with the finding.');
  if (by.trim() === '') refuse('Say who accepts it: the name is printed with the finding.');
  if (reason.trim().length > LONGEST_REASON) refuse(`The reason is longer than ${LONGEST_REASON} characters.`);
  if ([by, date].some((words) => words.trim().length > LONGEST_LABEL)) refuse(`Name and date take ${LONGEST_LABEL} characters at most.`);
  const key = findingKey(finding);
  for (const earlier of Object.values(draft.waivers)) if (earlier.finding === key) delete draft.waivers[earlier.id];
  const id = takeId(draft, 'waiver');
  draft.waivers[id] = { id, finding: key, rule: finding.rule, name: finding.name, reason: reason.trim(), by: by.trim(), date: date.trim(), restsOn: restsOn(finding) };
});
