import { existsSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';

/** Where the program keeps its own things, and where plans are kept unless the user picks another place. */
export interface Folders {
  readonly userDataFolder: string;
  readonly plansFolder: string;
}

const ownFolderName = 'Nozzlewright';

/** The usual folders of this system and user. */
export function usualFolders(env: Readonly<Record<string, string | undefined>> = process.env, platform: NodeJS.Platform = process.platform, home = homedir()): Folders {
  const documents = join(home, 'Documents');
  const plansFolder = join(existsSync(documents) ? documents : home, ownFolderName);
  if (platform === 'win32') return { userDataFolder: join(env.APPDATA ?? join(home, 'AppData', 'Roaming'), ownFolderName), plansFolder };
  if (platform === 'darwin') return { userDataFolder: join(home, 'Library', 'Application Support', ownFolderName), plansFolder };
  return { userDataFolder: join(env.XDG_DATA_HOME ?? join(home, '.local', 'share'), 'nozzlewright'), plansFolder };
}

/** Everything in one folder that the user named. */
export const foldersIn = (folder: string): Folders => ({
  userDataFolder: join(resolve(folder), '.nozzlewright'),
  plansFolder: resolve(folder),
});
