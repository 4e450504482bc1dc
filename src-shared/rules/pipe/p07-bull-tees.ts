import { counted, pathBudgetRule } from './path-budget.ts';

/**
 * P7: the way to every nozzle passes no more bull-head tees than the manual allows.
 * Measure: tees on the path that are fed through their branch and leave both ways along their run.
 * Limit: bull-head tees per path, from the unit profile; 0 where it allows none.
 * Not checked: no pipe leads to the nozzle, or the limit is blank.
 */
export const p07BullTees = pathBudgetRule({
  id: 'P7',
  title: 'Tee attitude',
  measure: 'count',
  formula: 'tees between source and nozzle that are fed through their branch ≤ limit',
  limitKey: 'bullTeesPerPath',
  spent: ({ nodes }, { fittings }) => fittings.filter(({ isBull, node }) => isBull && nodes.includes(node)).length,
  print: (value, limit) => counted(value, limit, 'bull-head tee'),
  cure: 'Feed the tee along its run, or branch the tree another way.',
});
