import type { Plan, RefOf } from '../model/plan.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { command } from './command.ts';
import { nozzleOf } from './lookup.ts';
import { soundAngle_rad } from './sound-value.ts';

/** Turns a nozzle about its axis to a rotation [rad], counter-clockwise. Refuses a nozzle that has gone. */
export const turnNozzle = command((plan: Plan, ref: RefOf<'nozzle'>, _rotation_rad: number) => `Turn ${thingsInSentence(plan, [ref])}`, (draft, ref: RefOf<'nozzle'>, rotation_rad: number) => {
  nozzleOf(draft, ref).rotation_rad = soundAngle_rad(rotation_rad);
});
