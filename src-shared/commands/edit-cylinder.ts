import type { Cylinder, Plan, RefOf } from '../model/plan.ts';
import { cylinderSchema } from '../model/schema.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';
import { cylinderOf } from './lookup.ts';
import { refuseTakenName } from './refuse-taken-name.ts';

const PICK = { name: true, at: true, mounting: true, back_rad: true, railHeight_m: true, restraints_m: true, anchors: true, outlet_rad: true, hoseEnd: true, gauge: true, storage: true, exposedTo: true } as const;
const FIELDS = cylinderSchema.pick(PICK).partial();

/** Changes a cylinder. Refuses a blank name, one that another cylinder has, and a value out of range. */
export const editCylinder = command((plan: Plan, ref: RefOf<'cylinder'>, _change: Partial<Pick<Cylinder, keyof typeof PICK>>) => `Edit ${thingsInSentence(plan, [ref])}`, (draft, ref, change) => {
  const cylinder = cylinderOf(draft, ref);
  if (change.name !== undefined) refuseTakenName(draft, 'cylinder', cylinder.name, change.name);
  applyChange(cylinder, FIELDS, change);
});
