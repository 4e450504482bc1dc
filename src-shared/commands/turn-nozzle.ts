import type { RefOf } from '../model/plan.ts';
import { command } from './command.ts';
import { nozzleOf } from './lookup.ts';
import { soundAngle_rad } from './sound-value.ts';

/** Turns a nozzle about its axis to a rotation [rad], counter-clockwise. Refuses a nozzle that has gone. */
export const turnNozzle = command('Turn nozzle', (draft, ref: RefOf<'nozzle'>, rotation_rad: number) => {
  nozzleOf(draft, ref).rotation_rad = soundAngle_rad(rotation_rad);
});
