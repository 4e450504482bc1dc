import { shownPlan } from '../store/selectors.ts';
import type { State } from '../store/state.ts';

/** Whether the board is bare and no tool is at work on it: the start page stands there then. */
export const isBare = (state: State): boolean => {
  const plan = shownPlan(state);
  const isEmpty = Object.values(plan.levels).every(
    (level) => Object.keys(level.enclosures).length + Object.keys(level.underlays).length + Object.keys(level.obstructions).length + Object.keys(level.devices).length + Object.keys(level.adjoining).length + Object.keys(level.notes).length + Object.keys(level.dimensions).length === 0,
  );
  return isEmpty && Object.keys(plan.networks).length === 0 && state.session.tool === 'select';
};
