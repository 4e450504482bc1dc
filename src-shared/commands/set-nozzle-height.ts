import type { Plan, RefOf } from '../model/plan.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { command } from './command.ts';
import { networkOf, nozzleOf } from './lookup.ts';
import { setHeight } from './nozzle-drops.ts';

/**
 * Brings a nozzle's orifice to a height [m] above the finished floor. Its drop grows or shrinks; a nozzle straight
 * on a run gets a drop, one that comes up to its run loses it.
 * Refuses a height at which the drop would end on another nozzle.
 */
export const setNozzleHeight = command((plan: Plan, ref: RefOf<'nozzle'>, _z_m: number) => `Set height of ${thingsInSentence(plan, [ref])}`, (draft, ref, z_m) => {
  setHeight(draft, networkOf(draft, ref.network), nozzleOf(draft, ref), z_m);
});
