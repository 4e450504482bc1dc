import { readdir, realpath, stat } from 'node:fs/promises';
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
/** Signs that print nothing: control signs, and those that turn the direction of writing, with which a name can pretend to be another. */
const UNSEEN = /[\p{Cc}\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;

/** A file name that every system accepts, without ending, made from what the user calls the plan. */
export function fileNameOf(name: string): string {
  const plain = [...name.normalize('NFC')]
    .map((sign) => (UNSEEN.test(sign) || '<>:"/\\|?*'.includes(sign) ? ' ' : sign))
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
export const planNameOf = (path: string): string => basename(path).replace(/\.(nzw|json|pdf)$/i, '');

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
  const isBelow = (folder: string, path: string): boolean => {
    const way = relative(folder, path);
    // Names that begin with a dot lead up, or to the program's own things.
    return way !== '' && !isAbsolute(way) && way.split(sep).every((part) => !part.startsWith('.'));
  };
  /** A link in the folder may lead anywhere: where it leads has to lie in the folder, too. */
  const isAtHome = async (path: string): Promise<boolean> => isBelow(home, path) && isBelow(await realPlaceOf(home), await realPlaceOf(path));

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
      if (isClean && ((await isAtHome(path)) || (await recent.list()).includes(path))) return path;
      throw new HostProblem('refused', 'This place was not picked by you.', ref.slice(0, 400), 'Pick the plan in the list or in the dialog.');
    },
    placeFor: (name) => join(home, `${fileNameOf(name)}${PLAN_ENDING}`),
    async list() {
      const recents = await recent.list();
      const names = await readdir(home).catch(() => []);
      const plans = names.filter((name) => extname(name).toLowerCase() === PLAN_ENDING).map((name) => join(home, name));
      const atHome = (await Promise.all(plans.map(async (path) => ((await isAtHome(path)) ? [path] : [])))).flat();
      const entries = await Promise.all([...new Set([...recents, ...atHome])].map((path) => entryOf(path, recents.includes(path))));
      return entries.filter((entry) => entry !== undefined).sort((a, b) => b.modifiedAt.localeCompare(a.modifiedAt));
    },
  };
}

/** Where a path leads once every link on it is followed; what is not there yet lies where its folder does. */
async function realPlaceOf(path: string): Promise<string> {
  const found = await realpath(path).catch(() => undefined);
  if (found !== undefined) return found;
  const folder = dirname(path);
  return folder === path ? path : join(await realPlaceOf(folder), basename(path));
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
