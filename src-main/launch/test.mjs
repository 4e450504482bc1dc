// @ts-check
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { findBrowser } from '../loopback/browsers.mjs';
import { ROOT, ensureBuilt, ensureInstalled, ensureNode } from './ensure.mjs';
import { addUp, countPlaywright, countVitest, lastLines } from './test-counts.mjs';

/** @typedef {import('./test-counts.mjs').Counts} Counts */

const REPORTS = join(ROOT, 'out', 'test');
const BINARIES = join(ROOT, 'node_modules', '.bin');
/** @type {Counts} */
const ONE_FAILED = { passed: 0, failed: 1, skipped: 0 };
/** A step that is no test: it counts only when it fails. @type {Counts} */
const SOUND = { passed: 0, failed: 0, skipped: 0 };

const say = (/** @type {string} */ text) => process.stdout.write(`${text}\n`);

/**
 * Runs a program of the checkout to its end, its output as it comes.
 * @param {string} program
 * @param {string[]} words
 * @param {Record<string, string>} env
 * @returns {Promise<boolean>}
 */
const run = (program, words, env = {}) =>
  new Promise((resolve) => {
    say(`\n— ${program} ${words.join(' ')}`);
    const isWindows = process.platform === 'win32';
    const child = spawn(join(BINARIES, isWindows ? `${program}.cmd` : program), words, { cwd: ROOT, stdio: 'inherit', shell: isWindows, env: { ...process.env, ...env } });
    child.on('error', () => resolve(false));
    child.on('exit', (code) => resolve(code === 0));
  });

/**
 * Reads a report that a test runner wrote; undefined when it wrote none.
 * @param {string} name
 */
function reportOf(name) {
  try {
    return JSON.parse(readFileSync(join(REPORTS, name), 'utf8'));
  } catch {
    return undefined;
  }
}

/** Finds a Chromium-family browser; on Debian, as root, installs one. Answers its path, or undefined after saying what to do. */
function ensureBrowser() {
  const present = findBrowser();
  if (present) return present;
  if (existsSync('/etc/debian_version') && process.getuid?.() === 0) {
    say('Installing Chromium for the tests of the window…');
    for (const words of [['update', '-qq'], ['install', '-y', '-qq', '--no-install-recommends', 'chromium']]) {
      spawnSync('apt-get', words, { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
    }
  }
  const browser = findBrowser();
  if (!browser) say('The tests of the window need a Chromium-family browser: install Chromium, Chrome or Edge, or set NOZZLEWRIGHT_BROWSER to its path.');
  return browser;
}

/** @returns {Promise<Counts>} */
async function checkTypes() {
  let isSound = true;
  for (const part of ['src-shared', 'src-main', 'src-renderer', 'tests']) isSound = (await run('tsc', ['--noEmit', '-p', part])) && isSound;
  return isSound ? SOUND : ONE_FAILED;
}

/** @returns {Promise<Counts>} */
async function lint() {
  return (await run('biome', ['lint', '--error-on-warnings', 'src-main', 'src-renderer', 'src-shared', 'tests'])) ? SOUND : ONE_FAILED;
}

/** @returns {Promise<Counts>} */
async function unitTests() {
  const isGreen = await run('vitest', ['run', '--config', 'tests/vitest.config.ts', '--reporter=default', '--reporter=json', `--outputFile.json=${join(REPORTS, 'unit.json')}`]);
  return countVitest(reportOf('unit.json'), isGreen);
}

/**
 * @param {string | undefined} browser
 * @returns {Promise<Counts>}
 */
async function windowTests(browser) {
  if (!browser) return ONE_FAILED;
  const isGreen = await run('playwright', ['test', '--config', 'tests/playwright.config.ts', '--reporter=list,json'], {
    NOZZLEWRIGHT_BROWSER: browser,
    PLAYWRIGHT_JSON_OUTPUT_FILE: join(REPORTS, 'window.json'),
  });
  return countPlaywright(reportOf('window.json'), isGreen);
}

ensureNode();
/** @type {Counts[]} */
const counts = [];
if (ensureInstalled()) {
  rmSync(REPORTS, { recursive: true, force: true });
  const browser = ensureBrowser();
  const isBuilt = ensureBuilt();
  mkdirSync(REPORTS, { recursive: true });
  counts.push(isBuilt ? SOUND : ONE_FAILED, await checkTypes(), await lint(), await unitTests());
  if (isBuilt) counts.push(await windowTests(browser));
} else counts.push(ONE_FAILED);

const sum = addUp(counts);
say('');
for (const line of lastLines(sum)) say(line);
process.exitCode = sum.failed > 0 ? 1 : 0;
