import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { printedAtText } from '../../../src-main/services/compose-and-print.ts';
import { readPlanBytes } from '../../../src-main/services/plan-files.ts';
import { printPlan } from '../../../src-main/services/print-plan.ts';
import { printInThread } from '../../../src-main/services/print-thread.ts';
import { TEST_TIME } from '../../support/hosts.ts';
import { tempFolder } from '../../support/temp-folder.ts';

const CHOICE = { paper: 'auto', scale: 'auto', set: 'field' } as const;

async function demo() {
  const { plan, assets } = await buildDemo('F1');
  const asked: string[] = [];
  const readAsset = async (sha256: string) => {
    asked.push(sha256);
    const found = assets.find((asset) => asset.sha256 === sha256);
    if (!found) throw new Error('no such floor plan');
    return { name: found.file, bytes: found.bytes };
  };
  return { plan, asked, readAsset };
}

describe('printing a plan', () => {
  test('tells how far it is, never backwards, and reads each page of a floor plan once', async () => {
    const { plan, asked, readAsset } = await demo();
    const [level] = Object.values(plan.levels);
    const [underlay] = Object.values(level?.underlays ?? {});
    if (level && underlay) level.underlays.twice = { ...underlay, id: 'twice' };
    const done: number[] = [];
    const pdf = await printPlan(plan, CHOICE, readAsset, TEST_TIME, (far) => done.push(far));
    expect(new TextDecoder('latin1').decode(pdf.subarray(0, 5))).toBe('%PDF-');
    expect(asked).toHaveLength(1);
    expect(done).toEqual([...done].sort((a, b) => a - b));
    expect(done.at(-1)).toBeLessThanOrEqual(1);
    const reopened = readPlanBytes(pdf, 'sheets.pdf');
    expect(reopened.plan).toEqual(plan);
    expect(reopened.assets).toHaveLength(1);
  });

  test('a hidden floor plan is not drawn, and goes along with the plan all the same', async () => {
    const { plan, asked, readAsset } = await demo();
    for (const level of Object.values(plan.levels)) for (const underlay of Object.values(level.underlays)) underlay.visible = false;
    const said: string[] = [];
    const pdf = await printPlan(plan, CHOICE, readAsset, TEST_TIME, (_, doing) => said.push(doing));
    expect(said.join()).not.toContain('Reading');
    expect(asked).toHaveLength(1);
    expect(readPlanBytes(pdf, 'sheets.pdf').assets).toHaveLength(1);
  });

  test('is not begun once it was cancelled', async () => {
    const { plan, readAsset } = await demo();
    await expect(printPlan(plan, CHOICE, readAsset, TEST_TIME, undefined, AbortSignal.abort())).rejects.toThrow();
  });

  test('the time is printed to the minute, in local time', () => {
    expect(printedAtText(new Date(2026, 2, 4, 5, 6, 59))).toBe('2026-03-04 05:06');
  });
});

describe('the printing thread', () => {
  const order = async () => ({ plan: (await demo()).plan, choice: CHOICE, drawings: new Map<string, Uint8Array>(), attached: new Uint8Array(), now: TEST_TIME });
  const worker = (source: string): string => {
    const path = join(tempFolder(), 'worker.mjs');
    writeFileSync(path, `import { parentPort, workerData } from 'node:worker_threads';\n${source}`);
    return path;
  };
  const go = new AbortController().signal;

  test('gives its result and its progress', async () => {
    const said: string[] = [];
    const file = worker("parentPort.postMessage({ kind: 'progress', done: 0.5, doing: workerData.choice.set }); parentPort.postMessage({ kind: 'done', pdf: new Uint8Array([1]) });");
    expect(await printInThread(await order(), (done, doing) => said.push(`${done} ${doing}`), go, file)).toEqual(Uint8Array.of(1));
    expect(said).toEqual(['0.5 field']);
  });

  test.each([
    ['that tells of a failure', "parentPort.postMessage({ kind: 'failed', message: 'out of ink' });", 'out of ink'],
    ['that throws', "throw new Error('jammed');", 'jammed'],
    ['that ends early', 'process.exit(0);', 'without a result'],
  ])('one %s is trouble', async (_, source, message) => {
    await expect(printInThread(await order(), () => undefined, go, worker(source))).rejects.toThrow(message);
  });

  test('one that is cancelled ends at once', async () => {
    const file = worker("parentPort.postMessage({ kind: 'progress', done: 0, doing: '' }); setTimeout(() => undefined, 600_000);");
    const abort = new AbortController();
    await expect(printInThread(await order(), () => abort.abort(), abort.signal, file)).rejects.toThrow('without a result');
  });
});
