import { readFile } from 'node:fs/promises';
import { strFromU8, unzipSync } from 'fflate';
import type { Plan } from '../../../src-shared/model/plan.ts';

/** What a saved plan file holds, unpacked without the program's own reader. */
export interface SavedFile {
  readonly plan: Plan;
  /** Names and sizes of the floor plans in it [bytes]. */
  readonly assets: Readonly<Record<string, number>>;
}

/** Unpacks a saved plan file. */
export async function readPlanFile(path: string): Promise<SavedFile> {
  const entries = unzipSync(await readFile(path));
  const { 'plan.json': json, ...others } = entries;
  if (!json) throw new Error(`${path} holds no plan.json.`);
  return { plan: JSON.parse(strFromU8(json)) as Plan, assets: Object.fromEntries(Object.entries(others).map(([name, bytes]) => [name, bytes.length])) };
}
