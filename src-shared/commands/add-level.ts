import { type Ref, emptyLevel, takeId } from '../model/plan.ts';
import { command } from './command.ts';
import { soundCoordinate_m, soundName } from './sound-value.ts';

/**
 * Adds an empty level.
 * @param floorElevation_m finished floor above the building's zero [m]
 * Refuses a blank name and an elevation that is not a number.
 */
export const addLevel = command('Add level', (draft, name: string, floorElevation_m: number): readonly Ref[] => {
  const id = takeId(draft, 'level');
  draft.levels[id] = emptyLevel(id, soundName('A level', name), soundCoordinate_m(floorElevation_m));
  return [];
});
