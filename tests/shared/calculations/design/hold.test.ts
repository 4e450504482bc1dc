import { describe, expect, test } from 'vitest';
import type { Leakage } from '#shared/model/plan';
import { enclosureSums, known, reason, roomOf, wholePlan } from '../../../support/whole-plan.ts';

const sumsWith = (change: Partial<ReturnType<typeof roomOf>>) => {
  const built = wholePlan();
  Object.assign(roomOf(built), change);
  return enclosureSums(built);
};
const fan = (inward: readonly [number, number][], outward: readonly [number, number][]): Leakage => ({
  kind: 'door-fan',
  readings: [...inward.map(([pressure_Pa, flow_m3_s]) => ({ direction: 'in' as const, pressure_Pa, flow_m3_s })), ...outward.map(([pressure_Pa, flow_m3_s]) => ({ direction: 'out' as const, pressure_Pa, flow_m3_s }))],
});
/** Readings of a power law at pressures. */
const law = (k: number, n: number, pressures: readonly number[]): [number, number][] => pressures.map((p) => [p, k * p ** n]);

describe('leaks', () => {
  test('an area is a power law with the exponent of the basis, and an assumption', () => {
    const sums = known(sumsWith({ leakage: { kind: 'area', area_m2: 0.1, pressure_Pa: 10 } }).leaks);
    // 0.61·A·√(2·10/1.205)/10^0.6, by hand.
    expect(sums.coefficient).toBeCloseTo((0.061 * Math.sqrt(20 / 1.205)) / 10 ** 0.6, 9);
    expect(sums).toMatchObject({ exponent: 0.6, area_m2: expect.closeTo(0.1, 9) });
    expect(sums.remarks).toEqual([expect.stringMatching(/assumption/)]);
  });

  test('door-fan readings both ways give the mean of both', () => {
    const pressures = [10, 20, 30, 40, 50];
    const sums = known(sumsWith({ leakage: fan(law(0.05, 0.6, pressures), law(0.07, 0.7, pressures)) }).leaks);
    expect(sums).toMatchObject({ coefficient: expect.closeTo(0.06, 9), exponent: expect.closeTo(0.65, 9), remarks: [] });
  });

  test.each([0.5, 1])('an exponent of just %d is one, whatever the last digit of the readings', (n) => {
    for (const pressures of [[10, 20, 30, 40, 50], [7, 13, 29, 43, 61], [5, 50]]) expect(known(sumsWith({ leakage: fan(law(0.05, n, pressures), law(0.05, n, pressures)) }).leaks).exponent).toBeCloseTo(n, 9);
  });

  test('what is doubtful about them is said', () => {
    expect(known(sumsWith({ leakage: fan(law(0.05, 0.6, [10, 50]), law(0.05, 0.6, [10, 50])) }).leaks).remarks).toEqual(['Fewer readings than a door-fan test should have each way.']);
    const pressures = [10, 20, 30, 40, 50];
    expect(known(sumsWith({ leakage: fan(law(0.05, 0.45, pressures), law(0.05, 0.65, pressures)) }).leaks).remarks).toEqual(['An exponent outside 0.5 to 1: read the test again.']);
  });

  test.each<[string, Leakage, RegExp]>([
    ['nothing', { kind: 'unknown' }, /^the leakage of the enclosure is not known/],
    ['one way', fan(law(0.05, 0.6, [10, 50]), []), /at least two readings each way\.$/],
    ['one pressure', fan(law(0.05, 0.6, [10, 10]), law(0.05, 0.6, [10, 50])), /one pressure does not give an exponent/],
    ['an exponent that no leak has', fan(law(0.05, 1.3, [10, 50]), law(0.05, 1.2, [10, 50])), /an exponent of 1\.25, which no leak has/],
  ])('from %s they are not known, and neither is the hold', (_, leakage, because) => {
    const { leaks, hold } = sumsWith({ leakage });
    expect(reason(leaks)).toMatch(because);
    expect(reason(hold)).toBe(reason(leaks));
  });
});

describe('hold time', () => {
  test('ISO 14520-1 Annex E form (memory), sharp interface by hand', () => {
    const sums = known(sumsWith({}).hold);
    // ρ_e = 1/0.85828; ρ_m = 0.403·ρ_e + 0.597·1.205; F 0.5, n 0.6, H0 2.5, H = 2.2.
    const mixture = 0.403 / 0.85828 + 0.597 * 1.205;
    const k1 = (0.61 * 0.006 * Math.sqrt(20 / 1.205)) / 10 ** 0.6;
    const k2 = k1 * (1.205 / 2) ** 0.6;
    const k3 = (2 * 9.80665 * (1.205 - mixture)) / (mixture + 1.205);
    const sharp_s = ((40 / 2.5) * ((k3 * 2.5) ** 0.4 - (k3 * 2.2) ** 0.4)) / (0.4 * k2 * 0.5 * k3);
    expect(sums.sharp_s).toBeCloseTo(sharp_s, 3);
    expect(sums).toMatchObject({ model: 'wide', time_s: sums.wide_s, interface: 'rising', height_m: 2.5, lowestProtected_m: 0.3, required_s: 600, endConcentration_pct: expect.closeTo(34.255, 9) });
    expect(sums.wide_s).toBeLessThan(sums.sharp_s);
    // With that leakage the time is just what is required: it goes with one over the leaks.
    expect(sums.allowedLeakage_m2).toBeCloseTo((0.006 * sums.time_s) / 600, 9);
  });

  test.each(['sharp', 'wide', 'mixing'] as const)('model %s is the one that counts when chosen', (holdModel) => {
    const built = wholePlan();
    built.plan.basis.holdModel = holdModel;
    const sums = known(enclosureSums(built).hold);
    expect(sums.time_s).toBe(sums[`${holdModel}_s`]);
  });

  test('a protected void below is part of the height; heights count from the finished floor', () => {
    const underFloor = { depth_m: 0.3, isProtected: true, exclusion: null };
    const sums = known(sumsWith({ underFloor, lowestProtected_m: -0.2 }).hold);
    expect(sums).toMatchObject({ height_m: 2.8, lowestProtected_m: -0.2 });
    // Up to 0.1 m over the lowest floor of all: the same as a room of that height.
    const same = known(sumsWith({ height_m: 2.8, lowestProtected_m: 0.1 }).hold);
    expect(sums.sharp_s).toBeCloseTo(same.sharp_s, 3);
    expect(reason(sumsWith({ underFloor: { ...underFloor, isProtected: false }, lowestProtected_m: -0.2 }).hold)).toMatch(/lies outside the enclosure/);
  });

  test('a protected void above adds to it', () => {
    expect(known(sumsWith({ ceilingVoid: { depth_m: 0.4, isProtected: true, exclusion: null } }).hold).height_m).toBeCloseTo(2.9, 9);
  });

  test.each([
    ['the lowest protected place', { lowestProtected_m: null }, 'the lowest place that must stay protected is not known.'],
    ['one that lies in the room', { lowestProtected_m: 2.6 }, 'the lowest protected place lies outside the enclosure.'],
  ])('without %s it is not known', (_, change, because) => {
    expect(reason(sumsWith(change).hold)).toBe(because);
  });

  test('protected down to the floor, no time is left', () => {
    expect(known(sumsWith({ lowestProtected_m: 0 }).hold)).toMatchObject({ sharp_s: 0, wide_s: 0, allowedLeakage_m2: 0 });
  });
});
