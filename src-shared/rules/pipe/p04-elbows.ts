import { counted, pathBudgetRule } from './path-budget.ts';

/**
 * P4: the way to every nozzle has few enough elbows.
 * Measure: bends on the path. Limit: elbows per path, from the unit profile.
 * Not checked: no pipe leads to the nozzle, or the limit is blank.
 */
export const p04Elbows = pathBudgetRule({
  id: 'P4',
  title: 'Elbows per path',
  measure: 'count',
  formula: 'elbows between source and nozzle ≤ limit',
  limitKey: 'elbowsPerPath',
  spent: (path) => path.elbows,
  print: (value, limit) => counted(value, limit, 'elbow'),
  cure: 'Straighten the run.',
});
