import type { Pipe, RefOf } from '../model/plan.ts';
import { pipesOfRun } from '../model/pipe-run.ts';
import { pipeSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';
import { networkOf, pipeOf } from './lookup.ts';

const PICK = { size: true, schedule: true, material: true, joint: true, insulation_m: true } as const;
const FIELDS = pipeSchema.pick(PICK).partial();

/**
 * Changes size, schedule, material, joint or insulation of a whole run: every pipe from the branch or end before the
 * one named to the next. Reducers follow by themselves.
 * Refuses a pipe that has gone and a value that the trade does not have.
 */
export const editRun = command('Edit run', (draft, ref: RefOf<'pipe'>, change: Partial<Pick<Pipe, keyof typeof PICK>>) => {
  pipeOf(draft, ref);
  const network = networkOf(draft, ref.network);
  for (const id of pipesOfRun(network, ref.id)) applyChange(pipeOf(draft, { ...ref, id }), FIELDS, change);
});
