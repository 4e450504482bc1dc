import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type ElectronApplication, type Page, _electron, expect, test } from '@playwright/test';
import type { Bridge } from '#shared/host/bridge';
import { HOST_METHODS } from '#shared/host/methods';
import { newPlan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { ROOT, findElectron } from '../../src-main/launch/ensure.mjs';

const runtime = findElectron();
const why = runtime ? '' : ' (skipped here: the desktop runtime is not installed, only its package)';
const isRoot = process.getuid?.() === 0;

declare global {
  interface Window {
    readonly nozzlewright?: Bridge;
  }
}

/** Starts the desktop program over a folder of its own and answers its first window. */
async function start(folder: string, plan?: string): Promise<{ app: ElectronApplication; page: Page }> {
  const app = await _electron.launch({
    executablePath: runtime ?? '',
    args: [...(isRoot ? ['--no-sandbox'] : []), ROOT, `--folder=${folder}`, ...(plan ? [plan] : [])],
  });
  return { app, page: await app.firstWindow() };
}

test.describe(`desktop window${why}`, () => {
  test.skip(!runtime, 'The desktop runtime is not installed.');
  let folder = '';
  test.beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'nozzlewright-desktop-'));
  });
  test.afterEach(() => rmSync(folder, { recursive: true, force: true }));

  test('opens, saves and prints', async () => {
    const path = join(folder, 'hut.json');
    writeFileSync(path, printPlan(newPlan('metric')));
    const { app, page } = await start(folder, path);
    const saved = await page.evaluate(async () => {
      const host = window.nozzlewright;
      const info = await host?.info({});
      const ref = info?.ok ? info.value.startPlan : null;
      const opened = await host?.openPlan({ session: 'e2e', ref: ref ?? '' });
      if (!host || !opened?.ok) return opened;
      const { plan, stamp } = opened.value;
      return host.savePlan({ session: 'e2e', ref: ref ?? '', plan: { ...plan, nextSerial: 77 }, stamp, overwrite: false });
    });
    expect(saved).toMatchObject({ ok: true });
    expect(JSON.parse(readFileSync(path, 'utf8')).nextSerial).toBe(77);
    const job = await page.evaluate(async () => {
      const host = window.nozzlewright;
      const demo = await host?.newPlan({ demo: 'F1', lengths: 'feet' });
      return host && demo?.ok ? host.printSheets({ plan: demo.value.plan, paper: 'auto', scale: 'auto', set: 'field', takeOff: null }) : demo;
    });
    expect(job).toMatchObject({ ok: true, value: { job: expect.any(String) } });
    const id = job?.ok && 'job' in job.value ? job.value.job : '';
    await expect.poll(() => page.evaluate(async (job) => (await window.nozzlewright?.jobState({ job })) ?? null, id)).toMatchObject({ value: { state: 'done' } });
    const head = await page.evaluate(async (job) => {
      const printed = await window.nozzlewright?.printResult({ job });
      return printed?.ok ? [...printed.value.bytes.slice(0, 5)] : [];
    }, id);
    expect(String.fromCharCode(...head)).toBe('%PDF-');
    await app.close();
  });

  test('is locked: no way to Node, to other pages or to other windows', async () => {
    const { app, page } = await start(folder);
    const home = page.url();
    expect(home).toBe('app://nozzlewright/');
    const found = await page.evaluate(() => ({
      bridge: Object.keys(window.nozzlewright ?? {}).sort(),
      node: ['require', 'process', 'module', 'Buffer', 'electron', 'ipcRenderer'].filter((name) => name in window),
      opened: window.open('https://example.com/') === null,
    }));
    expect(found).toEqual({ bridge: [...Object.keys(HOST_METHODS), 'onAction'].sort(), node: [], opened: true });
    await page.evaluate(() => {
      window.location.href = 'https://example.com/';
    });
    const evaluated = await page.evaluate(() => {
      try {
        return new Function('return 1')();
      } catch {
        return 'refused';
      }
    });
    expect(evaluated).toBe('refused');
    expect(page.url()).toBe(home);
    expect(await page.evaluate(async () => (await fetch('https://example.com/').catch(() => null)) === null)).toBe(true);
    const answer = await page.evaluate(async () => (await window.nozzlewright?.openPlan({ session: 'e2e', ref: '/etc/passwd' })) ?? null);
    expect(answer).toMatchObject({ ok: false, problem: { code: 'refused' } });
    await app.close();
  });
});
