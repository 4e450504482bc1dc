import type { Design } from '../calculations/design/design.ts';
import { designSourceOf } from '../calculations/formulas/design-concentration.ts';
import type { Derived } from '../derived/derived.ts';
import type { Assumption } from './assumption.ts';

const inSums = (id: string, name: string, taken: string, affects: string, change: string): Assumption => ({ id: `sums/${id}`, topic: 'sum', name, taken, affects, change });

/** How the sums and checks go about it, wherever the plan gives them something to work on. */
export function sumAssumptions({ plan, nozzles, networks, spaces }: Derived, { networks: worked, enclosures }: Design): Assumption[] {
  const source = designSourceOf('IG-100', plan.basis.designSet);
  const runs = worked.some(({ discharge }) => discharge.isKnown);
  const altitudes = enclosures.some(({ agent }) => agent.isKnown);
  return [
    ...(spaces.length > 0 && source.includes('memory')
      ? [{ ...inSums('concentrations', 'Design concentrations', `They were set down from memory: ${source}.`, 'The least concentration, and with it the agent needed.', 'Compare them with the adopted edition; choose another in the basis of design.'), at: { kind: 'basis' as const, label: 'Design concentrations and discharge time' } }]
      : []),
    ...(runs
      ? [inSums('discharge', 'Discharge', 'It is a preliminary calculation: one dimension, steady flow in the pipe at each moment, gas of one temperature in each room. It is run once with cold gas for flow and pressures, and once with warm gas for the time.', 'Time of the discharge, share of each nozzle, pressures, thrust, and the room’s pressure.', 'The listed unit’s own program governs.')]
      : []),
    ...(altitudes ? [inSums('mixing', 'Agent quantity', 'The gas is taken to mix evenly in each room while air leaves with it, and all that is installed to come out.', 'The concentration that is reached, and the oxygen left for people.', 'An oxygen meter shows it at the acceptance test.')] : []),
    ...(nozzles.length > 0
      ? [inSums('jets', 'Jets and coverage', 'Holes are taken to blow level. What stands as high as the orifice stops a jet and hides the floor behind it; lower things do not.', 'Coverage of the floor and the free way of each jet.', 'Look at the jets of tilted nozzles and of things just below the orifice by hand.')]
      : []),
    ...(networks.some(({ pipes }) => pipes.length > 0)
      ? [inSums('assembly-size', 'Discharge assembly', 'Its parts are taken as bodies of an ordinary size, since nobody enters how thick they are.', 'Working space and headroom beside the cylinders.', 'Compare with the drawings of the unit’s maker.')]
      : []),
  ];
}
