import type { Enclosure, Plan, RefOf } from '../model/plan.ts';
import { enclosureSchema } from '../model/schema.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';
import { enclosureOf } from './lookup.ts';
import { soundName } from './sound-value.ts';

const PICK = {
  name: true, height_m: true, slope: true, underFloor: true, ceilingVoid: true, temperature: true, altitude_m: true, occupancy: true, hazardClass: true, concentration_pct: true, adjacent: true, people: true, leakage: true, lowestProtected_m: true, ceiling: true, ambientSound_dBA: true, dischargedWith: true, shutdowns: true, afterDischarge: true,
} as const;
const FIELDS = enclosureSchema.pick(PICK).partial();

/**
 * Changes what is known of an enclosure. Refuses a blank name, a height of 0, a value out of range, and a least
 * temperature above the greatest.
 */
export const editEnclosure = command((plan: Plan, ref: RefOf<'enclosure'>, _change: Partial<Pick<Enclosure, keyof typeof PICK>>) => `Edit ${thingsInSentence(plan, [ref])}`, (draft, ref, change) => {
  const enclosure = enclosureOf(draft, ref.level, ref.id);
  if (change.name !== undefined) soundName('An enclosure', change.name);
  if (change.height_m === 0) refuse('Height must be more than 0. Leave it blank while it is not known.');
  if (change.temperature && change.temperature.least_K > change.temperature.greatest_K) refuse('The least temperature cannot be above the greatest.');
  applyChange(enclosure, FIELDS, change);
});
