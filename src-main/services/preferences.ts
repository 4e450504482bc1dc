import { join } from 'node:path';
import { z } from '#shared/profile/zod';
import { type KeptJson, makeKeptJson } from './kept-json.ts';

export type Preferences = Readonly<Record<string, string | number | boolean>>;

const schema: z.ZodType<Preferences> = z.record(z.string().max(80), z.union([z.string().max(4000), z.number(), z.boolean()]));

/** Choices of the user that belong to no plan. */
export const makePreferences = (userDataFolder: string): KeptJson<Preferences> =>
  makeKeptJson(join(userDataFolder, 'preferences.json'), schema, {});
