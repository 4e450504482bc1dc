import { join } from 'node:path';
import { z } from '#shared/profile/zod';
import { makeKeptJson } from './kept-json.ts';

/** Plans that were opened or saved last, newest first. */
export interface RecentPlans {
  list(): Promise<readonly string[]>;
  add(path: string): Promise<void>;
  forget(path: string): Promise<void>;
}

const MOST_RECENT = 20;

export function makeRecentPlans(userDataFolder: string): RecentPlans {
  const file = makeKeptJson(join(userDataFolder, 'recent-plans.json'), z.array(z.string().max(4096)).max(200), []);
  return {
    list: () => file.read(),
    add: (path) => file.change((paths) => [path, ...paths.filter((other) => other !== path)].slice(0, MOST_RECENT)),
    forget: (path) => file.change((paths) => paths.filter((other) => other !== path)),
  };
}
