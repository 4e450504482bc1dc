import { type RefOf, type Shutdown, takeId } from '../model/plan.ts';
import { shutdownSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';
import { enclosureOf } from './lookup.ts';

const FIELDS = shutdownSchema.omit({ id: true }).partial();

/** Adds rows to the release matrix of an enclosure, each with an id of its own. Refuses an enclosure that has gone and what does not fit. */
export const addShutdowns = command('Add row of the release matrix', (draft, ref: RefOf<'enclosure'>, rows: readonly Omit<Shutdown, 'id'>[]) => {
  const enclosure = enclosureOf(draft, ref.level, ref.id);
  for (const row of rows) {
    const added: Shutdown = { id: takeId(draft, 'shutdown'), name: '', kind: 'other', target: null, on: 'first-detector' };
    applyChange(added, FIELDS, row);
    enclosure.shutdowns[added.id] = added;
  }
});
