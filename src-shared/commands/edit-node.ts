import type { PipeNode, RefOf } from '../model/plan.ts';
import { nodeSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';
import { nodeOf } from './lookup.ts';

const PICK = { part: true } as const;
const FIELDS = nodeSchema.pick(PICK).partial();

/** Changes what is built in at a place where pipes meet or end. Refuses a place that has gone and a part that the trade does not have. */
export const editNode = command('Edit pipe end', (draft, ref: RefOf<'node'>, change: Partial<Pick<PipeNode, keyof typeof PICK>>) => {
  applyChange(nodeOf(draft, ref), FIELDS, change);
});
