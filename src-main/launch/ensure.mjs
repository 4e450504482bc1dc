// @ts-check
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Folder of the checkout. */
export const ROOT = join(import.meta.dirname, '..', '..');
const LEAST_NODE = [20, 19];
const STAMP = join(ROOT, 'out', 'build-stamp');
/** Everything that a build is made from. */
const SOURCES = ['src-shared', 'src-main', 'src-renderer', 'resources', 'electron.vite.config.ts', 'package.json', 'package-lock.json', 'tsconfig.json'];
const BUILT = ['out/main/loopback.js', 'out/main/electron.js', 'out/main/cli.js', 'out/preload/preload.cjs', 'out/renderer/index.html'];

/** Where the words go that tell what is being prepared; never to stdout, which belongs to the program itself. */
const say = (/** @type {string} */ text) => process.stderr.write(`${text}\n`);

/** Ends with one clear sentence when this Node is too old. */
export function ensureNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  const [leastMajor = 0, leastMinor = 0] = LEAST_NODE;
  if (major > leastMajor || (major === leastMajor && minor >= leastMinor)) return;
  say(`Nozzlewright needs Node ${LEAST_NODE.join('.')} or newer; this is ${process.versions.node}. Install a newer Node and start again.`);
  process.exit(1);
}

/**
 * @param {string} path
 * @returns {Record<string, { version?: string, optional?: boolean, dev?: boolean, link?: boolean }> | undefined}
 */
function packagesIn(path) {
  try {
    return JSON.parse(readFileSync(path, 'utf8')).packages;
  } catch {
    return undefined;
  }
}

/**
 * Whether what is installed is what the lock file names. Packages for other systems may be missing.
 * @param {string} root
 */
export function isInstalled(root = ROOT) {
  const wanted = packagesIn(join(root, 'package-lock.json'));
  const present = packagesIn(join(root, 'node_modules', '.package-lock.json'));
  if (!wanted || !present) return false;
  return Object.entries(wanted).every(([path, { version, optional }]) => path === '' || present[path]?.version === version || (optional && !present[path]));
}

/**
 * Runs a program of this checkout to its end. What it writes is shown, on stderr, only when it fails.
 * @param {string} command
 * @param {string[]} words
 */
function run(command, words) {
  const needsShell = process.platform === 'win32' && command === 'npm';
  const { status, stdout, stderr } = spawnSync(command, words, { cwd: ROOT, stdio: ['ignore', 'pipe', 'pipe'], shell: needsShell, maxBuffer: 1e8 });
  if (status === 0) return true;
  for (const output of [stdout, stderr]) if (output) process.stderr.write(output);
  return false;
}

/** Installs the packages when they are missing or not those of the lock file. Answers whether they are there. */
export function ensureInstalled() {
  if (isInstalled()) return true;
  say('Installing packages (once, about half a minute)…');
  if (run('npm', ['ci', '--no-audit', '--no-fund'])) return true;
  say('The packages could not be installed. Check the connection to the package registry and start again.');
  return false;
}

/**
 * Digest of every source file's name and content.
 * @param {string} root
 */
export function sourcesDigest(root = ROOT) {
  const digest = createHash('sha256');
  const add = (/** @type {string} */ path) => {
    digest.update(path).update('\0').update(readFileSync(join(root, path))).update('\0');
  };
  for (const source of SOURCES) {
    if (!existsSync(join(root, source))) continue;
    if (source.includes('.')) {
      add(source);
      continue;
    }
    const files = readdirSync(join(root, source), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1).split('\\').join('/'));
    for (const file of files.sort()) add(file);
  }
  return digest.digest('hex');
}

/** Whether what is built is made from the sources as they are. */
function isBuilt() {
  if (!BUILT.every((file) => existsSync(join(ROOT, file)))) return false;
  return existsSync(STAMP) && readFileSync(STAMP, 'utf8') === sourcesDigest();
}

/** Builds when the sources have changed since the last build. Answers whether a sound build is there. */
export function ensureBuilt() {
  if (isBuilt()) return true;
  say('Building (a few seconds)…');
  const digest = sourcesDigest();
  if (!run(process.execPath, [join(ROOT, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js'), 'build', '--logLevel', 'warn'])) {
    say('The build failed; the lines above say where.');
    return false;
  }
  mkdirSync(join(ROOT, 'out'), { recursive: true });
  writeFileSync(STAMP, digest);
  return true;
}

/** Path of the desktop runtime's program, or undefined while only its package is there. */
export function findElectron(root = ROOT) {
  const folder = join(root, 'node_modules', 'electron');
  const name = join(folder, 'path.txt');
  if (!existsSync(name)) return undefined;
  const program = join(folder, 'dist', readFileSync(name, 'utf8').trim());
  return existsSync(program) ? program : undefined;
}
