import { createHash } from 'node:crypto';
import { readFile, readdir, stat, unlink, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import { replaceFile } from './atomic-file.ts';
import { HostProblem, systemCodeOf } from './host-problem.ts';
import { readBytes } from './read-bytes.ts';

/** Digest of bytes as 64 hex digits. */
export const sha256Of = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Imported floor plans, each kept once under its digest. What a plan needs is packed into the plan when it is saved. */
export interface AssetStore {
  /** Keeps bytes under their digest and answers it. */
  keep(name: string, bytes: Uint8Array): Promise<string>;
  /** Bytes and first name, or undefined when they are not kept or no longer what they were. */
  find(sha256: string): Promise<{ name: string; bytes: Uint8Array } | undefined>;
  /** As `find`, but a missing one is trouble. */
  read(sha256: string): Promise<{ name: string; bytes: Uint8Array }>;
  /** Drops what nobody has used since a date and nothing unsaved needs. */
  prune(unusedSince: Date, needed: ReadonlySet<string>): Promise<void>;
}

/** A store in a folder. */
export function makeAssetStore(folder: string, now: () => Date): AssetStore {
  const dataOf = (sha256: string): string => join(folder, sha256);
  const nameOf = (sha256: string): string => join(folder, `${sha256}.name`);

  const find: AssetStore['find'] = async (sha256) => {
    try {
      const bytes = await readBytes(dataOf(sha256));
      if (sha256Of(bytes) !== sha256) return undefined;
      await utimes(dataOf(sha256), now(), now()).catch(() => undefined);
      const name = await readFile(nameOf(sha256), 'utf8').catch(() => 'floor plan');
      return { name, bytes };
    } catch (error) {
      if (systemCodeOf(error) === 'ENOENT') return undefined;
      throw error;
    }
  };

  return {
    find,
    async keep(name, bytes) {
      const sha256 = sha256Of(bytes);
      if (!(await find(sha256))) {
        await replaceFile(nameOf(sha256), new TextEncoder().encode(name));
        await replaceFile(dataOf(sha256), bytes);
      }
      return sha256;
    },
    async read(sha256) {
      const found = await find(sha256);
      if (found) return found;
      throw new HostProblem('not-found', 'The floor plan under this drawing is no longer kept.', sha256.slice(0, 12), 'Import the floor plan again and place it as before, or hide it.');
    },
    async prune(unusedSince, needed) {
      for (const name of await readdir(folder).catch(() => [])) {
        if (!/^[0-9a-f]{64}$/.test(name) || needed.has(name)) continue;
        const used = await stat(dataOf(name)).catch(() => undefined);
        if (!used || used.mtime >= unusedSince) continue;
        for (const path of [dataOf(name), nameOf(name)]) await unlink(path).catch(() => undefined);
      }
    },
  };
}
