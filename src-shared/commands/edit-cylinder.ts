import type { Cylinder, RefOf } from '../model/plan.ts';
import { cylinderSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';
import { cylinderOf } from './lookup.ts';
import { refuseTakenName } from './refuse-taken-name.ts';

const PICK = { name: true, at: true, mounting: true, back_rad: true, railHeight_m: true } as const;
const FIELDS = cylinderSchema.pick(PICK).partial();

/** Changes a cylinder. Refuses a blank name, one that another cylinder has, and a value out of range. */
export const editCylinder = command('Edit cylinder', (draft, ref: RefOf<'cylinder'>, change: Partial<Pick<Cylinder, keyof typeof PICK>>) => {
  const cylinder = cylinderOf(draft, ref);
  if (change.name !== undefined) refuseTakenName(draft, 'cylinder', cylinder.name, change.name);
  applyChange(cylinder, FIELDS, change);
});
