import { command, refuse } from './command.ts';

const labelOf = (_plan: unknown, ids: readonly string[]): string => (ids.length === 1 ? 'Clear measurement' : `Clear ${ids.length} measurements`);

/**
 * Takes measured dimensions out of the site record, with all that was noted of them.
 * Refuses an empty list and one that is not in the record.
 */
export const clearMeasurement = command(labelOf, (draft, ids: readonly string[]) => {
  if (ids.length === 0) refuse('No measurement is chosen.');
  for (const id of ids) {
    if (!Object.hasOwn(draft.siteRecord.measurements, id)) refuse('This dimension is not measured.');
    delete draft.siteRecord.measurements[id];
  }
});
