import { readFile, stat } from 'node:fs/promises';
import { extname } from 'node:path';
import { PlanTooLarge, packPlan, unpackPlan } from '#shared/model/pack-plan';
import { parsePlan } from '#shared/model/parse-plan';
import type { Plan } from '#shared/model/plan';
import { printPlan } from '#shared/model/print-plan';
import { sha256Of } from './asset-store.ts';
import { type FileSteps, replaceFile } from './atomic-file.ts';
import { looksLikePdf } from './embedded-files.ts';
import { HostProblem, asHostProblem, systemCodeOf } from './host-problem.ts';
import { planInSheets } from './plan-in-sheets.ts';
import { PLAN_ENDING } from './plan-places.ts';
import { readBytes } from './read-bytes.ts';
import { takeSaveTurn } from './save-turn.ts';

/** Largest plan file that is opened [bytes]. */
const LARGEST_PLAN_bytes = 512 * 1024 * 1024;

/** An imported floor plan out of a plan file. */
export interface PackedAsset {
  readonly name: string;
  readonly sha256: string;
  readonly bytes: Uint8Array;
}

/** A plan as its file had it. */
export interface ReadPlan {
  readonly plan: Plan;
  /** Floor plans whose bytes are what the plan says they are. */
  readonly assets: readonly PackedAsset[];
  /** What was repaired, migrated or missing, in sentences. */
  readonly remarks: readonly string[];
  /** It came out of printed sheets: it has no file of its own yet. */
  readonly isFromSheets: boolean;
}

const isIssued = ({ issuedSets }: Plan, id: string): boolean => issuedSets.some(({ plan, sheets }) => plan === id || sheets === id);
/** What a file of a plan is to the user, and what to do when it is lost. */
const fileWords = (plan: Plan, id: string): string => (isIssued(plan, id) ? 'issued set' : 'floor plan');
const remedyFor = (plan: Plan, id: string): string => (isIssued(plan, id) ? 'Look for an older copy of the plan file: this set can no longer be compared or printed again.' : 'Import it again and place it as before.');

/** State of a plan file: two files with the same stamp hold the same bytes. */
const stampOf = (bytes: Uint8Array, changed_ms: number): string => `${bytes.length}-${Math.round(changed_ms)}-${sha256Of(bytes)}`;
const digestIn = (stamp: string): string => stamp.slice(stamp.lastIndexOf('-') + 1);

/**
 * Reads a plan from the bytes of a plan file, of a bare `plan.json`, or of sheets that were printed of it.
 * @param where  file name for the user
 * @throws {HostProblem} anything that is no sound plan
 */
export function readPlanBytes(bytes: Uint8Array, where: string): ReadPlan {
  if (bytes.length === 0) throw new HostProblem('unreadable', 'The file is empty.', where, 'Open the copy beside it that ends in .bak, or an older copy.');
  if (bytes.length > LARGEST_PLAN_bytes) throw new HostProblem('too-large', 'The file is larger than any plan.', where, 'Check that this is a plan file.');
  const isFromSheets = looksLikePdf(bytes);
  const read = unpackPlan(isFromSheets ? planInSheets(bytes, where) : bytes);
  if (!read.ok) throw new HostProblem(read.problem.code, read.problem.what, [where, read.problem.where].filter(Boolean).join(': '), read.problem.remedy);
  const remarks = isFromSheets ? [...read.remarks, FROM_SHEETS] : [...read.remarks];
  const assets: PackedAsset[] = [];
  for (const { id, name, file, sha256 } of Object.values(read.plan.assets)) {
    const packed = Object.hasOwn(read.assets, file) ? read.assets[file] : undefined;
    if (packed && sha256Of(packed) === sha256) assets.push({ name, sha256, bytes: packed });
    else if (packed) remarks.push(`The ${fileWords(read.plan, id)} “${name}” in this file is damaged and was left out. ${remedyFor(read.plan, id)}`);
  }
  return { plan: read.plan, assets, remarks, isFromSheets };
}

const FROM_SHEETS = 'This is the plan that was attached to the printed sheets, as it stood when they were printed. Save it as a plan file to go on with it.';

/**
 * Reads a plan from the text that was kept of unsaved work; its floor plans are kept elsewhere.
 * @throws {HostProblem} the text is no sound plan
 */
export function readPlanText(text: string, where: string): Omit<ReadPlan, 'assets' | 'isFromSheets'> {
  const read = parsePlan(text);
  if (!read.ok) throw new HostProblem(read.problem.code, read.problem.what, where, read.problem.remedy);
  return { plan: read.plan, remarks: read.remarks };
}

/** Reads a plan file with the stamp of the state it was read in. */
export async function readPlanFile(path: string): Promise<ReadPlan & { readonly stamp: string }> {
  try {
    const about = await stat(path);
    if (about.isDirectory()) throw new HostProblem('unreadable', 'This is a folder, not a plan file.', path, 'Choose a file that ends in .nzw, a plan.json, or sheets that were printed.');
    if (about.size > LARGEST_PLAN_bytes) throw new HostProblem('too-large', 'The file is larger than any plan.', path, 'Check that this is a plan file.');
    const bytes = await readBytes(path);
    return { ...readPlanBytes(bytes, path), stamp: stampOf(bytes, about.mtimeMs) };
  } catch (error) {
    throw asHostProblem(error, path);
  }
}

/** What a plan file will hold, and what could not be put in. */
export interface PackedPlan {
  readonly bytes: Uint8Array;
  readonly remarks: readonly string[];
}

/**
 * Packs a plan with the floor plans it stands on.
 * @param findAsset  bytes of a floor plan by its digest; one that is not found is left out with a remark
 */
export async function packWithAssets(plan: Plan, findAsset: (sha256: string) => Promise<{ bytes: Uint8Array } | undefined>): Promise<PackedPlan> {
  const files: Record<string, Uint8Array> = {};
  const remarks: string[] = [];
  for (const { id, name, file, sha256 } of Object.values(plan.assets)) {
    const found = await findAsset(sha256);
    if (found) files[file] = found.bytes;
    else remarks.push(`The ${fileWords(plan, id)} “${name}” was not at hand and is not in the file. ${remedyFor(plan, id)}`);
  }
  return { bytes: packPlan(plan, files), remarks };
}

/**
 * Packs a plan to be attached to its own sheets. What was issued before is left out: sheets would hold sheets that
 * hold sheets. Whatever cannot be had or is too large is left out as well, for the sheets are wanted all the same.
 */
export async function packForSheets(plan: Plan, findAsset: Parameters<typeof packWithAssets>[1]): Promise<Uint8Array> {
  const issued = new Set(plan.issuedSets.flatMap(({ plan: kept, sheets }) => [kept, sheets]));
  const files: Record<string, Uint8Array> = {};
  for (const { id, file, sha256 } of Object.values(plan.assets)) {
    const found = issued.has(id) ? undefined : await findAsset(sha256).catch(() => undefined);
    if (found) files[file] = found.bytes;
  }
  try {
    return packPlan(plan, files);
  } catch (error) {
    if (error instanceof PlanTooLarge) return packPlan(plan, {});
    throw error;
  }
}

/** How a plan is put in its file. */
export interface Saving {
  /** Stamp the file should still have; null: there should be no file. */
  readonly stamp: string | null;
  /** Replaces the file whatever state it is in. */
  readonly overwrite: boolean;
  readonly steps?: FileSteps;
}

/**
 * Saves packed bytes as a plan file. What was there stays beside it as `.bak`.
 * @returns the new stamp
 * @throws {HostProblem} `conflict` when the file is not in the state that the window knew
 */
export async function savePlanFile(path: string, bytes: Uint8Array, { stamp, overwrite, steps }: Saving): Promise<string> {
  let release = async (): Promise<void> => undefined;
  const beforeSwap = async (): Promise<void> => {
    release = await takeSaveTurn(path);
    if (overwrite) return;
    const present = await readFile(path).catch((error: unknown) => {
      if (systemCodeOf(error) === 'ENOENT') return undefined;
      throw error;
    });
    if (!present) return;
    if (stamp === null) throw new HostProblem('conflict', 'There is a plan of this name already.', path, 'Choose another name, or replace that plan; its present state is then kept beside it as .bak.');
    if (sha256Of(present) !== digestIn(stamp)) {
      throw new HostProblem('conflict', 'This file was changed by somebody else since you opened it.', path, 'Save yours under another name and compare, or replace the file; its present state is then kept beside it as .bak.');
    }
  };
  try {
    await replaceFile(path, bytes, { keepPrevious: true, beforeSwap, steps });
    return stampOf(bytes, (await stat(path)).mtimeMs);
  } catch (error) {
    throw asHostProblem(error, path);
  } finally {
    await release();
  }
}

/**
 * Bytes for a place by its ending: a plan file, or a bare `plan.json` for a plan without floor plans.
 * @throws {HostProblem} `refused` for any other ending, and for floor plans that a bare plan cannot hold
 */
export async function bytesFor(path: string, plan: Plan, findAsset: Parameters<typeof packWithAssets>[1]): Promise<PackedPlan> {
  const ending = extname(path).toLowerCase();
  if (ending === PLAN_ENDING) return packWithAssets(plan, findAsset);
  if (ending !== '.json') throw new HostProblem('refused', 'A plan is saved in a file that ends in .nzw.', path, 'Save it under another name.');
  if (Object.keys(plan.assets).length > 0) {
    throw new HostProblem('refused', 'A bare plan.json cannot hold the imported floor plans.', path, 'Save it under another name that ends in .nzw.');
  }
  return { bytes: new TextEncoder().encode(printPlan(plan)), remarks: [] };
}
