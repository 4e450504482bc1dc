import { heldPipe } from '../model/held-pipe.ts';
import type { RefOf, Support } from '../model/plan.ts';
import { supportSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';
import { networkOf, supportOf } from './lookup.ts';

const PICK = { at: true, kind: true, capacity_N: true, brace: true } as const;
const FIELDS = supportSchema.pick(PICK).partial();

/** Changes a pipe support. Refuses a place where no pipe of its network runs, and a value out of range. */
export const editSupport = command('Edit pipe support', (draft, ref: RefOf<'support'>, change: Partial<Pick<Support, keyof typeof PICK>>) => {
  const support = supportOf(draft, ref);
  if (change.at && !heldPipe(networkOf(draft, ref.network), change.at)) refuse('No pipe of this network runs here. Choose a place on its pipe.');
  applyChange(support, FIELDS, change);
});
