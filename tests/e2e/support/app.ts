import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { type Browser, type Page, test as base, expect } from '@playwright/test';
import { startChromium } from './chromium.ts';

const ROOT = resolve(import.meta.dirname, '..', '..', '..');
const BUILT = process.env.NOZZLEWRIGHT_LOOPBACK ?? join(ROOT, 'out', 'main', 'loopback.js');

/** A running loopback host with a folder of its own. */
export interface RunningHost {
  /** Address with its one-time token; every window needs a new one. */
  readonly address: string;
  readonly folder: string;
  stop(): Promise<void>;
  /** Ends it at once as a crash does; its folder stays. */
  kill(): Promise<void>;
}

const ended = (child: ChildProcess): Promise<void> =>
  new Promise((done) => {
    if (child.exitCode !== null || child.signalCode !== null) done();
    else child.once('exit', () => done());
  });

/**
 * Starts the built loopback host in a fresh temporary folder.
 * @param words  further words of its command line, e.g. `--demo`, `F1`
 * @param left   folder that an earlier run left behind, in place of a fresh one
 */
export async function startHost(words: readonly string[] = [], left?: string): Promise<RunningHost> {
  if (!existsSync(BUILT)) throw new Error(`${BUILT} is missing: build first (npm run build).`);
  const folder = left ?? (await mkdtemp(join(tmpdir(), 'nozzlewright-e2e-')));
  const child = spawn(process.execPath, [BUILT, '--no-open', '--grace', '120', '--folder', folder, ...words], { stdio: ['ignore', 'pipe', 'pipe'] });
  const errors: string[] = [];
  child.stderr.on('data', (text: Buffer) => errors.push(text.toString()));
  const stop = async (): Promise<void> => {
    child.kill('SIGTERM');
    await ended(child);
    await rm(folder, { recursive: true, force: true });
  };
  const address = await new Promise<string>((found, failed) => {
    createInterface({ input: child.stdout }).on('line', (line) => {
      const named = /https?:\/\/127\.0\.0\.1:\S+/.exec(line);
      if (named) found(named[0]);
    });
    child.once('exit', (code) => failed(new Error(`The loopback host ended with ${code}: ${errors.join('')}`)));
  }).catch(async (problem: unknown) => {
    await stop();
    throw problem;
  });
  const kill = async (): Promise<void> => {
    child.kill('SIGKILL');
    await ended(child);
  };
  return { address, folder, stop, kill };
}

/** What a test of the whole window gets. */
export interface Window {
  readonly page: Page;
  readonly host: RunningHost;
  /** What the page's console complained of, violations of the content policy included. */
  readonly complaints: readonly string[];
}

/** How the window is looked at. */
export interface WindowLook {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  /** Device pixels per CSS pixel. */
  readonly scale?: number;
  readonly touch?: boolean;
}

/** Opens the window of a host and waits until its board is drawn. */
export async function openWindow(browser: Browser, host: RunningHost, look: WindowLook = {}): Promise<Window> {
  const context = await browser.newContext({
    viewport: { width: look.width ?? 1280, height: look.height ?? 800 },
    colorScheme: look.dark ? 'dark' : 'light',
    deviceScaleFactor: look.scale ?? 1,
    hasTouch: look.touch ?? false,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(host.address);
  await expect(page.locator('.board canvas').first()).toBeVisible();
  return { page, host, complaints };
}

interface Fixtures {
  /** Demo that the window opens with; null leaves the board bare. */
  readonly demo: string | null;
  readonly look: WindowLook;
  readonly runningHost: RunningHost;
  readonly nozzlewright: Window;
}

/** A test with a host and a window of its own. */
export const test = base.extend<Fixtures, { readonly chromiumOfMachine: Browser }>({
  demo: [null, { option: true }],
  look: [{}, { option: true }],
  chromiumOfMachine: [
    // biome-ignore lint/correctness/noEmptyPattern: a fixture without needs is told so by an empty pattern
    async ({}, use) => {
      const browser = await startChromium();
      await use(browser);
      await browser.close();
    },
    { scope: 'worker' },
  ],
  runningHost: async ({ demo }, use) => {
    const host = await startHost(demo === null ? [] : ['--demo', demo]);
    await use(host);
    await host.stop();
  },
  nozzlewright: async ({ demo, look, runningHost, chromiumOfMachine }, use) => {
    const window = await openWindow(chromiumOfMachine, runningHost, look);
    if (demo !== null) await expect(window.page.locator('.start-page')).toBeHidden();
    await use(window);
    await window.page.context().close();
  },
});

export { expect };
