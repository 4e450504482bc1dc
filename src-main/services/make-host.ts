import { randomUUID } from 'node:crypto';
import { realpath, stat } from 'node:fs/promises';
import { hostname } from 'node:os';
import { extname, join } from 'node:path';
import type { HostInfo, OpenPlan, PlanRef } from '#shared/host/contract';
import { type Plan, newPlan } from '#shared/model/plan';
import { makeAssetStore } from './asset-store.ts';
import { replaceFile } from './atomic-file.ts';
import { hostBegan, hostEnded } from './holder.ts';
import { HostProblem, answering } from './host-problem.ts';
import { makeJobs } from './jobs.ts';
import type { KeptIssueFiles } from './issued-sets.ts';
import type { LocalHost } from './local-host.ts';
import { type ReadPlan, bytesFor, packWithAssets, readPlanBytes, readPlanFile, readPlanText, savePlanFile } from './plan-files.ts';
import { makePlanLocks, openElsewhereText } from './plan-locks.ts';
import { fileNameOf, makePlanPlaces, planNameOf } from './plan-places.ts';
import { makePreferences } from './preferences.ts';
import { printChoiceOf } from './print-choice.ts';
import { makeRecentPlans } from './recent-plans.ts';
import { makeRecoveryJournal } from './recovery-journal.ts';
import { type UnderlayReading, importFloorPlan, startReading } from './underlay-jobs.ts';

/** The system's own dialogs, where the host has them. Each answers null when the user cancels. */
export interface Dialogs {
  pickPlan(): Promise<string | null>;
  pickPlanPlace(name: string): Promise<string | null>;
  pickFilePlace(name: string): Promise<string | null>;
  /** Opens a file with the system's program for it; answers why not, or an empty text. */
  open(path: string): Promise<string>;
}

export interface HostOptions {
  readonly kind: HostInfo['host'];
  readonly version: string;
  /** Where the program keeps its own things: unsaved work, floor plans, preferences. */
  readonly userDataFolder: string;
  /** Where plans are kept unless the user picks another place. */
  readonly plansFolder: string;
  /** Path of a plan asked for at the start. */
  readonly startPlan?: string | null;
  /** Demo to show when no plan was asked for. */
  readonly startDemo?: string | null;
  readonly dialogs?: Dialogs;
  readonly now: () => Date;
}

/** Files that may be handed to the system's own programs: none of them runs. */
const OPENABLE = ['.pdf', '.xlsx', '.csv', '.json', '.png'];

const cancelled = (): HostProblem => new HostProblem('cancelled', 'Nothing was picked.', '', 'Pick a file to go on.');
const noDialogs = (): HostProblem => new HostProblem('unsupported', 'This host has no dialogs of the system.', '', 'Use the list of plans, or take the file as a download.');

/** Makes the host of one window over the services of this computer. */
export function makeHost(options: HostOptions): LocalHost {
  const { userDataFolder, plansFolder, dialogs, now, startPlan = null, startDemo = null } = options;
  const id = randomUUID();
  hostBegan(id);
  const assets = makeAssetStore(join(userDataFolder, 'floor-plans'), now);
  const locks = makePlanLocks(join(userDataFolder, 'open-plans'), id, now);
  const journal = makeRecoveryJournal(join(userDataFolder, 'unsaved'), id, now);
  const recent = makeRecentPlans(userDataFolder);
  const preferences = makePreferences(userDataFolder);
  const places = makePlanPlaces(plansFolder, recent);
  const jobs = makeJobs();
  const startRef = startPlan === null ? null : places.grant(startPlan);
  /** What each session of the window works on, with the file's state as it knows it. */
  const working = new Map<string, { readonly ref: PlanRef; readonly stamp: string | null }>();
  const written = new Set<string>();

  const keepAssets = async (read: ReadPlan): Promise<void> => {
    for (const asset of read.assets) await assets.keep(asset.name, asset.bytes);
  };
  const lockNameOf = (path: string): Promise<string> => realpath(path).catch(() => path);
  const hold = async (session: string, path: string): Promise<string | null> =>
    openElsewhereText(await locks.hold(await lockNameOf(path), session), hostname());
  const takeUp = async (session: string, ref: PlanRef, stamp: string | null): Promise<string | null> => {
    const before = working.get(session);
    if (before && before.ref !== ref) await locks.release(await lockNameOf(before.ref), session);
    working.set(session, { ref, stamp });
    return hold(session, ref);
  };
  const leave = async (session: string, ref: PlanRef | null): Promise<void> => {
    const before = working.get(session);
    if (!before || (ref !== null && ref !== before.ref)) return;
    working.delete(session);
    await locks.release(await lockNameOf(before.ref), session);
  };
  const unsavedPlan = (name: string, plan: Plan, remarks: readonly string[] = []): OpenPlan => ({ ref: null, name, plan, stamp: null, openElsewhere: null, remarks });
  const startDemoPlan = async (name: string): Promise<OpenPlan> => {
    const { buildDemo, isDemoName } = await import('../demos/build-demo.ts');
    if (!isDemoName(name)) throw new HostProblem('not-found', 'There is no demo plan of this name.', name, 'Start an empty plan instead.');
    const demo = await buildDemo(name);
    const namesBySha256 = new Map(Object.values(demo.plan.assets).map((asset) => [asset.sha256, asset.name]));
    for (const { sha256, file, bytes } of demo.assets) await assets.keep(namesBySha256.get(sha256) ?? file, bytes);
    return unsavedPlan(demo.plan.info.project || name, demo.plan);
  };

  return {
    info: () =>
      answering('', () => ({ host: options.kind, version: options.version, plansFolder, hasDialogs: dialogs !== undefined, startPlan: startRef, startDemo })),
    listPlans: () => answering(plansFolder, async () => ({ plans: await places.list() })),
    forgetRecent: ({ ref }) =>
      answering(ref, async () => {
        await recent.forget(ref);
        return null;
      }),
    pickPlan: () =>
      answering('', async () => {
        if (!dialogs) throw noDialogs();
        const path = await dialogs.pickPlan();
        if (path === null) throw cancelled();
        return { ref: places.grant(path) };
      }),
    pickPlanPlace: ({ name }) =>
      answering(name, async () => {
        const picked = dialogs ? await dialogs.pickPlanPlace(`${fileNameOf(name)}.nzw`) : places.placeFor(name);
        if (picked === null) throw cancelled();
        const ref = places.grant(extname(picked) ? picked : `${picked}.nzw`);
        return { ref, exists: (await stat(ref).catch(() => undefined)) !== undefined };
      }),

    openPlan: ({ session, ref }) =>
      answering(ref, async () => {
        const path = await places.pathOf(ref);
        const read = await readPlanFile(path);
        await keepAssets(read);
        // Sheets stay what they are: the plan out of them is saved in a file of its own.
        if (read.isFromSheets) return unsavedPlan(planNameOf(path), read.plan, read.remarks);
        await recent.add(path);
        const openElsewhere = await takeUp(session, ref, read.stamp);
        return { ref, name: planNameOf(path), plan: read.plan, stamp: read.stamp, openElsewhere, remarks: read.remarks };
      }),
    openPlanBytes: ({ name, bytes }) =>
      answering(name, async () => {
        const read = readPlanBytes(bytes, name);
        await keepAssets(read);
        return unsavedPlan(planNameOf(name), read.plan, read.remarks);
      }),
    newPlan: ({ demo, lengths }) => answering(demo ?? '', async () => (demo === null ? unsavedPlan('New plan', newPlan(lengths)) : startDemoPlan(demo))),
    savePlan: ({ session, ref, plan, stamp, overwrite }) =>
      answering(ref, async () => {
        const path = await places.pathOf(ref);
        const { bytes, remarks } = await bytesFor(path, plan, assets.find);
        const fresh = await savePlanFile(path, bytes, { stamp, overwrite });
        await recent.add(path);
        await takeUp(session, ref, fresh);
        return { ref, name: planNameOf(path), stamp: fresh, remarks };
      }),
    packPlan: ({ plan }) => answering('', async () => ({ bytes: (await packWithAssets(plan, assets.find)).bytes })),
    closePlan: ({ session, ref }) =>
      answering('', async () => {
        await leave(session, ref);
        return null;
      }),

    keepRecovery: ({ session, ref, name, steps, plan }) =>
      answering(name, async () => {
        if (ref !== null) await places.pathOf(ref);
        const known = working.get(session);
        await journal.keep(session, { name, ref, steps, plan, stamp: known && known.ref === ref ? known.stamp : null });
        return null;
      }),
    dropRecovery: ({ session }) =>
      answering('', async () => {
        await journal.drop(session);
        return null;
      }),
    listRecoveries: () => answering('', async () => ({ recoveries: await journal.list() })),
    openRecovery: ({ session, id: kept }) =>
      answering('', async () => {
        const { name, ref, stamp, planText } = await journal.adopt(kept, session);
        const { plan, remarks } = readPlanText(planText, name);
        if (ref === null) return unsavedPlan(name, plan, remarks);
        // Only a ref that the window had a right to gets into the journal.
        const openElsewhere = await takeUp(session, places.grant(ref), stamp);
        return { ref, name, plan, stamp, openElsewhere, remarks };
      }),

    importUnderlay: ({ name, bytes }) => answering(name, () => importFloorPlan(assets, jobs, name, bytes)),
    readUnderlay: ({ sha256, page }) =>
      answering('', async () => {
        const { name, bytes } = await assets.read(sha256);
        return { job: startReading(jobs, bytes, name, page) };
      }),
    underlayResult: ({ job }) =>
      answering('', () => {
        const { report, packed } = jobs.result(job, 'reading') as UnderlayReading;
        return { report, bytes: packed };
      }),

    printSheets: ({ plan, paper, scale, set, takeOff }) =>
      answering('', () => {
        const choice = printChoiceOf(paper, scale, set, takeOff);
        const job = jobs.start('printing', 'Printing sheets', async (report, signal) => {
          const { printPlan } = await import('./print-plan.ts');
          const { issuedChanges } = await import('./issued-sets.ts');
          const changes = await issuedChanges(plan, assets.find);
          const bytes = await printPlan(plan, { ...choice, changes }, assets.read, now(), report, signal);
          return { name: `${fileNameOf(plan.info.project || 'Plan')} ${set} sheets.pdf`, bytes, remark: changes?.unread ?? null };
        });
        return { job };
      }),
    printResult: ({ job }) => answering('', () => jobs.result(job, 'printing') as { name: string; bytes: Uint8Array; remark: string | null }),

    readFieldRecord: ({ name, bytes }) =>
      answering(name, async () => {
        const { readFieldRecord } = await import('./field/read-field-record.ts');
        return readFieldRecord(bytes, name);
      }),

    keepIssue: ({ plan, takeOff }) =>
      answering('', () => ({
        job: jobs.start('issuing', 'Issuing the set', async (report, signal) => {
          const { keepIssue } = await import('./issued-sets.ts');
          return keepIssue(plan, takeOff, assets, now(), report, signal);
        }),
      })),
    issueResult: ({ job }) => answering('', () => jobs.result(job, 'issuing') as KeptIssueFiles),
    readIssue: ({ sha256 }) =>
      answering('', async () => {
        const [{ unpackIssue }, found] = [await import('./issued-sets.ts'), await assets.find(sha256)];
        if (!found) throw new HostProblem('not-found', 'The plan of this issued set is no longer kept.', sha256.slice(0, 12), 'Look for an older copy of the plan file.');
        const { plan, remarks } = unpackIssue(found.bytes, found.name, assets.find);
        return { plan, remarks };
      }),
    printIssue: ({ plan, set, takeOff }) =>
      answering('', () => {
        const issued = plan.issuedSets.find(({ id: each }) => each === set);
        if (!issued) throw new HostProblem('not-found', 'This set is not in the log of issued sets.', set, 'Choose a set of the log.');
        const job = jobs.start('printing', `Printing set ${issued.mark}`, async (report, signal) => {
          const { issueFileName, reprintIssue } = await import('./issued-sets.ts');
          return { name: issueFileName(plan, issued), bytes: await reprintIssue(plan, set, takeOff, assets.find, now(), report, signal), remark: null };
        });
        return { job };
      }),

    jobState: ({ job }) => answering('', () => jobs.state(job)),
    cancelJob: ({ job }) =>
      answering('', () => {
        jobs.cancel(job);
        return null;
      }),

    saveFile: ({ name, bytes }) =>
      answering(name, async () => {
        if (!dialogs) throw noDialogs();
        const ending = extname(name).toLowerCase();
        const place = await dialogs.pickFilePlace(`${fileNameOf(name.slice(0, name.length - ending.length))}${ending}`);
        if (place === null) throw cancelled();
        await replaceFile(place, bytes);
        written.add(place);
        return { place };
      }),
    openExternally: ({ place }) =>
      answering(place, async () => {
        if (!dialogs) throw noDialogs();
        if (!written.has(place) || !OPENABLE.includes(extname(place).toLowerCase())) {
          throw new HostProblem('refused', 'Only sheets and tables that were just saved are opened from here.', place, 'Open the file from its folder.');
        }
        const why = await dialogs.open(place);
        if (why) throw new HostProblem('failed', `The system could not open the file: ${why}`, place, 'Open it from its folder.');
        return null;
      }),

    readPreferences: () => answering('', async () => ({ preferences: await preferences.read() })),
    writePreferences: ({ preferences: changed }) =>
      answering('', async () => {
        await preferences.change((present) => ({ ...present, ...changed }));
        return null;
      }),

    async end() {
      jobs.cancelAll();
      await locks.releaseAll();
      await journal.letGo();
      working.clear();
      hostEnded(id);
    },
  };
}
