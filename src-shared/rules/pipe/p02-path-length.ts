import { pathBudgetRule } from './path-budget.ts';

/**
 * P2: the way to every nozzle is short enough.
 * Measure: developed length from the source to the orifice, drops and risers included [m].
 * Limit: longest path, from the unit profile.
 * Not checked: no pipe leads to the nozzle, or the limit is blank.
 */
export const p02PathLength = pathBudgetRule({
  id: 'P2',
  title: 'Path length',
  measure: 'length',
  formula: 'sum of pipe lengths in space from source to orifice ≤ limit',
  limitKey: 'pathLength_m',
  spent: (path) => path.length_m,
  print(value, limit, { say }) {
    const printed = say.against(value, limit);
    return { value: `${printed.value} of pipe`, limit: printed.limit };
  },
  cure: 'Reroute it.',
});
