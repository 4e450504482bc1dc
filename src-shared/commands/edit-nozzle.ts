import type { Nozzle, Plan, RefOf } from '../model/plan.ts';
import { nozzleSchema } from '../model/schema.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';
import { nozzleOf } from './lookup.ts';
import { refuseTakenName } from './refuse-taken-name.ts';

const PICK = { name: true, holes_rad: true, rotation_rad: true, tilt_rad: true, orificeArea_m2: true, serves: true } as const;
const FIELDS = nozzleSchema.pick(PICK).partial();

/**
 * Changes a nozzle. Refuses a blank name, one that another nozzle has, a tilt beyond half a turn, and to serve an
 * enclosure that is not in the plan.
 */
export const editNozzle = command((plan: Plan, ref: RefOf<'nozzle'>, _change: Partial<Pick<Nozzle, keyof typeof PICK>>) => `Edit ${thingsInSentence(plan, [ref])}`, (draft, ref, change) => {
  const nozzle = nozzleOf(draft, ref);
  const { serves } = change;
  if (change.name !== undefined) refuseTakenName(draft, 'nozzle', nozzle.name, change.name);
  if (serves && !Object.values(draft.levels).some(({ enclosures }) => Object.hasOwn(enclosures, serves.enclosure))) refuse('This enclosure is no longer in the plan.');
  applyChange(nozzle, FIELDS, change);
});
