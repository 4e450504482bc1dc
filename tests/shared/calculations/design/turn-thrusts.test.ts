import { expect, test } from 'vitest';
import { place3 } from '../../../support/plan-builder.ts';
import { known, networkOf, networkSums, reason, sure, wholePlan } from '../../../support/whole-plan.ts';

test('an elbow is pushed by its flow, and by the pressure that its pipe carries (momentum balance, worked by hand)', () => {
  const built = wholePlan();
  const { turnThrusts, discharge } = networkSums(built);
  const { result } = known(discharge);
  const [elbow] = known(turnThrusts);
  const { flow_kg_s, velocity_m_s, support_N, pipe_N, area_m2, fitting } = sure(elbow);
  expect(fitting.turn_rad).toBeCloseTo(Math.PI / 2, 9);
  expect(area_m2).toBeCloseTo((Math.PI / 4) * 0.0209296 ** 2, 9);
  expect(flow_kg_s).toBe(result.nozzles[0]?.peakFlow_kg_s);
  // Nitrogen of 61 bar a little below 0 °C weighs about 77 kg/m³ (Span et al. 2000, grid between 50 and 100 bar).
  expect(flow_kg_s / (velocity_m_s * area_m2)).toBeGreaterThan(74);
  expect(flow_kg_s / (velocity_m_s * area_m2)).toBeLessThan(80);
  expect(support_N).toBeCloseTo(flow_kg_s * velocity_m_s * Math.SQRT2, 6);
  expect(pipe_N - support_N).toBeCloseTo((result.peakPipePressure_Pa - 101_325) * area_m2 * Math.SQRT2, 6);
});

test('an elbow before a tee turns the flow of both its nozzles', () => {
  const built = wholePlan();
  const before = known(networkSums(built).turnThrusts);
  const network = networkOf(built);
  const [nozzle] = Object.values(network.nozzles);
  const at = sure(network.nodes[sure(nozzle).node]).at;
  built.run([place3(at.x, at.y, at.z + 0.1), place3(at.x, at.y + 1, at.z + 0.1), place3(at.x, at.y + 1, at.z)]).nozzle(at.x, at.y + 1, at.z, [0, Math.PI], { orificeArea_m2: sure(nozzle).orificeArea_m2 });
  const turns = networkSums(built).turnThrusts;
  if (!turns.isKnown) throw new Error(turns.because);
  const first = (list: typeof before) => sure(list.find(({ fitting }) => fitting.node === sure(before[0]).fitting.node));
  expect(first(turns.sums).flow_kg_s).toBeGreaterThan(1.5 * first(before).flow_kg_s);
});

test('without a discharge there is none', () => {
  expect(reason(networkSums(wholePlan(), () => undefined).turnThrusts)).toBe('the discharge is being worked out.');
});
