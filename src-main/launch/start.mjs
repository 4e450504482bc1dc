// @ts-check
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { hasDisplay } from '../loopback/browsers.mjs';
import { ROOT, ensureBuilt, ensureInstalled, ensureNode, findElectron } from './ensure.mjs';

const USAGE = `Usage: npm start -- [PLAN] [options]
  PLAN             plan file to open; without it the demo plan of a signal hut is shown
  --host HOST      electron or loopback; without it the desktop runtime where it is installed
  --folder DIR     keep plans and the program's own files in DIR
  --no-open        loopback only: print the address and open no window
  --grace SECONDS  loopback only: how long to stay after the last window has gone`;

/** npm runs this from the checkout; a path is meant from where the user is. */
const HERE = process.env.INIT_CWD ?? process.cwd();
/** Demo shown when no plan was asked for. */
const FIRST_DEMO = 'F1';

/**
 * @param {string} text
 * @returns {never}
 */
function leave(text) {
  process.stderr.write(`${text}\n`);
  process.exit(2);
}

/** @param {readonly string[]} words */
function readArguments(words) {
  /** @type {{ plan?: string, host?: string, folder?: string, grace?: string, opens: boolean }} */
  const chosen = { opens: true };
  const left = [...words];
  for (let word = left.shift(); word !== undefined; word = left.shift()) {
    const [name, value] = word.startsWith('--') ? word.split(/=(.*)/s, 2) : [word];
    if (name === '--help') {
      console.log(USAGE);
      process.exit(0);
    } else if (name === '--no-open') chosen.opens = false;
    else if (name === '--host') chosen.host = value ?? left.shift();
    else if (name === '--folder') chosen.folder = value ?? left.shift();
    else if (name === '--grace') chosen.grace = value ?? left.shift();
    else if (word.startsWith('-')) leave(`There is no option ${word}.\n${USAGE}`);
    else if (chosen.plan === undefined) chosen.plan = word;
    else leave(`Only one plan can be opened at a time.\n${USAGE}`);
  }
  if (chosen.host !== undefined && chosen.host !== 'electron' && chosen.host !== 'loopback') leave(`--host takes electron or loopback.\n${USAGE}`);
  if (chosen.plan !== undefined && !existsSync(resolve(HERE, chosen.plan))) leave(`There is no file ${resolve(HERE, chosen.plan)}. Check its name, or start without it.`);
  if (chosen.plan !== undefined && !/\.(nzw|json|pdf)$/i.test(chosen.plan)) leave(`${chosen.plan} is no plan file: a plan ends in .nzw or .json, and sheets printed of it in .pdf. A floor plan is imported from within the window.`);
  return chosen;
}

/**
 * Which host to use, and why in a sentence.
 * @param {string | undefined} wanted
 * @param {boolean} opens
 * @returns {{ electron: string | undefined, why: string }}
 */
function pickHost(wanted, opens) {
  const electron = findElectron();
  if (wanted === 'loopback') return { electron: undefined, why: 'Starting in an installed browser, as asked.' };
  if (!electron) {
    if (wanted === 'electron') leave('The desktop runtime is not installed. Run "npx install-electron", or start without --host.');
    return { electron, why: 'Starting in an installed browser, because the desktop runtime is not installed ("npx install-electron" fetches it).' };
  }
  if (!opens) return { electron: undefined, why: 'Serving the window without opening it, as asked.' };
  if (wanted !== 'electron' && !hasDisplay()) return { electron: undefined, why: 'Serving the window, because there is no screen here for the desktop runtime.' };
  return { electron, why: 'Starting in the desktop runtime.' };
}

/**
 * Runs the program until it ends, and ends as it did.
 * @param {string} program
 * @param {string[]} words
 */
function runToEnd(program, words) {
  const child = spawn(program, words, { cwd: HERE, stdio: 'inherit' });
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) process.on(signal, () => child.kill(signal));
  child.on('error', (error) => leave(`${program} could not be started: ${error.message}`));
  child.on('exit', (code) => process.exit(code ?? 1));
}

const chosen = readArguments(process.argv.slice(2));
ensureNode();
if (!ensureInstalled() || !ensureBuilt()) process.exit(1);
const { electron, why } = pickHost(chosen.host, chosen.opens);
console.log(why);
const plan = chosen.plan === undefined ? [] : [resolve(HERE, chosen.plan)];
const folder = chosen.folder === undefined ? [] : [`--folder=${resolve(HERE, chosen.folder)}`];
const demo = chosen.plan === undefined ? [`--demo=${FIRST_DEMO}`] : [];
if (electron) {
  // Its sandbox does not start under the system's own account.
  const isRoot = process.platform === 'linux' && process.getuid?.() === 0;
  runToEnd(electron, [...(isRoot ? ['--no-sandbox'] : []), ROOT, ...demo, ...folder, ...plan]);
} else {
  const grace = chosen.grace === undefined ? [] : [`--grace=${chosen.grace}`];
  runToEnd(process.execPath, [join(ROOT, 'out', 'main', 'loopback.js'), ...(chosen.opens ? [] : ['--no-open']), ...grace, ...demo, ...folder, ...plan]);
}
