import type { Obstruction, Plan, RefOf } from '../model/plan.ts';
import { obstructionSchema } from '../model/schema.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';
import { obstructionOf } from './lookup.ts';
import { soundRing, woundLeft } from './rings.ts';
import { soundName } from './sound-value.ts';

const PICK = { name: true, kind: true, footprint: true, bottom_m: true, top_m: true, front_rad: true, voltage_V: true, hasLooseItems: true, hasDrives: true, isPermeable: true } as const;
const FIELDS = obstructionSchema.pick(PICK).partial();

/** Changes an obstruction. Refuses a blank name, a footprint that crosses itself, a value out of range, and a top that is not above the bottom. */
export const editObstruction = command((plan: Plan, ref: RefOf<'obstruction'>, _change: Partial<Pick<Obstruction, keyof typeof PICK>>) => `Edit ${thingsInSentence(plan, [ref])}`, (draft, ref, change) => {
  const thing = obstructionOf(draft, ref);
  if (change.name !== undefined) soundName('An obstacle', change.name);
  const footprint = change.footprint && woundLeft(soundRing(change.footprint, 'The footprint'));
  applyChange(thing, FIELDS, { ...change, footprint });
  if (!(thing.top_m > thing.bottom_m)) refuse('The top must be above the bottom.');
});
