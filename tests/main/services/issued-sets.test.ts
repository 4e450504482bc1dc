import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { addRevision } from '#shared/commands/add-revision';
import { approveSet } from '#shared/commands/approve-set';
import { editInfo } from '#shared/commands/edit-info';
import { type Issuing, issueSet } from '#shared/commands/issue-set';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { packPlan, unpackPlan } from '#shared/model/pack-plan';
import type { Plan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { frozenPlan } from '#shared/revisions/frozen-plan';
import { makeAssetStore, sha256Of } from '../../../src-main/services/asset-store.ts';
import { changesTable } from '#shared/sheets/changes-table';
import { issuedChanges, keepIssue, readIssuedPlan, reprintIssue } from '../../../src-main/services/issued-sets.ts';
import { packWithAssets, readPlanBytes } from '../../../src-main/services/plan-files.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { readPdf } from '../../support/pdf-reading.ts';
import { refsOf } from '../../support/random-commands.ts';
import { tempFolder } from '../../support/temp-folder.ts';
import { done, doneAll } from '../../support/try-command.ts';

const drawn = (): Plan => planBuilder().room(4, 3, 2.6).network().run([place3(1, 1, 2), place3(1, 1, 2.4), place3(2, 1, 2.4), place3(2, 1, 2.2)]).nozzle(2, 1, 2.2).plan;
const first: Issuing = { mark: 'A', date: '2026-11-30', by: 'R. Vale', purpose: 'For approval' };
const never = new AbortController().signal;
const store = () => makeAssetStore(tempFolder(), () => TEST_TIME);

async function issued(plan: Plan, issuing: Issuing, assets: ReturnType<typeof store>, now = TEST_TIME): Promise<Plan> {
  const revised = done(plan, addRevision({ mark: issuing.mark, date: issuing.date, text: issuing.purpose })).next;
  const kept = await keepIssue(revised, null, assets, now, () => undefined, never);
  return done(plan, issueSet(issuing, kept)).next;
}
const moved = (plan: Plan): Plan => {
  const nozzle = refsOf(plan).find((ref) => ref.kind === 'nozzle');
  if (nozzle?.kind !== 'nozzle') throw new Error('No nozzle.');
  return done(plan, moveNozzle(nozzle, { x: 2.5, y: 1, z: 2.2 })).next;
};
const textOf = async (pdf: Uint8Array): Promise<string> => (await readPdf(pdf)).map((page) => JSON.stringify(page)).join('\n');

/** Folders that outlast one test. */
const shared: string[] = [];
afterAll(() => {
  for (const folder of shared) rmSync(folder, { recursive: true, force: true });
});

/** A is issued and approved, then a nozzle is moved and B is issued: printed once for all tests. */
async function issuedTwice() {
  const folder = mkdtempSync(join(tmpdir(), 'nozzlewright-'));
  shared.push(folder);
  const assets = makeAssetStore(folder, () => TEST_TIME);
  const a = await issued(drawn(), first, assets);
  const approved = done(a, approveSet(a.issuedSets[0]?.id ?? '', { by: 'Authority', date: '2026-12-01', reference: '7' })).next;
  const b = await issued(doneAll(moved(approved), editInfo({ client: 'Other' })), { ...first, mark: 'B', date: '2026-12-02' }, assets, new Date(TEST_TIME.getTime() + 9e6));
  return { assets, a, approved, b };
}
let made: ReturnType<typeof issuedTwice> | undefined;
const twice = () => {
  made ??= issuedTwice();
  return made;
};

describe('issued sets', () => {
  test('what is kept is the plan as issued, by its digest, and the approved set stays byte for byte', async () => {
    const { assets, a, approved, b: later } = await twice();
    const [set] = a.issuedSets;
    if (!set?.plan || !set.sheets) throw new Error('Not kept.');
    const bytes = async (plan: Plan, id: string): Promise<Uint8Array> => (await assets.read(plan.assets[id]?.sha256 ?? '')).bytes;
    const frozen = unpackPlan(await bytes(a, set.plan));
    if (!frozen.ok) throw new Error('Not a plan.');
    expect(sha256Of(new TextEncoder().encode(printPlan(frozen.plan)))).toBe(set.sha256);
    expect(frozen.plan.lastIssue).toEqual(a.lastIssue);
    const kept = [await bytes(a, set.plan), await bytes(a, set.sheets)].map(sha256Of);

    // Through a plan file and back, into the store of another computer.
    const packed = await packWithAssets(later, assets.find);
    expect(packed.remarks).toEqual([]);
    const read = readPlanBytes(packed.bytes, 'later.nzw');
    expect(read.plan).toEqual(later);
    for (const [i, id] of [set.plan, set.sheets].entries()) {
      const asset = read.plan.assets[id];
      const held = read.assets.find(({ sha256 }) => sha256 === asset?.sha256);
      expect(held && sha256Of(held.bytes)).toBe(kept[i]);
    }
    expect(read.plan.issuedSets[0]).toEqual(approved.issuedSets[0]);
    expect((await readIssuedPlan(later, set, assets.find)).plan).toEqual(frozen.plan);
  });

  test('a later issue holds the earlier one only by its line', () => {
    const plan = { ...drawn(), issuedSets: [{ id: 'set-1', number: 1, mark: 'A', date: '', by: '', purpose: '', sha256: 'a'.repeat(64), plan: 'asset-90', sheets: null, approved: null }], assets: { 'asset-90': { id: 'asset-90', name: 'x', file: 'x.nzw', sha256: 'b'.repeat(64) } } };
    const frozen = unpackPlan(packPlan(frozenPlan(plan), { 'x.nzw': new Uint8Array(9) }));
    expect(frozen.ok && [frozen.plan.assets, Object.keys(frozen.assets)]).toEqual([{}, []]);
  });

  test('the current set is given as it was issued, a replaced one says so on every sheet', async () => {
    const { assets, b } = await twice();
    const [one, two] = b.issuedSets;
    if (!one || !two) throw new Error('Not issued.');
    const current = await reprintIssue(b, two.id, null, assets.find, TEST_TIME);
    expect(sha256Of(current)).toBe(b.assets[two.sheets ?? '']?.sha256);
    expect(await textOf(current)).not.toContain('SUPERSEDED');
    const old = await readPdf(await reprintIssue(b, one.id, null, assets.find, TEST_TIME));
    expect(old.length).toBeGreaterThan(1);
    for (const page of old) expect(JSON.stringify(page)).toContain('SUPERSEDED BY B');
    const changes = await issuedChanges(b, assets.find);
    expect([changes?.since, changes?.mark]).toEqual(['A', 'B']);
    expect(changes?.list.some(({ kind, name }) => kind === 'moved' && name.startsWith('Nozzle'))).toBe(true);
    expect(await textOf(current)).toContain('What revision B changed since A');
  });

  test('a set that was not kept says so, and its changes are not listed', async () => {
    const none = done(drawn(), issueSet(first, { sha256: 'a'.repeat(64), plan: null, sheets: null })).next;
    const find = async () => undefined;
    await expect(reprintIssue(none, none.issuedSets[0]?.id ?? '', null, find, TEST_TIME)).rejects.toThrow('was not kept');
    await expect(reprintIssue(none, 'gone', null, find, TEST_TIME)).rejects.toThrow('not in the log');
    expect(await issuedChanges(none, find)).toBeUndefined();
    expect(await issuedChanges(drawn(), find)).toBeUndefined();
  });

  test('changes since a set that cannot be read are not left out in silence: the list and a reprint say why', async () => {
    const one = done(drawn(), issueSet(first, { sha256: 'a'.repeat(64), plan: null, sheets: null })).next;
    const two = done(one, issueSet({ ...first, mark: 'B' }, { sha256: 'b'.repeat(64), plan: null, sheets: null })).next;
    const find = async () => undefined;
    const changes = await issuedChanges(two, find);
    expect(changes).toMatchObject({ since: 'A', mark: 'B', list: [] });
    expect(changes?.unread).toBe('The plan of issued set A was not kept with this plan. What was changed since then is not listed: compare with the copy that was given out.');
    const table = changesTable(changes ?? { since: '', mark: '', list: [] }, 'feet');
    expect(JSON.stringify(table.rows)).toContain('is not listed');
    // A file that is there, but holds no plan.
    const noise = { ...two, issuedSets: two.issuedSets.map((set) => ({ ...set, plan: 'asset-90' })), assets: { 'asset-90': { id: 'asset-90', name: 'x', file: 'x.nzw', sha256: 'b'.repeat(64) } } };
    expect((await issuedChanges(noise, async () => ({ name: 'x', bytes: new Uint8Array(9) })))?.unread).toContain('is not listed');
  });
});
