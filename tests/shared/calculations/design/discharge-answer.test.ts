import { describe, expect, test } from 'vitest';
import { dischargeAnswer } from '#shared/calculations/design/discharge-answer';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { place3, planBuilder } from '../../../support/plan-builder.ts';
import { REGULATOR, designFor, known, networkOf, networkSums, sure, wholePlan } from '../../../support/whole-plan.ts';

describe('answer about the discharge of a plan', () => {
  test('tells what the transient gave, with the names of the plan', () => {
    const built = wholePlan();
    const answer = dischargeAnswer(designFor(built));
    if (typeof answer === 'string') throw new Error(answer);
    const { result, slow, nodeIds } = known(networkSums(built).discharge);
    expect(answer).toMatchObject({ timeTo95_s: slow.timeTo95_s, peakFlow_kg_s: result.peakFlow_kg_s, enclosurePeakPressure_Pa: result.enclosures[0]?.peakOverpressure_Pa });
    expect(answer.networks).toHaveLength(1);
    expect(answer.nozzles).toMatchObject([{ network: 'Network 1', name: 'N1', isChoked: true, mass_kg: result.nozzles[0]?.mass_kg }]);
    expect(answer.networks[0]?.spaces).toMatchObject([{ name: 'Room 1', timeTo95_s: slow.spaces[0]?.timeTo95_s, finalConcentration_pct: slow.spaces[0]?.concentration_pct.at(-1) }]);
    expect(answer.nodes.map(({ node }) => node)).toEqual(nodeIds);
    expect(answer.networks[0]?.massDischarged_kg).toBeCloseTo(result.massAtStart_kg - result.massLeft_kg, 12);
  });

  test('of several networks the worst counts, and one that never fills its space leaves no time', () => {
    const built = wholePlan()
      .network({ assembly: [{ ...REGULATOR }] })
      .cylinder(4.8, 0.5, 0)
      .run([place3(4.8, 0.5, 2), place3(4.8, 0.5, 2.3), place3(3.5, 0.5, 2.3), place3(3.5, 0.5, 2.2)])
      .nozzle(3.5, 0.5, 2.2, [0, Math.PI], { orificeArea_m2: 1e-5 });
    const answer = dischargeAnswer(designFor(built));
    if (typeof answer === 'string') throw new Error(answer);
    const times = answer.networks.map(({ timeTo95_s }) => sure(timeTo95_s));
    expect(answer.timeTo95_s).toBe(Math.max(...times));
    expect(answer.peakFlow_kg_s).toBe(Math.max(...answer.networks.map(({ peakFlow_kg_s }) => peakFlow_kg_s)));
    expect(answer.nozzles.map(({ network }) => network)).toEqual(['Network 1', 'Network 2']);
    const worked = workedDischarge();
    const late = dischargeAnswer(
      designFor(built, (network, input) => {
        const found = worked(network, input);
        return typeof found === 'object' && network === `${built.networkId}, warmed` ? { ...found, result: { ...found.result, timeTo95_s: undefined } } : found;
      }),
    );
    expect(late).toMatchObject({ timeTo95_s: null, networks: [{ timeTo95_s: times[0] }, { timeTo95_s: null }] });
  });

  test('says in a sentence why there is none', () => {
    expect(dischargeAnswer(designFor(planBuilder()))).toBe('The plan has no pipe network yet.');
    const built = wholePlan();
    sure(Object.values(networkOf(built).nozzles)[0]).orificeArea_m2 = null;
    expect(dischargeAnswer(designFor(built))).toBe('The discharge of “Network 1” cannot be worked out: the orifice of nozzle N1 is not chosen.');
  });
});
