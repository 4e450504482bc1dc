import { describe, expect, test } from 'vitest';
import { known, networkOf, networkSums, reason, sure, wholePlan } from '../../../support/whole-plan.ts';

const nozzleOf = (built: ReturnType<typeof wholePlan>) => sure(Object.values(networkOf(built).nozzles)[0]);

describe('thrust of a nozzle', () => {
  test('by hand: two holes against each other cancel until one is blocked', () => {
    const { thrusts, discharge, supports } = networkSums(wholePlan());
    const [thrust] = known(thrusts);
    const peak_Pa = sure(known(discharge).result.nozzles[0]).peakPressure_Pa;
    // (1 + γ)·(2/(γ + 1))^(γ/(γ − 1))·p·A·C − p_a·A, half of the area in each hole.
    const hole_N = (2.4 * (2 / 2.4) ** 3.5 * 0.85 * peak_Pa - 101_325) * 1.1e-5;
    expect(thrust).toMatchObject({ name: 'N1', hole_N: expect.closeTo(hole_N, 6), open_N: expect.closeTo(0, 9), blocked_N: expect.closeTo(hole_N, 6) });
    expect(sure(thrust).support).toBe(known(supports).held[0]);
  });

  test('holes to one side push most with all of them open', () => {
    const built = wholePlan();
    nozzleOf(built).holes_rad = [0, 0];
    const [thrust] = known(networkSums(built).thrusts);
    expect(sure(thrust).open_N).toBeCloseTo(2 * sure(thrust).hole_N, 6);
    expect(sure(thrust).blocked_N).toBe(sure(thrust).open_N);
  });

  test('without supports it is known all the same, but nothing that takes it', () => {
    const built = wholePlan();
    networkOf(built).supports = {};
    expect(known(networkSums(built).thrusts)[0]).toMatchObject({ support: undefined });
  });

  test('is not known without holes, nor without a discharge', () => {
    const built = wholePlan();
    nozzleOf(built).holes_rad = [];
    expect(reason(networkSums(built).thrusts)).toBe('the holes of nozzle N1 are not known.');
    expect(reason(networkSums(wholePlan(), () => undefined).thrusts)).toBe('the discharge is being worked out.');
  });
});
