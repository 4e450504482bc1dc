import { command, refuse } from './command.ts';
import { levelOf } from './lookup.ts';

/** Takes a level away with everything on it. Refuses the last one, for a plan needs a level to draw on. */
export const removeLevel = command('Remove level', (draft, levelId: string) => {
  const level = levelOf(draft, levelId);
  if (Object.keys(draft.levels).length === 1) refuse('A plan keeps at least one level. Add another before this one goes.');
  for (const network of Object.values(draft.networks)) {
    if (network.level === levelId) delete draft.networks[network.id];
    else for (const nozzle of Object.values(network.nozzles)) if (nozzle.serves && Object.hasOwn(level.enclosures, nozzle.serves.enclosure)) nozzle.serves = null;
  }
  delete draft.levels[levelId];
});
