import { unpackPlan } from '#shared/model/pack-plan';
import type { KeptAsset } from '#shared/host/contract';
import type { IssuedSet, Plan } from '#shared/model/plan';
import { printPlan as planText } from '#shared/model/print-plan';
import { comparePlans } from '#shared/revisions/compare-plans';
import { frozenPlan } from '#shared/revisions/frozen-plan';
import { newestIssueOf } from '#shared/revisions/newest-issue';
import { type AssetStore, sha256Of } from './asset-store.ts';
import { HostProblem } from './host-problem.ts';
import type { ReportProgress } from './jobs.ts';
import { packWithAssets } from './plan-files.ts';
import { fileNameOf } from './plan-places.ts';
import type { PrintChoice } from './print-choice.ts';
import { printPlan } from './print-plan.ts';

type FindAsset = AssetStore['find'];
type Changes = NonNullable<PrintChoice['changes']>;

/** What is kept of an issue: digest of the plan's text, the frozen plan and its printed sheets. */
export interface KeptIssueFiles {
  readonly sha256: string;
  readonly plan: KeptAsset;
  readonly sheets: KeptAsset;
}

const notKept = (what: string, mark: string): HostProblem =>
  new HostProblem('not-found', `The ${what} of issued set ${mark} was not kept with this plan.`, `set ${mark}`, 'Look for the copy that was given out, or for an older copy of the plan file.');

/**
 * The plan of an issued set, as it was issued, with the floor plans under it.
 * @throws {HostProblem} it was not kept, or can no longer be read
 */
export async function readIssuedPlan(plan: Plan, { mark, plan: kept }: IssuedSet, find: FindAsset): Promise<{ readonly plan: Plan; readonly remarks: readonly string[]; readonly findAsset: FindAsset }> {
  const asset = kept === null ? undefined : plan.assets[kept];
  const found = asset && (await find(asset.sha256));
  if (!found) throw notKept('plan', mark);
  return unpackIssue(found.bytes, `set ${mark}`, find);
}

/** Opens the bytes of a frozen plan. */
export function unpackIssue(bytes: Uint8Array, where: string, find: FindAsset): { readonly plan: Plan; readonly remarks: readonly string[]; readonly findAsset: FindAsset } {
  const read = unpackPlan(bytes);
  if (!read.ok) throw new HostProblem(read.problem.code, read.problem.what, where, 'Look for an older copy of the plan file.');
  const { plan, assets, remarks } = read;
  const within = new Map(Object.values(plan.assets).flatMap(({ name, file, sha256 }) => (Object.hasOwn(assets, file) && assets[file] ? [[sha256, { name, bytes: assets[file] }] as const] : [])));
  return { plan, remarks, findAsset: async (sha256) => within.get(sha256) ?? find(sha256) };
}

/** What a set says in place of its changes when the one before it cannot be read. */
const unreadWords = (since: string, problem: unknown): string => {
  const why = problem instanceof HostProblem ? problem.message : `The plan of issued set ${since} cannot be read.`;
  return `${why} What was changed since then is not listed: compare with the copy that was given out.`;
};

async function changesBetween(plan: Plan, before: IssuedSet, mark: string, readNow: () => Promise<Plan>, find: FindAsset): Promise<Changes> {
  try {
    const was = await readIssuedPlan(plan, before, find);
    return { since: before.mark, mark, list: comparePlans(was.plan, await readNow(), plan.settings.lengths) };
  } catch (problem) {
    return { since: before.mark, mark, list: [], unread: unreadWords(before.mark, problem) };
  }
}

/**
 * What the newest issue of a plan changed against the one before it, as its sheets list it; undefined for a first
 * issue. Where one of the two cannot be read, why stands in place of the list.
 */
export async function issuedChanges(plan: Plan, find: FindAsset): Promise<Changes | undefined> {
  const newest = newestIssueOf(plan);
  if (!newest) return undefined;
  const { before, self, mark } = newest;
  return changesBetween(plan, before, mark, async () => (self?.plan ? (await readIssuedPlan(plan, self, find)).plan : plan), find);
}

const SUBMITTAL = { paper: 'auto', scale: 'auto', set: 'submittal' } as const;

/**
 * Freezes a plan that is being issued: prints its set, and keeps plan and sheets.
 * @param plan  with its new revision entered, but not yet in the log of issued sets
 */
export async function keepIssue(plan: Plan, takeOff: PrintChoice['takeOff'], assets: AssetStore, now: Date, report: ReportProgress, signal: AbortSignal): Promise<KeptIssueFiles> {
  const frozen = frozenPlan(plan);
  const changes = await issuedChanges(plan, assets.find);
  const pdf = await printPlan(frozen, { ...SUBMITTAL, takeOff, changes }, assets.find, now, (done, doing) => report(done * 0.95, doing), signal);
  signal.throwIfAborted();
  report(0.95, 'Keeping plan and sheets');
  const { bytes } = await packWithAssets(frozen, assets.find);
  const title = `${fileNameOf(plan.info.project || 'Plan')}, set ${plan.lastIssue?.mark ?? ''}`;
  const keep = async (name: string, ending: string, data: Uint8Array): Promise<KeptAsset> => {
    const sha256 = await assets.keep(name, data);
    return { name, file: `issue-${sha256.slice(0, 16)}.${ending}`, sha256 };
  };
  return { sha256: sha256Of(new TextEncoder().encode(planText(frozen))), plan: await keep(`${title}, plan`, 'nzw', bytes), sheets: await keep(`${title}, sheets`, 'pdf', pdf) };
}

/** Name of a reprinted set, as it is saved. */
export const issueFileName = (plan: Plan, { mark }: IssuedSet): string => `${fileNameOf(`${plan.info.project || 'Plan'} set ${mark}`)}.pdf`;

/**
 * The sheets of an issued set once more. The current set is given just as it was issued; one that another has replaced
 * is printed anew, and says so across every sheet.
 * @throws {HostProblem} the set is not in the log, or was not kept
 */
export async function reprintIssue(plan: Plan, setId: string, takeOff: PrintChoice['takeOff'], find: FindAsset, now: Date, report?: ReportProgress, signal?: AbortSignal): Promise<Uint8Array> {
  const at = plan.issuedSets.findIndex(({ id }) => id === setId);
  const set = plan.issuedSets[at];
  if (!set) throw new HostProblem('not-found', 'This set is not in the log of issued sets.', setId, 'Choose a set of the log.');
  const newest = plan.issuedSets.at(-1);
  if (set === newest || !newest) {
    const asset = set.sheets === null ? undefined : plan.assets[set.sheets];
    const found = asset && (await find(asset.sha256));
    if (found) return found.bytes;
  }
  const issued = await readIssuedPlan(plan, set, find);
  const before = plan.issuedSets[at - 1];
  const changes = before && (await changesBetween(plan, before, set.mark, async () => issued.plan, find));
  const supersededBy = newest && newest !== set ? newest.mark : undefined;
  return printPlan(issued.plan, { ...SUBMITTAL, takeOff, changes, supersededBy }, issued.findAsset, now, report, signal);
}
