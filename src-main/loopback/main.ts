import { parseArgs } from 'node:util';
import { join, resolve } from 'node:path';
import { version } from '../../package.json';
import { foldersIn, usualFolders } from '../services/folders.ts';
import { makeHost } from '../services/make-host.ts';
import { tidyUserData } from '../services/tidy.ts';
import { openWindow, pickBrowser } from './open-window.ts';
import { startLoopback } from './server.ts';

const USAGE = `Usage: node out/main/loopback.js [PLAN] [--no-open] [--folder DIR] [--demo NAME] [--grace SECONDS]
  PLAN              plan to open
  --no-open         only serve and print the address; stays until stopped
  --folder DIR      keep plans and the program's own files in DIR
  --demo NAME       demo plan to show when no PLAN is given
  --grace SECONDS   how long to stay after the last window has gone (10, or
                    for ever where no window was opened)`;

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
const picked = chosen.opens ? pickBrowser() : null;
// Whoever opens the address by hand may close and open it as often as they like.
const grace_s = chosen.grace_s ?? (picked && 'browser' in picked ? GRACE_s : null);

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
if (picked) {
  const why = 'browser' in picked ? await openWindow(picked.browser, loopback.entry, folders.userDataFolder) : picked.why;
  if (why) console.log(why);
}
await tidyUserData(folders.userDataFolder, now).catch(() => undefined);
