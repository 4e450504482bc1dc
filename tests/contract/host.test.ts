import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import type { Host, HostMethod, JobState } from '#shared/host/contract';
import { bridgeTransport } from '#shared/host/bridge';
import { HOST_METHODS } from '#shared/host/methods';
import { hostOver } from '#shared/host/transport';
import { newPlan } from '#shared/model/plan';
import { unpackPlan } from '#shared/model/pack-plan';
import { decodeDrawing } from '#shared/underlay/encode-drawing';
import { startElectron } from '../../src-main/electron/start-electron.ts';
import { listWindowFiles } from '../../src-main/services/window-files.ts';
import { FakeElectron } from '../support/fake-electron.ts';
import { TEST_TIME, goodOf, hostIn, problemIn } from '../support/hosts.ts';
import { enter, hostAt, loopbackIn } from '../support/loopback.ts';
import { badPlanFiles } from '../support/bad-plan-files.ts';
import { tempFolder } from '../support/temp-folder.ts';

/** Two windows over one folder, each reached over the wire; and what the system's dialogs would answer. */
interface Reached {
  readonly folder: string;
  readonly host: Host;
  readonly other: Host;
  pick(path: string | null): void;
}

async function overBridge(): Promise<Reached> {
  const folder = tempFolder();
  const electron = new FakeElectron();
  const folders = { userDataFolder: join(folder, 'own'), plansFolder: join(folder, 'plans') };
  await startElectron(electron.parts(), { version: '0.0.0', folders, preload: '', findWindowFile: await listWindowFiles(folder), now: () => TEST_TIME, whenIdle: () => undefined }, folder);
  electron.appEvents.emit('second-instance', {}, ['nozzlewright', join(folder, 'plans', 'other.nzw')], folder);
  const [host, other] = electron.windows.map((window) => hostOver(bridgeTransport(electron.bridge(window))));
  if (!host || !other) throw new Error('The windows did not open.');
  return { folder, host, other, pick: (path) => Object.assign(electron, { picked: path }) };
}

async function overLoopback(): Promise<Reached> {
  const folder = tempFolder();
  const loopback = await loopbackIn(folder, { makeHost: () => hostIn(folder) });
  const cookie = await enter(loopback);
  return { folder, host: hostAt(loopback, cookie, 'w1'), other: hostAt(loopback, cookie, 'w2'), pick: () => undefined };
}

const SQUARE = new TextEncoder().encode(
  '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80"><rect x="10" y="10" width="60" height="40" fill="none" stroke="black"/></svg>',
);

async function ended(host: Host, job: string): Promise<JobState> {
  for (;;) {
    const state = goodOf(await host.jobState({ job }));
    if (state.state !== 'running') return state;
    await new Promise((resolve) => setImmediate(resolve));
  }
}

const used = new Map<string, Set<string>>();
const recorded = (transport: string, host: Host): Host =>
  Object.fromEntries(
    Object.entries(host).map(([method, call]) => [
      method,
      (request: never) => {
        used.set(transport, (used.get(transport) ?? new Set()).add(method));
        return call(request);
      },
    ]),
  ) as unknown as Host;

describe.each([
  ['electron', overBridge],
  ['loopback', overLoopback],
] as const)('host contract over %s', (kind, reach) => {
  const connect = async (): Promise<Reached> => {
    const reached = await reach();
    return { ...reached, host: recorded(kind, reached.host) };
  };
  afterAll(() => expect([...(used.get(kind) ?? [])].sort()).toEqual((Object.keys(HOST_METHODS) as HostMethod[]).sort()));

  test('info says who it is', async () => {
    const { host, folder } = await connect();
    expect(goodOf(await host.info({}))).toEqual({ host: kind, version: '0.0.0', plansFolder: join(folder, 'plans'), hasDialogs: kind === 'electron', startPlan: null, startDemo: null });
  });

  test('a new plan is empty, or a finished demo with its floor plan', async () => {
    const { host } = await connect();
    expect(goodOf(await host.newPlan({ demo: null, lengths: 'metric' }))).toMatchObject({ ref: null, stamp: null, openElsewhere: null, plan: newPlan('metric') });
    const demo = goodOf(await host.newPlan({ demo: 'F1', lengths: 'feet' }));
    expect(demo.name).toBe(demo.plan.info.project);
    const [asset] = Object.values(demo.plan.assets);
    const { job } = goodOf(await host.readUnderlay({ sha256: asset?.sha256 ?? '', page: 1 }));
    expect(await ended(host, job)).toMatchObject({ state: 'done', problem: null });
    expect(problemIn(await host.newPlan({ demo: 'F99', lengths: 'feet' })).code).toBe('not-found');
  });

  test('a plan is saved, listed, opened and closed', async () => {
    const { host, other, folder, pick } = await connect();
    const demo = goodOf(await host.newPlan({ demo: 'F1', lengths: 'feet' }));
    pick(join(folder, 'plans', 'Signal hut.nzw'));
    const place = goodOf(await host.pickPlanPlace({ name: 'Signal hut' }));
    expect(place).toEqual({ ref: join(folder, 'plans', 'Signal hut.nzw'), exists: false });
    const saved = goodOf(await host.savePlan({ session: 's1', ref: place.ref, plan: demo.plan, stamp: null, overwrite: false }));
    expect(saved).toEqual({ ref: place.ref, name: 'Signal hut', stamp: expect.any(String), remarks: [] });
    expect(goodOf(await host.pickPlanPlace({ name: 'Signal hut' })).exists).toBe(true);
    expect(goodOf(await host.listPlans({})).plans).toMatchObject([{ ref: place.ref, name: 'Signal hut', isRecent: true, isMissing: false }]);
    const opened = goodOf(await host.openPlan({ session: 's1', ref: place.ref }));
    expect(opened).toEqual({ ref: place.ref, name: 'Signal hut', plan: demo.plan, stamp: saved.stamp, openElsewhere: null, remarks: [] });
    expect(goodOf(await other.openPlan({ session: 's2', ref: place.ref })).openElsewhere).toContain('another window');
    goodOf(await host.closePlan({ session: 's1', ref: place.ref }));
    expect(goodOf(await other.openPlan({ session: 's2', ref: place.ref })).openElsewhere).toBeNull();
    goodOf(await host.forgetRecent({ ref: place.ref }));
    expect(goodOf(await host.listPlans({})).plans).toMatchObject([{ isRecent: false }]);
  });

  test('of two windows that save, the second is asked', async () => {
    const { host, other, folder, pick } = await connect();
    pick(join(folder, 'plans', 'a.nzw'));
    const { ref } = goodOf(await host.pickPlanPlace({ name: 'a' }));
    const first = goodOf(await host.savePlan({ session: 's1', ref, plan: newPlan(), stamp: null, overwrite: false }));
    const opened = goodOf(await other.openPlan({ session: 's2', ref }));
    const mine = { ...newPlan(), nextSerial: 2 };
    const theirs = { ...newPlan(), nextSerial: 3 };
    goodOf(await host.savePlan({ session: 's1', ref, plan: mine, stamp: first.stamp, overwrite: false }));
    expect(problemIn(await other.savePlan({ session: 's2', ref, plan: theirs, stamp: opened.stamp, overwrite: false }))).toMatchObject({ code: 'conflict', where: ref });
    expect(goodOf(await host.openPlan({ session: 's1', ref })).plan).toEqual(mine);
    goodOf(await other.savePlan({ session: 's2', ref, plan: theirs, stamp: opened.stamp, overwrite: true }));
    const kept = unpackPlan(new Uint8Array(readFileSync(`${ref}.bak`)));
    expect(kept.ok && kept.plan).toEqual(mine);
  });

  test('a window reaches no file that nobody picked', async () => {
    const { host, folder } = await connect();
    const outside = join(folder, 'outside.nzw');
    writeFileSync(outside, 'x');
    for (const ref of [outside, join(folder, 'plans', '..', 'outside.nzw'), '/etc/passwd', 'a.nzw']) {
      expect(problemIn(await host.openPlan({ session: 's1', ref })).code).toBe('refused');
      expect(problemIn(await host.savePlan({ session: 's1', ref, plan: newPlan(), stamp: null, overwrite: true })).code).toBe('refused');
      expect(problemIn(await host.keepRecovery({ session: 's1', ref, name: 'x', steps: 1, plan: newPlan() })).code).toBe('refused');
    }
    expect(readFileSync(outside, 'utf8')).toBe('x');
  });

  test('dialogs are the system\'s, or the host says that it has none', async () => {
    const { host, folder, pick } = await connect();
    if (kind === 'loopback') {
      expect(problemIn(await host.pickPlan({})).code).toBe('unsupported');
      expect(problemIn(await host.saveFile({ name: 'a.pdf', bytes: SQUARE })).code).toBe('unsupported');
      expect(problemIn(await host.openExternally({ place: join(folder, 'a.pdf') })).code).toBe('unsupported');
      return;
    }
    pick(null);
    for (const asked of [host.pickPlan({}), host.pickPlanPlace({ name: 'a' }), host.saveFile({ name: 'a.pdf', bytes: SQUARE })]) expect(problemIn(await asked).code).toBe('cancelled');
    pick(join(folder, 'elsewhere.nzw'));
    const { ref } = goodOf(await host.pickPlan({}));
    expect(problemIn(await host.openPlan({ session: 's1', ref })).code).toBe('not-found');
    pick(join(folder, 'sheets.pdf'));
    expect(goodOf(await host.saveFile({ name: 'sheets.pdf', bytes: SQUARE }))).toEqual({ place: join(folder, 'sheets.pdf') });
    expect(new Uint8Array(readFileSync(join(folder, 'sheets.pdf')))).toEqual(SQUARE);
    goodOf(await host.openExternally({ place: join(folder, 'sheets.pdf') }));
    expect(problemIn(await host.openExternally({ place: '/usr/bin/env' })).code).toBe('refused');
    pick(join(folder, 'cut list.xlsx'));
    goodOf(await host.saveFile({ name: 'cut list.xlsx', bytes: SQUARE }));
    expect(new Uint8Array(readFileSync(join(folder, 'cut list.xlsx')))).toEqual(SQUARE);
    goodOf(await host.openExternally({ place: join(folder, 'cut list.xlsx') }));
    pick(join(folder, 'run.sh'));
    goodOf(await host.saveFile({ name: 'run.sh', bytes: SQUARE }));
    expect(problemIn(await host.openExternally({ place: join(folder, 'run.sh') })).code).toBe('refused');
  });

  test('a plan file as bytes is opened and given', async () => {
    const { host } = await connect();
    const demo = goodOf(await host.newPlan({ demo: 'F1', lengths: 'feet' }));
    const { bytes } = goodOf(await host.packPlan({ plan: demo.plan }));
    expect(goodOf(await host.openPlanBytes({ name: 'dropped.nzw', bytes }))).toEqual({ ref: null, name: 'dropped', plan: demo.plan, stamp: null, openElsewhere: null, remarks: [] });
  });

  test('each bad file is one problem', async () => {
    const { host } = await connect();
    for (const { name, bytes } of await badPlanFiles()) {
      const problem = problemIn(await host.openPlanBytes({ name: `${name}.nzw`, bytes }));
      expect([problem.what, problem.where, problem.remedy].every((text) => text !== ''), name).toBe(true);
      expect(problem.code, name).not.toBe('failed');
    }
  });

  test('unsaved work is kept, and taken up when its window has gone', async () => {
    const { host, other, folder } = await connect();
    const plan = { ...newPlan('metric'), nextSerial: 42 };
    goodOf(await host.keepRecovery({ session: 's1', ref: null, name: 'Hut', steps: 5, plan }));
    expect(goodOf(await other.listRecoveries({})).recoveries).toEqual([]);
    goodOf(await host.dropRecovery({ session: 's1' }));
    // A host that kept work and ended without saving.
    const gone = hostIn(folder);
    goodOf(await gone.keepRecovery({ session: 's9', ref: null, name: 'Annex', steps: 3, plan }));
    await gone.end();
    expect(goodOf(await host.listRecoveries({})).recoveries).toEqual([{ id: 's9', name: 'Annex', ref: null, changedAt: TEST_TIME.toISOString(), steps: 3 }]);
    const opened = goodOf(await host.openRecovery({ session: 's1', id: 's9' }));
    expect(opened).toEqual({ ref: null, name: 'Annex', plan, stamp: null, openElsewhere: null, remarks: [] });
    expect(goodOf(await other.listRecoveries({})).recoveries).toEqual([]);
    expect(problemIn(await other.openRecovery({ session: 's2', id: 's9' })).code).toBe('not-found');
  });

  test('recovered work still minds a file that was changed meanwhile', async () => {
    const { host, folder } = await connect();
    const gone = hostIn(folder);
    const { ref } = goodOf(await gone.pickPlanPlace({ name: 'hut' }));
    const saved = goodOf(await gone.savePlan({ session: 's9', ref, plan: newPlan(), stamp: null, overwrite: false }));
    goodOf(await gone.keepRecovery({ session: 's9', ref, name: 'hut', steps: 1, plan: { ...newPlan(), nextSerial: 2 } }));
    await gone.end();
    const meanwhile = hostIn(folder);
    goodOf(await meanwhile.savePlan({ session: 's8', ref, plan: { ...newPlan(), nextSerial: 3 }, stamp: saved.stamp, overwrite: false }));
    await meanwhile.end();
    const opened = goodOf(await host.openRecovery({ session: 's1', id: 's9' }));
    expect(opened).toMatchObject({ ref, stamp: saved.stamp, plan: { nextSerial: 2 } });
    expect(problemIn(await host.savePlan({ session: 's1', ref, plan: opened.plan, stamp: opened.stamp, overwrite: false })).code).toBe('conflict');
  });

  test('a floor plan is kept, read and drawn', async () => {
    const { host } = await connect();
    const { job, asset } = goodOf(await host.importUnderlay({ name: 'room.svg', bytes: SQUARE }));
    expect(asset).toEqual({ name: 'room.svg', file: `${asset.sha256.slice(0, 16)}.svg`, sha256: expect.stringMatching(/^[0-9a-f]{64}$/) });
    expect(await ended(host, job)).toMatchObject({ state: 'done', progress: 1 });
    const { report, bytes } = goodOf(await host.underlayResult({ job }));
    expect(report).toMatchObject({ kind: 'svg', pageCount: 1, segments: 4 });
    expect(decodeDrawing(bytes).layers.reduce((sum, layer) => sum + layer.segments.length / 4, 0)).toBe(4);
    const again = goodOf(await host.readUnderlay({ sha256: asset.sha256, page: 1 }));
    expect((await ended(host, again.job)).state).toBe('done');
    expect(problemIn(await host.readUnderlay({ sha256: '0'.repeat(64), page: 1 })).code).toBe('not-found');
  });

  test('a floor plan that cannot be read fails with what, where and remedy', async () => {
    const { host } = await connect();
    expect(problemIn(await host.importUnderlay({ name: 'empty.dxf', bytes: new Uint8Array() })).code).toBe('unreadable');
    const { job } = goodOf(await host.importUnderlay({ name: 'noise.dxf', bytes: Uint8Array.from({ length: 200 }, (_, i) => (i * 37) % 251) }));
    const { state, problem } = await ended(host, job);
    expect(state).toBe('failed');
    expect(problem).toEqual({ code: 'unreadable', what: expect.stringMatching(/./), where: expect.stringContaining('noise.dxf'), remedy: expect.stringMatching(/./) });
    expect(problemIn(await host.underlayResult({ job })).what).toBe(problem?.what);
  });

  test('sheets are printed as one PDF, and a job can be cancelled', async () => {
    const { host } = await connect();
    const demo = goodOf(await host.newPlan({ demo: 'F1', lengths: 'feet' }));
    const { job } = goodOf(await host.printSheets({ plan: demo.plan, paper: 'auto', scale: 'auto', set: 'field', takeOff: null }));
    expect(problemIn(await host.printResult({ job })).code).toBe('refused');
    expect(await ended(host, job)).toMatchObject({ state: 'done', problem: null });
    const { name, bytes, remark } = goodOf(await host.printResult({ job }));
    expect(remark).toBeNull();
    expect(name).toMatch(/field sheets\.pdf$/);
    expect(new TextDecoder('latin1').decode(bytes.subarray(0, 5))).toBe('%PDF-');
    const second = goodOf(await host.printSheets({ plan: demo.plan, paper: 'A3', scale: 50, set: 'submittal', takeOff: { stock_m: 6, kerf_m: 0.002 } }));
    goodOf(await host.cancelJob({ job: second.job }));
    expect(goodOf(await host.jobState({ job: second.job }))).toMatchObject({ state: 'cancelled', problem: { code: 'cancelled' } });
    expect(problemIn(await host.printSheets({ plan: demo.plan, paper: 'B7', scale: 'auto', set: 'field', takeOff: null })).code).toBe('refused');
    expect(problemIn(await host.jobState({ job: 'unknown' })).code).toBe('not-found');
  });

  test('a filled table is read, and what is no field record is told', async () => {
    const { host } = await connect();
    const table = new TextEncoder().encode('id,measured,by\nnet-1/nozzle-3/first,"11\' 4 1/2""",A.B.\n');
    expect(goodOf(await host.readFieldRecord({ name: 'back.csv', bytes: table }))).toEqual({
      rows: [{ id: 'net-1/nozzle-3/first', where: 'line 2', cells: { measured: `11' 4 1/2"`, by: 'A.B.' } }],
      about: { source: 'csv', project: null, revision: null, digest: null, count: null, remarks: [] },
    });
    expect(problemIn(await host.readFieldRecord({ name: 'back.csv', bytes: new Uint8Array() }))).toMatchObject({ code: 'unreadable', where: 'back.csv' });
    expect(problemIn(await host.readFieldRecord({ name: 'back.pdf', bytes: table })).what).toBe('This is not a PDF.');
  });

  test('a set is issued as a job, and one that is not kept is answered', async () => {
    const { host } = await connect();
    const { job } = goodOf(await host.keepIssue({ plan: newPlan(), takeOff: null }));
    expect(problemIn(await host.issueResult({ job })).code).toBe('refused');
    expect(problemIn(await host.printResult({ job })).code).toBe('refused');
    goodOf(await host.cancelJob({ job }));
    expect(problemIn(await host.issueResult({ job })).code).toBe('cancelled');
    expect(problemIn(await host.readIssue({ sha256: '0'.repeat(64) })).code).toBe('not-found');
    expect(problemIn(await host.printIssue({ plan: newPlan(), set: 'set-1', takeOff: null })).code).toBe('not-found');
    const none = { id: 'set-1', number: 1, mark: 'A', date: '', by: '', purpose: '', sha256: '0'.repeat(64), plan: null, sheets: null, approved: null };
    const again = goodOf(await host.printIssue({ plan: { ...newPlan(), issuedSets: [none] }, set: 'set-1', takeOff: null }));
    expect(await ended(host, again.job)).toMatchObject({ state: 'failed', problem: { code: 'not-found' } });
  });

  test('preferences stay', async () => {
    const { host, other } = await connect();
    expect(goodOf(await host.readPreferences({})).preferences).toEqual({});
    goodOf(await host.writePreferences({ preferences: { theme: 'dark', bench_px: 320 } }));
    goodOf(await other.writePreferences({ preferences: { theme: 'light', orthogonal: true } }));
    expect(goodOf(await host.readPreferences({})).preferences).toEqual({ theme: 'light', bench_px: 320, orthogonal: true });
  });
});
