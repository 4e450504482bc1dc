import { describe, expect, test } from 'vitest';
import type { Release } from '#shared/model/plan';
import type { PlanBuilder } from '../../../support/plan-builder.ts';
import { known, networkOf, networkSums, profileOf, reason, sure, wholePlan } from '../../../support/whole-plan.ts';

const releaseOf = (built: PlanBuilder): Release => sure(networkOf(built).release);
const sumsWith = (change: (built: PlanBuilder) => void = () => undefined) => {
  const built = wholePlan();
  change(built);
  return networkSums(built);
};

describe('releasing circuit', () => {
  test('NEC Chapter 9 Table 8 by hand: 3.07 Ω per 1000 ft of 14 AWG, each load at its place', () => {
    const sums = known(sumsWith().release);
    const ohm_m = 3.07 / 304.8;
    expect(sums.resistance_ohm_m).toBeCloseTo(ohm_m, 9);
    // Both currents to 10 m, that of the solenoid on to 20 m, there and back.
    const [at10, at20] = [2 * ohm_m * 10 * 2, 2 * ohm_m * 10 * 2 + 2 * ohm_m * 10 * 1.5];
    expect(sums.devices).toMatchObject([
      { name: 'Solenoid', current_A: 1.5, voltage_V: expect.closeTo(20.4 - at20, 9), least_V: 18 },
      { name: 'Sounder', current_A: 0.5, voltage_V: expect.closeTo(20.4 - at10, 9), least_V: 16 },
    ]);
    expect(sums).toMatchObject({ drop_V: expect.closeTo(at20, 9), end_V: expect.closeTo(20.4 - at20, 9), lumpedDrop_V: expect.closeTo(2 * ohm_m * 20 * 2, 9), total_A: 2 });
  });

  test('a figure on the plan beats that of the manual, 0 included', () => {
    const sums = known(sumsWith((built) => Object.assign(sure(releaseOf(built).devices[0]), { current_A: 0, leastVoltage_V: 12 })).release);
    expect(sums.devices[0]).toMatchObject({ current_A: 0, least_V: 12 });
  });

  test('where nobody stated a least voltage there is none', () => {
    expect(known(sumsWith((built) => void delete profileOf(built).limits.solenoidLeastVoltage_V).release).devices[0]?.least_V).toBeUndefined();
  });

  test.each<[string, (built: PlanBuilder) => void, string]>([
    ['a circuit', (built) => { networkOf(built).release = null; }, 'the releasing circuit of “Network 1” is not drawn up.'],
    ['devices', (built) => { releaseOf(built).devices = []; }, 'the releasing circuit has no device.'],
    ['a distance', (built) => { sure(releaseOf(built).devices[1]).distance_m = null; }, 'how far “Sounder” is from the panel is not known.'],
    ['a current', (built) => { sure(releaseOf(built).devices[1]).current_A = null; }, 'the current of “Sounder” is not known.'],
    ['the current of the manual', (built) => void delete profileOf(built).limits.solenoidCurrent_A, 'the current of “Solenoid” is not known.'],
  ])('without %s it is not known', (_, change, because) => {
    expect(reason(sumsWith(change).release)).toBe(because);
  });
});

describe('conduit', () => {
  test('NEC Chapter 9: four 14 AWG THHN of 0.0097 in² in EMT 1/2 of 0.304 in², 40 %', () => {
    const sums = known(sumsWith().conduit);
    expect(sums.conductors).toBe(4);
    expect(sums.area_m2 / 0.0254 ** 2).toBeCloseTo(4 * 0.0097, 4);
    expect(sums.allowed_m2 / 0.0254 ** 2).toBeCloseTo(0.304 * 0.4, 3);
  });

  test.each<[string, (built: PlanBuilder) => void, RegExp]>([
    ['a circuit', (built) => { networkOf(built).release = null; }, /^the releasing circuit of “Network 1” is not drawn up\.$/],
    ['conduit', (built) => { releaseOf(built).conduit = null; }, /^no conduit is chosen for the releasing circuit\.$/],
    ['wires', (built) => { releaseOf(built).conductors = []; }, /^no conductor is listed in the conduit\.$/],
    ['one of the table', (built) => { releaseOf(built).conduit = { kind: 'EMT', size: '3/8' }; }, /^the formula does not hold here\./],
  ])('without %s it is not known', (_, change, because) => {
    expect(reason(sumsWith(change).conduit)).toMatch(because);
  });
});
