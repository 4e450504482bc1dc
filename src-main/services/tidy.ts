import { join } from 'node:path';
import { makeAssetStore } from './asset-store.ts';
import { makeRecoveryJournal } from './recovery-journal.ts';

const DAY_ms = 24 * 60 * 60 * 1000;
/** Floor plans are packed in the plans that use them; what the program keeps beside is only for speed and unsaved work. */
const KEPT_days = 60;

/** Drops floor plans that no unsaved work needs and that have not been used for two months. */
export async function tidyUserData(userDataFolder: string, now: () => Date): Promise<void> {
  const needed = await makeRecoveryJournal(join(userDataFolder, 'unsaved'), 'tidy', now).neededAssets();
  await makeAssetStore(join(userDataFolder, 'floor-plans'), now).prune(new Date(now().getTime() - KEPT_days * DAY_ms), needed);
}
