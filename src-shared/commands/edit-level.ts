import type { Level } from '../model/plan.ts';
import { levelSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';
import { levelOf } from './lookup.ts';
import { soundName } from './sound-value.ts';

const FIELDS = levelSchema.pick({ name: true, floorElevation_m: true }).partial();

/** Changes name or floor elevation of a level. Refuses a level that has gone, a blank name, and a value out of range. */
export const editLevel = command('Edit level', (draft, levelId: string, change: Partial<Pick<Level, 'name' | 'floorElevation_m'>>) => {
  const level = levelOf(draft, levelId);
  if (change.name !== undefined) soundName('A level', change.name);
  applyChange(level, FIELDS, change);
});
