import { allowedFill, allowedFillBasis } from '../../calculations/formulas/conduit-fill.ts';
import { atMost, defineRule, notChecked } from '../rule.ts';
import { slackOf } from '../slack.ts';
import { type ReleasingCircuit, circuitSubjects } from './releasing-circuits.ts';

/**
 * L3: the conduit of the releasing circuit is not too full.
 * Measure: share of the conduit's inside that its wires take [-].
 * Limit: by number of wires.
 * Not checked: conduit or wires are not chosen, or the tables do not have them.
 */
export const l03ConduitFill = defineRule<ReleasingCircuit>({
  id: 'L3',
  title: 'Conduit fill',
  severity: 'stop',
  measure: 'ratio',
  basis: { formula: `area of the wires ÷ inside of the conduit ≤ limit; ${allowedFillBasis.formula}`, source: allowedFillBasis.source, caution: allowedFillBasis.caution },
  subjects: circuitSubjects,
  check({ network: { conduit } }, { say }) {
    if (!conduit.isKnown) return notChecked(conduit.because);
    const { area_m2, allowed_m2, conductors } = conduit.sums;
    if (conductors < 1) return notChecked('no wire is listed in the conduit.');
    const allowed = allowedFill(conductors);
    const figures = atMost((area_m2 / allowed_m2) * allowed, { value: allowed, source: allowedFillBasis.source }, slackOf(allowed));
    const { value: fill, limit: most } = say.quantityAgainst(figures.measured, allowed, 'ratio');
    const wires = conductors === 1 ? 'One wire fills' : `${conductors} wires fill`;
    return {
      ...figures,
      text: figures.isKept ? `${wires} ${fill} of the conduit; ${most} is allowed.` : `${wires} ${fill} of the conduit; only ${most} is allowed. Use a larger one.`,
      cure: figures.isKept ? undefined : { kind: 'advice', text: 'Use a larger conduit, or a second one.' },
    };
  },
});
