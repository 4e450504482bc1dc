import { describe, expect, test } from 'vitest';
import { enclosureSums, known, roomOf, wholePlan } from '../../../support/whole-plan.ts';

describe('people in an enclosure', () => {
  test('breathe least when it is hottest: by hand, 24.7 kg in 40 m³', () => {
    const { cold, hot, exposure, longest_s } = known(enclosureSums(wholePlan()).people);
    // C = 100·(1 − e^(−m·s/V)), O2 = 20.95·e^(−m·s/V).
    expect(hot.oxygen_pct).toBeCloseTo(20.95 * Math.exp((-24.7 * 0.87879) / 40), 9);
    expect(hot.concentration_pct).toBeCloseTo(100 - 100 * Math.exp((-24.7 * 0.87879) / 40), 9);
    expect(hot.oxygenSeaLevel_pct).toBe(hot.oxygen_pct);
    expect(cold.oxygen_pct).toBeCloseTo(20.95 * Math.exp((-24.7 * 0.85242) / 40), 9);
    expect([exposure, longest_s]).toEqual(['5-min', 300]);
  });

  test('at altitude a kilogram takes up more room, and the same share of oxygen is less', () => {
    const built = wholePlan();
    roomOf(built).altitude_m = 1500;
    const { agent, people } = enclosureSums(built);
    const { altitudeFactor } = known(agent);
    const { hot } = known(people);
    expect(hot.oxygen_pct).toBeCloseTo(20.95 * Math.exp((-24.7 * 0.87879) / altitudeFactor / 40), 9);
    expect(hot.oxygenSeaLevel_pct).toBeCloseTo(hot.oxygen_pct * altitudeFactor, 9);
  });

  test('where concentration and oxygen judge differently, the stricter stands unless another is chosen', () => {
    const built = wholePlan();
    // 43 % leaves 11.94 %: 24.7·0.87879/ln(1/0.57) m³ at the hottest, a little more for 42.9 %.
    roomOf(built).height_m = (24.7 * 0.87879) / Math.log(1 / 0.571) / 16;
    const people = () => known(enclosureSums(built).people);
    expect(people()).toMatchObject({ doBandsAgree: false, exposure: '3-min', longest_s: 180 });
    built.plan.basis.exposureBy = 'concentration';
    expect(people().exposure).toBe('5-min');
    built.plan.basis.exposureBy = 'oxygen';
    expect(people().exposure).toBe('3-min');
  });

  test.each(['concentration', 'oxygen', 'stricter'] as const)('the hottest hour decides, judged by %s', (exposureBy) => {
    const built = wholePlan();
    built.plan.basis.exposureBy = exposureBy;
    // 43.5 % when hottest, less than 43 % when coldest.
    roomOf(built).height_m = (24.7 * 0.87879) / Math.log(1 / 0.565) / 16;
    const { cold, hot, exposure } = known(enclosureSums(built).people);
    expect([cold.byConcentration, cold.byOxygen, hot.byConcentration, hot.byOxygen]).toEqual(['5-min', '5-min', '3-min', '3-min']);
    expect(exposure).toBe('3-min');
  });
});
