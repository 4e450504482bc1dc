import { addLevel } from '#shared/commands/add-level';
import { removeLevel } from '#shared/commands/remove-level';
import type { State } from '../store/state.ts';
import type { Action, ActionContext } from './action.ts';
import { levelsInOrder } from './view-actions.ts';

/** Height between floors that a new level starts from [m]; common practice (12 ft), to be typed over. */
const STOREY_m = 3.6576;

/** "Level 3": the first such name that no level has, from the number of levels on. */
export function newLevelName(names: readonly string[]): string {
  let number = names.length + 1;
  while (names.includes(`Level ${number}`)) number += 1;
  return `Level ${number}`;
}

function add({ store }: ActionContext): void {
  const levels = levelsInOrder(store.get());
  const highest = levels.at(-1);
  // The store shows the level on which something changed: the new one.
  store.commit(addLevel(newLevelName(levels.map(({ name }) => name)), (highest?.floorElevation_m ?? 0) + STOREY_m));
}

const onlyLevel = (state: State): string | null => (Object.keys(state.history.present.levels).length === 1 ? 'A plan keeps at least one level.' : null);

/** Actions on the levels of the plan. */
export const LEVEL_ACTIONS: readonly Action[] = [
  { id: 'add-level', name: 'Add a level', group: 'Plan', also: 'floor storey new upper', run: add },
  {
    id: 'remove-level',
    name: 'Remove this level with everything on it',
    group: 'Plan',
    also: 'floor storey delete',
    unavailable: onlyLevel,
    run: ({ store }) => {
      store.commit(removeLevel(store.get().session.level));
    },
  },
];
