import { NITROGEN_GREATEST_K, NITROGEN_GREATEST_Pa, NITROGEN_LEAST_K, NITROGEN_LEAST_Pa } from './formulas/nitrogen.ts';
import { NITROGEN_HEAT_RATIO, chokedPressureRatio, chokedPressureRatioBasis, idealOrificeFlowBasis, idealOrificeFlow_kg_s, realOrificeFlowBasis, realOrificeFlow_kg_s } from './formulas/orifice.ts';
import { numberGiven } from './given.ts';
import type { Topic } from './topic.ts';

/** The real flow, or null where the equation of the gas does not reach: for values that the ideal gas has already taken. */
function realFlow_kg_s(...given: Parameters<typeof realOrificeFlow_kg_s>): number | null {
  try {
    return realOrificeFlow_kg_s(...given);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Nitrogen through an orifice, choked or not, as an ideal and as a real gas. */
export const orificeTopic: Topic = {
  id: 'orifice',
  title: 'Nitrogen through an orifice',
  inputs: [
    { kind: 'number', name: 'diameter', quantity: 'length', least: 1e-5, greatest: 1, help: 'Diameter of the orifice' },
    { kind: 'number', name: 'dischargeCoefficient', quantity: 'ratio', least: 0.01, greatest: 1, help: "The orifice's own, from its listing" },
    { kind: 'number', name: 'pressure', quantity: 'pressure', least: NITROGEN_LEAST_Pa, greatest: NITROGEN_GREATEST_Pa, help: 'Pressure before the orifice, at rest' },
    { kind: 'number', name: 'temperature', quantity: 'temperature', least: NITROGEN_LEAST_K, greatest: NITROGEN_GREATEST_K, help: 'Temperature before the orifice' },
    { kind: 'number', name: 'backPressure', quantity: 'pressure', least: 0, greatest: NITROGEN_GREATEST_Pa, help: 'Pressure behind the orifice, not above that before it' },
  ],
  outputs: {
    massFlow_kg_s: 'mass flow as an ideal gas',
    choked: 'whether a lower pressure behind it would draw no more, as an ideal gas',
    realToIdealFlux: 'how many times as much passes as a real gas; null where there is no flow or the gas would cool below 126.2 K in the orifice',
    realMassFlow_kg_s: 'mass flow as a real gas; null where the gas would cool below 126.2 K in the orifice',
    chokePressure_Pa: 'pressure behind it below which it chokes, as an ideal gas',
  },
  bases: [idealOrificeFlowBasis, chokedPressureRatioBasis, realOrificeFlowBasis],
  run(values) {
    const area_m2 = (Math.PI / 4) * numberGiven(values, 'diameter') ** 2;
    const pressure_Pa = numberGiven(values, 'pressure');
    const backPressure_Pa = numberGiven(values, 'backPressure');
    const given = [area_m2, numberGiven(values, 'dischargeCoefficient'), pressure_Pa, numberGiven(values, 'temperature'), backPressure_Pa] as const;
    const massFlow_kg_s = idealOrificeFlow_kg_s(...given);
    const realMassFlow_kg_s = realFlow_kg_s(...given);
    const chokePressure_Pa = pressure_Pa * chokedPressureRatio(NITROGEN_HEAT_RATIO);
    return {
      massFlow_kg_s,
      choked: backPressure_Pa <= chokePressure_Pa,
      realToIdealFlux: realMassFlow_kg_s === null || massFlow_kg_s === 0 ? null : realMassFlow_kg_s / massFlow_kg_s,
      realMassFlow_kg_s,
      chokePressure_Pa,
    };
  },
};
