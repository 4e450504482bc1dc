import type { RefOf, Wall } from '../model/plan.ts';
import { wallSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';
import { cornerOf } from './lookup.ts';

const FIELDS = wallSchema.partial();

/** Changes what is known of a wall. Refuses a wall that has gone and a value out of range. */
export const editWall = command('Edit wall', (draft, ref: RefOf<'wall'>, change: Partial<Wall>) => {
  applyChange(cornerOf(draft, ref).corner.wall, FIELDS, change);
});
