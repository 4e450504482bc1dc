import { parseArgs } from 'node:util';
import { join, resolve } from 'node:path';
import { version } from '../../package.json';
import { foldersIn, usualFolders } from '../services/folders.ts';
import { makeHost } from '../services/make-host.ts';
import { tidyUserData } from '../services/tidy.ts';
import { openWindow } from './open-window.ts';
import { startLoopback } from './server.ts';

const USAGE = `Usage: node out/main/loopback.js [PLAN] [--no-open] [--folder DIR] [--demo NAME] [--grace SECONDS]
  PLAN              plan to open
  --no-open         only serve and print the address; stays until stopped
  --folder DIR      keep plans and the program's own files in DIR
  --demo NAME       demo plan to show when no PLAN is given
  --grace SECONDS   how long to stay after the last window has gone (10)`;

const GRACE_s = 10;
const now = (): Date => new Date();

function readArguments() {
  try {
    const { values, positionals } = parseArgs({
      allowPositionals: true,
      options: { 'no-open': { type: 'boolean' }, folder: { type: 'string' }, demo: { type: 'string' }, grace: { type: 'string' } },
    });
    if (positionals.length > 1) throw new Error('Only one plan can be opened at a time.');
    const grace_s = values.grace === undefined ? undefined : Number(values.grace);
    if (grace_s !== undefined && !(grace_s >= 0 && grace_s <= 86_400)) throw new Error('--grace takes a number of seconds.');
    return { opens: !values['no-open'], folder: values.folder, demo: values.demo ?? null, plan: positionals[0], grace_s };
  } catch (error) {
    console.error(`${error instanceof Error ? error.message : String(error)}\n${USAGE}`);
    return process.exit(2);
  }
}

const chosen = readArguments();
const folders = chosen.folder === undefined ? usualFolders() : foldersIn(chosen.folder);
const grace_s = chosen.grace_s ?? (chosen.opens ? GRACE_s : null);

const loopback = await startLoopback({
  windowFolder: join(import.meta.dirname, '..', 'renderer'),
  makeHost: () =>
    makeHost({
      kind: 'loopback',
      version,
      ...folders,
      startPlan: chosen.plan === undefined ? null : resolve(chosen.plan),
      startDemo: chosen.demo,
      now,
    }),
  grace_ms: grace_s === null ? null : grace_s * 1000,
  onGone: () => void end(),
});

async function end(): Promise<void> {
  await loopback.close();
  process.exit(0);
}
process.once('SIGINT', () => void end());
process.once('SIGTERM', () => void end());

console.log(`Nozzlewright is at ${loopback.entry}`);
if (chosen.opens) {
  const notOpened = await openWindow(loopback.entry, folders.userDataFolder);
  if (notOpened) console.log(notOpened.why);
}
await tidyUserData(folders.userDataFolder, now).catch(() => undefined);
