import type { Host } from '#shared/host/contract';
import type { Plan } from '#shared/model/plan';
import { comparePlans } from '#shared/revisions/compare-plans';
import { newestIssueOf } from '#shared/revisions/newest-issue';
import type { RevisedSince } from '#shared/sheets/changes-table';

/** The plan of an issued set as it was kept; a string says why it cannot be read. */
async function issuedPlan(plan: Plan, mark: string, kept: string | null, host: Pick<Host, 'readIssue'>): Promise<Plan | string> {
  const asset = plan.assets[kept ?? ''];
  if (!asset) return `The plan of issued set ${mark} was not kept with this plan.`;
  const answer = await host.readIssue({ sha256: asset.sha256 });
  return answer.ok ? answer.value.plan : answer.problem.what;
}

/** What the newest issue of a plan changed against the one before it, as its sheets list it; undefined for a first issue. */
export async function revisedSince(plan: Plan, host: Pick<Host, 'readIssue'>): Promise<RevisedSince | undefined> {
  const newest = newestIssueOf(plan);
  if (!newest) return undefined;
  const { mark, before, self } = newest;
  const was = await issuedPlan(plan, before.mark, before.plan, host);
  const is = self?.plan ? await issuedPlan(plan, self.mark, self.plan, host) : plan;
  const unread = [was, is].find((each) => typeof each === 'string');
  if (typeof was === 'string' || typeof is === 'string') return { since: before.mark, mark, list: [], unread: `${unread} What was changed since then is not listed: compare with the copy that was given out.` };
  return { since: before.mark, mark, list: comparePlans(was, is, plan.settings.lengths) };
}
