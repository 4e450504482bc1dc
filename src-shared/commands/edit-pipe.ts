import type { Pipe, RefOf } from '../model/plan.ts';
import { pipeSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';
import { pipeOf } from './lookup.ts';

const PICK = { size: true, schedule: true, material: true, joint: true, insulation_m: true, measured_m: true } as const;
const FIELDS = pipeSchema.pick(PICK).partial();

/** Changes size, schedule, material, joint, insulation or measured length of a pipe. Refuses a pipe that has gone and a value that the trade does not have. */
export const editPipe = command('Edit pipe', (draft, ref: RefOf<'pipe'>, change: Partial<Pick<Pipe, keyof typeof PICK>>) => {
  applyChange(pipeOf(draft, ref), FIELDS, change);
});
