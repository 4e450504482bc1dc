import { command, refuse } from './command.ts';

const labelOf = (_plan: unknown, ids: readonly string[]): string => (ids.length === 1 ? 'Withdraw acceptance' : 'Clear lapsed acceptances');

/**
 * Withdraws acceptances: their findings are open again. Refuses one that has gone, and an empty list.
 * @param ids  of the waivers
 */
export const withdrawWaiver = command(labelOf, (draft, ids: readonly string[]) => {
  if (ids.length === 0) refuse('No acceptance has lapsed.');
  for (const id of ids) {
    if (!Object.hasOwn(draft.waivers, id)) refuse('This acceptance is no longer in the plan.');
    delete draft.waivers[id];
  }
});
