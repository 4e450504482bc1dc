import { counted, pathBudgetRule } from './path-budget.ts';

/**
 * P5: the way to every nozzle passes few enough tees.
 * Measure: tees on the path, through or branch. Limit: tees per path, from the unit profile.
 * Not checked: no pipe leads to the nozzle, or the limit is blank.
 */
export const p05Tees = pathBudgetRule({
  id: 'P5',
  title: 'Tees per path',
  measure: 'count',
  formula: 'tees between source and nozzle ≤ limit',
  limitKey: 'teesPerPath',
  spent: (path) => path.tees,
  print: (value, limit) => counted(value, limit, 'tee'),
  cure: 'Branch the tree another way.',
});
