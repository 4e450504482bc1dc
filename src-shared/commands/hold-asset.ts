import { isSafeFileName } from '../model/mend-plan.ts';
import { type Plan, takeId } from '../model/plan.ts';
import { refuse } from './command.ts';

/** A file that the host keeps, as the plan names it. */
export interface AssetEntry {
  readonly name: string;
  readonly file: string;
  readonly sha256: string;
}

/**
 * Names a kept file in the plan and answers its id; a file that the plan holds already is not held twice.
 * Refuses one that cannot lie in a plan file, with the sentence given.
 */
export function holdAsset(draft: Pick<Plan, 'assets' | 'nextSerial'>, { name, file, sha256 }: AssetEntry, refusal: string): string {
  if (!isSafeFileName(file) || !/^[0-9a-f]{64}$/.test(sha256)) refuse(refusal);
  const held = Object.values(draft.assets).find((asset) => asset.sha256 === sha256)?.id;
  if (held) return held;
  const id = takeId(draft, 'asset');
  draft.assets[id] = { id, name: name.slice(0, 200), file, sha256 };
  return id;
}
