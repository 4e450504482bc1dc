import { readdir, stat } from 'node:fs/promises';
import { basename, dirname, extname, isAbsolute, join, relative, resolve, sep } from 'node:path';
import type { PlanEntry } from '#shared/host/contract';
import { HostProblem } from './host-problem.ts';
import type { RecentPlans } from './recent-plans.ts';

/** Ending of a plan file. */
export const PLAN_ENDING = '.nzw';
const READABLE_ENDINGS = [PLAN_ENDING, '.json'];

/** Names that Windows keeps for devices, whatever the ending. Source: Microsoft, "Naming Files, Paths, and Namespaces". */
const DEVICE_NAME = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/i;
/** Every system takes names of 255 bytes; this leaves room for endings. */
const LONGEST_NAME_bytes = 180;

/** A file name that every system accepts, without ending, made from what the user calls the plan. */
export function fileNameOf(name: string): string {
  const plain = [...name.normalize('NFC')]
    .map((sign) => (sign < ' ' || sign === '\u007f' || '<>:"/\\|?*'.includes(sign) ? ' ' : sign))
    .join('')
    .replace(/\s+/g, ' ')
    .replace(/\.(nzw|json)$/i, '')
    .replace(/^[. ]+/, '');
  const short = shortened(plain).replace(/[. ]+$/, '');
  if (!short) return 'Plan';
  return DEVICE_NAME.test(short.split('.')[0] ?? '') ? `Plan ${short}` : short;
}

function shortened(name: string): string {
  let short = '';
  for (const sign of name) {
    if (Buffer.byteLength(short + sign) > LONGEST_NAME_bytes) break;
    short += sign;
  }
  return short;
}

/** Name of a plan as the user reads it, from its file. */
export const planNameOf = (path: string): string => basename(path).replace(/\.(nzw|json)$/i, '');

/**
 * Which files the window may name. A plan ref is the file's path, but it is honoured only when the file lies in
 * the plans folder, is a recent plan, or was granted in this run: picked in a dialog or asked for at the start.
 */
export interface PlanPlaces {
  grant(path: string): string;
  /** The path behind a ref; a ref that was never given out is trouble. */
  pathOf(ref: string): Promise<string>;
  /** Place in the plans folder for a plan of this name. */
  placeFor(name: string): string;
  list(): Promise<PlanEntry[]>;
}

export function makePlanPlaces(plansFolder: string, recent: RecentPlans): PlanPlaces {
  const home = resolve(plansFolder);
  const granted = new Set<string>();
  const isAtHome = (path: string): boolean => {
    const way = relative(home, path);
    return way !== '' && way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
  };

  return {
    grant(path) {
      const whole = resolve(path);
      granted.add(whole);
      return whole;
    },
    async pathOf(ref) {
      const path = resolve(ref);
      const isClean = path === ref && !ref.includes('\0') && READABLE_ENDINGS.includes(extname(path).toLowerCase());
      if (granted.has(path) && path === ref) return path;
      if (isClean && (isAtHome(path) || (await recent.list()).includes(path))) return path;
      throw new HostProblem('refused', 'This place was not picked by you.', ref.slice(0, 400), 'Pick the plan in the list or in the dialog.');
    },
    placeFor: (name) => join(home, `${fileNameOf(name)}${PLAN_ENDING}`),
    async list() {
      const recents = await recent.list();
      const names = await readdir(home).catch(() => []);
      const atHome = names.filter((name) => extname(name).toLowerCase() === PLAN_ENDING && !name.startsWith('.')).map((name) => join(home, name));
      const entries = await Promise.all([...new Set([...recents, ...atHome])].map((path) => entryOf(path, recents.includes(path))));
      return entries.filter((entry) => entry !== undefined).sort((a, b) => b.modifiedAt.localeCompare(a.modifiedAt));
    },
  };
}

async function entryOf(path: string, isRecent: boolean): Promise<PlanEntry | undefined> {
  const found = await stat(path).catch(() => undefined);
  const isFile = found?.isFile() ?? false;
  if (!isFile && !isRecent) return undefined;
  return {
    ref: path,
    name: planNameOf(path),
    folder: dirname(path),
    modifiedAt: isFile && found ? found.mtime.toISOString() : '',
    size_bytes: isFile && found ? found.size : 0,
    isRecent,
    isMissing: !isFile,
  };
}
