import { defineRule, notChecked } from '../rule.ts';
import { type DrawnCircuit, drawnCircuitSubjects } from './drawn-circuits.ts';

/**
 * L7: taking the actuator off its valve shows at the panel, so that nobody leaves a unit that cannot release.
 * Measure: what the plan says of it. Not checked: nobody has said.
 */
export const l07ActuatorWatched = defineRule<DrawnCircuit>({
  id: 'L7',
  title: 'Actuator watched',
  severity: 'stop',
  measure: 'count',
  basis: {
    formula: 'removal of the actuator gives a signal at the panel',
    source: 'NFPA 2001, supervision of the removal of an electric actuator from the valve that it opens (memory: asked for since about 2016)',
    caution: 'Test it with the actuator off the valve, as the unit’s manual says, and put the actuator back last of all.',
  },
  subjects: drawnCircuitSubjects,
  check({ release: { isActuatorWatched }, place }) {
    const inputs = [{ label: 'Taking the actuator off shows at the panel', value: isActuatorWatched === null ? 'not known' : isActuatorWatched ? 'yes' : 'no', source: 'plan' }];
    if (isActuatorWatched === null) return notChecked('nobody has said whether taking the actuator off its valve shows at the panel.', place);
    if (isActuatorWatched) return { kind: 'judged', isKept: true, text: 'Taking the actuator off its valve shows at the panel.', inputs, place };
    return {
      kind: 'judged',
      isKept: false,
      text: 'Taking the actuator off its valve does not show at the panel. Add a switch that shows it.',
      inputs,
      place,
      cure: { kind: 'advice', text: 'Add the switch that the maker of the unit lists for it, and lead it to the panel.' },
    };
  },
});
