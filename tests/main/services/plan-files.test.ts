import { mkdir, readFile, rm, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Plan, newPlan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { sha256Of } from '../../../src-main/services/asset-store.ts';
import { HostProblem } from '../../../src-main/services/host-problem.ts';
import { bytesFor, packWithAssets, readPlanBytes, readPlanFile, savePlanFile } from '../../../src-main/services/plan-files.ts';
import { badPlanFiles } from '../../support/bad-plan-files.ts';
import { tempFolder } from '../../support/temp-folder.ts';

const noAssets = async (): Promise<undefined> => undefined;
const isProblem = (code: string) => expect.objectContaining({ problem: expect.objectContaining({ code }) });

async function planWithAsset(): Promise<{ plan: Plan; bytes: Uint8Array; asset: Uint8Array }> {
  const { plan, assets } = await buildDemo('F1');
  const find = async (sha256: string) => assets.find((each) => each.sha256 === sha256);
  return { plan, bytes: (await packWithAssets(plan, find)).bytes, asset: assets[0]?.bytes ?? new Uint8Array() };
}

describe('plan file', () => {
  test('comes back as it was saved, with its floor plan', async () => {
    const { plan, bytes, asset } = await planWithAsset();
    const path = join(tempFolder(), 'hut.nzw');
    const stamp = await savePlanFile(path, bytes, { stamp: null, overwrite: false });
    const read = await readPlanFile(path);
    expect(read.plan).toEqual(plan);
    expect(read.remarks).toEqual([]);
    expect(read.assets.map((each) => each.sha256)).toEqual([sha256Of(asset)]);
    expect(read.stamp).toBe(stamp);
  });

  test('a bare plan.json is read wherever a plan file is', async () => {
    const path = join(tempFolder(), 'plan.json');
    await writeFile(path, printPlan(newPlan('metric')));
    expect((await readPlanFile(path)).plan).toEqual(newPlan('metric'));
  });

  test('a floor plan whose bytes were changed is left out and told', async () => {
    const { plan, asset } = await planWithAsset();
    const changed = Uint8Array.from(asset);
    changed[10] = (changed[10] ?? 0) ^ 1;
    const file = Object.values(plan.assets)[0]?.file ?? '';
    const read = readPlanBytes(zipSync({ 'plan.json': strToU8(printPlan(plan)), [`assets/${file}`]: changed }), 'hut.nzw');
    expect(read.assets).toEqual([]);
    expect(read.remarks.join()).toContain('damaged');
  });

  test('a floor plan that is not at hand is told, and the plan is saved all the same', async () => {
    const { plan } = await planWithAsset();
    const packed = await packWithAssets(plan, noAssets);
    expect(packed.remarks).toHaveLength(Object.keys(plan.assets).length);
    expect(readPlanBytes(packed.bytes, 'x').plan).toEqual(plan);
  });

  test('a plan with floor plans does not go into a bare plan.json, nor any plan into another ending', async () => {
    const { plan } = await planWithAsset();
    await expect(bytesFor('/x/plan.json', plan, noAssets)).rejects.toEqual(isProblem('refused'));
    await expect(bytesFor('/x/plan.txt', newPlan(), noAssets)).rejects.toEqual(isProblem('refused'));
    expect((await bytesFor('/x/plan.json', newPlan(), noAssets)).bytes).toEqual(strToU8(printPlan(newPlan())));
  });
});

describe('saving over a file', () => {
  const first = strToU8('first');
  const second = strToU8('second');

  test('a file that is there is not replaced by a new one', async () => {
    const path = join(tempFolder(), 'a.nzw');
    await writeFile(path, first);
    await expect(savePlanFile(path, second, { stamp: null, overwrite: false })).rejects.toEqual(isProblem('conflict'));
    expect(await readFile(path, 'utf8')).toBe('first');
  });

  test('a file that somebody else changed is not replaced unless asked, and its state is then kept', async () => {
    const path = join(tempFolder(), 'a.nzw');
    const stamp = await savePlanFile(path, first, { stamp: null, overwrite: false });
    await writeFile(path, 'from somebody else');
    await expect(savePlanFile(path, second, { stamp, overwrite: false })).rejects.toEqual(isProblem('conflict'));
    expect(await readFile(path, 'utf8')).toBe('from somebody else');
    await savePlanFile(path, second, { stamp, overwrite: true });
    expect(await readFile(path, 'utf8')).toBe('second');
    expect(await readFile(`${path}.bak`, 'utf8')).toBe('from somebody else');
  });

  test('a file of the same size and time but another content is a conflict', async () => {
    const path = join(tempFolder(), 'a.nzw');
    const time = new Date('2026-01-01T00:00:00Z');
    await writeFile(path, 'aaaa');
    await utimes(path, time, time);
    const stamp = `4-${time.getTime()}-${sha256Of(strToU8('aaaa'))}`;
    await writeFile(path, 'bbbb');
    await utimes(path, time, time);
    await expect(savePlanFile(path, second, { stamp, overwrite: false })).rejects.toEqual(isProblem('conflict'));
  });

  test('a file that was only touched is no conflict', async () => {
    const path = join(tempFolder(), 'a.nzw');
    const stamp = await savePlanFile(path, first, { stamp: null, overwrite: false });
    await utimes(path, new Date(0), new Date(0));
    await savePlanFile(path, second, { stamp, overwrite: false });
    expect(await readFile(path, 'utf8')).toBe('second');
  });

  test('a file that was deleted meanwhile is written again', async () => {
    const path = join(tempFolder(), 'a.nzw');
    const stamp = await savePlanFile(path, first, { stamp: null, overwrite: false });
    await rm(path);
    await savePlanFile(path, second, { stamp, overwrite: false });
    expect(await readFile(path, 'utf8')).toBe('second');
  });
});

describe('files that are no sound plan', () => {
  let bad: Awaited<ReturnType<typeof badPlanFiles>>;
  beforeAll(async () => {
    bad = await badPlanFiles();
  });

  test('each gives one problem with what, where and remedy', () => {
    for (const { name, bytes } of bad) {
      let problem: HostProblem | undefined;
      try {
        readPlanBytes(bytes, `${name}.nzw`);
      } catch (error) {
        if (error instanceof HostProblem) problem = error;
        else throw error;
      }
      expect(problem, name).toBeDefined();
      expect(problem?.problem, name).toEqual({ code: expect.any(String), what: expect.stringMatching(/\.$/), where: expect.stringContaining(name), remedy: expect.stringMatching(/\.$/) });
      expect(problem?.problem.code, name).not.toBe('failed');
    }
  });

  test('a version from the future is told as such', () => {
    const future = bad.find(({ name }) => name === 'future version');
    expect(() => readPlanBytes(future?.bytes ?? new Uint8Array(), 'x')).toThrow(expect.objectContaining({ problem: expect.objectContaining({ code: 'newer-version' }) }));
  });

  test('a folder and a file that is not there are told apart', async () => {
    const folder = tempFolder();
    await mkdir(join(folder, 'a.nzw'));
    await expect(readPlanFile(join(folder, 'a.nzw'))).rejects.toEqual(isProblem('unreadable'));
    await expect(readPlanFile(join(folder, 'b.nzw'))).rejects.toEqual(isProblem('not-found'));
  });
});
