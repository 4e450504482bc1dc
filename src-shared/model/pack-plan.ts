import { type Zippable, strFromU8, strToU8, zipSync } from 'fflate';
import { LONGEST_JSON } from './guarded-json.ts';
import { parsePlan } from './parse-plan.ts';
import type { Plan } from './plan.ts';
import { type PlanFailure, planFailure } from './plan-problem.ts';
import { printPlan } from './print-plan.ts';
import { type ZipLimits, readZip } from './zip-entries.ts';

/** Name of the plan inside a plan file. */
const PLAN_NAME = 'plan.json';
const ASSET_FOLDER = 'assets/';
/** Largest imported floor plan that a plan file carries [bytes]. */
const LARGEST_ASSET_bytes = 200 * 1024 * 1024;

const LIMITS: ZipLimits = {
  entries: 1000,
  archive_bytes: 400 * 1024 * 1024,
  total_bytes: 400 * 1024 * 1024,
  entry_bytes: (name) => (name === PLAN_NAME ? LONGEST_JSON : LARGEST_ASSET_bytes),
};

/** Any fixed day: the same plan then packs to the same bytes. In local time, as the archive has it. */
const PACKED_AT = '1990-01-01T00:00:00';
const isPackedAlready = (file: string): boolean => /\.(png|jpe?g|pdf)$/i.test(file);

/** What a plan file holds: the plan, its imported floor plans by file name, and the names of those that it lacks. */
export type UnpackedPlan =
  | { readonly ok: true; readonly plan: Plan; readonly assets: Readonly<Record<string, Uint8Array>>; readonly absent: string[]; readonly remarks: string[] }
  | PlanFailure;

/** A plan that is too large to be opened again: packing it would lose it. Its message is for the user. */
export class PlanTooLarge extends Error {
  constructor() {
    super('The plan and its floor plans are too large for one plan file. Take a floor plan out, or split the job into several plans.');
  }
}

/**
 * Packs a plan with its imported floor plans into the bytes of a plan file (.nzw), a ZIP of plan.json and assets/.
 * The same plan and assets always pack to the same bytes.
 * @param assets bytes by file name, as `plan.assets` names them; files that the plan does not name are left out
 * @throws {PlanTooLarge} what `unpackPlan` would not open again
 */
export function packPlan(plan: Plan, assets: Readonly<Record<string, Uint8Array>>): Uint8Array {
  const text = printPlan(plan);
  const archive: Zippable = { [PLAN_NAME]: [strToU8(text), { level: 6 }] };
  let total_bytes = text.length * 3;
  const files = Object.values(plan.assets).map(({ file }) => file);
  for (const file of files.sort()) {
    const bytes = Object.hasOwn(assets, file) ? assets[file] : undefined;
    if (!bytes) continue;
    archive[`${ASSET_FOLDER}${file}`] = [bytes, { level: isPackedAlready(file) ? 0 : 6 }];
    total_bytes += bytes.length;
    if (bytes.length > LARGEST_ASSET_bytes) throw new PlanTooLarge();
  }
  if (text.length > LONGEST_JSON || total_bytes > LIMITS.total_bytes || files.length >= LIMITS.entries) throw new PlanTooLarge();
  return zipSync(archive, { mtime: PACKED_AT });
}

const isZip = (bytes: Uint8Array): boolean => bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03 && bytes[3] === 0x04;

/** The text of bytes in UTF-8, or undefined when they are no text. */
function textOf(bytes: Uint8Array): string | undefined {
  if (bytes.includes(0)) return undefined;
  try {
    return strFromU8(bytes);
  } catch {
    return undefined;
  }
}

/**
 * Whether bytes begin like a plan: a plan file whose first entry is plan.json or an asset, or the text of a
 * plan.json. Says nothing of whether they can be read.
 */
export function looksLikePlanFile(bytes: Uint8Array): boolean {
  if (isZip(bytes)) {
    const name = strFromU8(bytes.subarray(30, 30 + PLAN_NAME.length), true);
    return name === PLAN_NAME || name.startsWith(ASSET_FOLDER);
  }
  const head = strFromU8(bytes.subarray(0, 4096), true);
  return /^(?:\xef\xbb\xbf)?\s*\{/.test(head) && head.includes('"nozzlewright-plan"');
}

/**
 * Reads a plan file that nobody vouches for: packed (.nzw) or a bare plan.json. Digests of the assets are not
 * checked here.
 */
export function unpackPlan(bytes: Uint8Array): UnpackedPlan {
  if (!isZip(bytes)) {
    const text = bytes.length <= LONGEST_JSON * 3 ? textOf(bytes) : undefined;
    if (text === undefined) return planFailure('unsupported', 'This file is not a plan of this program.', 'its first bytes', 'Choose a plan file (.nzw), or import the file as a floor plan.');
    const parsed = parsePlan(text);
    return parsed.ok ? { ...parsed, assets: {}, absent: absentFiles(parsed.plan, {}) } : parsed;
  }
  const zip = readZip(bytes, LIMITS);
  if (!zip.ok) return zip;
  const main = zip.entries.find(({ name }) => name === PLAN_NAME);
  const text = main && textOf(main.bytes);
  if (text === undefined) return planFailure('unsupported', 'This file holds no plan.', PLAN_NAME, 'Choose a plan file (.nzw) that this program saved.');
  const parsed = parsePlan(text);
  if (!parsed.ok) return parsed;
  const named = new Set(Object.values(parsed.plan.assets).map(({ file }) => file));
  const assets = Object.fromEntries(
    zip.entries.flatMap(({ name, bytes: unpacked }) => {
      const file = name.slice(ASSET_FOLDER.length);
      return name.startsWith(ASSET_FOLDER) && named.has(file) ? [[file, unpacked] as const] : [];
    }),
  );
  return { ...parsed, assets, absent: absentFiles(parsed.plan, assets) };
}

/** Names, as the user knows them, of the floor plans whose files are not there. */
const absentFiles = (plan: Plan, assets: Readonly<Record<string, Uint8Array>>): string[] =>
  Object.values(plan.assets)
    .filter(({ file }) => !Object.hasOwn(assets, file))
    .map(({ name }) => name);
