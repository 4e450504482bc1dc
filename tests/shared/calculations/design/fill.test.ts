import { describe, expect, test } from 'vitest';
import { enclosureSums, known, reason, roomOf, wholePlan } from '../../../support/whole-plan.ts';

const fillWith = (change: (built: ReturnType<typeof wholePlan>) => void) => {
  const built = wholePlan();
  change(built);
  return enclosureSums(built).fill;
};

describe('band of a fixed fill', () => {
  // By hand: 24.7·0.87879/ln(20.95/12) and 24.7·0.85242/ln(100/59.7).
  test.each([
    ['40.3 %', 40.3, 38.95, 40.82],
    ['37.2 %', 37.2, 38.95, 45.26],
  ])('one cylinder at %s', (_, concentration_pct, least_m3, greatest_m3) => {
    const sums = known(fillWith((built) => Object.assign(roomOf(built), { concentration_pct })));
    expect(sums.least_m3).toBeCloseTo(least_m3, 2);
    expect(sums.greatest_m3).toBeCloseTo(greatest_m3, 2);
    expect(sums).toMatchObject({ cylinders: 1, oxygenLimit_pct: 12, fitting: [1] });
    expect(sums.bands.map(({ cylinders }) => cylinders)).toEqual([1, 2]);
  });

  test('at 41.9 % nothing is between', () => {
    const { least_m3, greatest_m3, fitting } = known(fillWith((built) => Object.assign(roomOf(built), { concentration_pct: 41.9 })));
    expect(least_m3).toBeGreaterThan(greatest_m3);
    expect(fitting).toEqual([]);
  });

  test('counts on the stay that is chosen, as the basis judges it', () => {
    const limit = (exposureBy: 'stricter' | 'oxygen' | 'concentration') =>
      known(
        fillWith((built) => {
          roomOf(built).people.exposure = '3-min';
          built.plan.basis.exposureBy = exposureBy;
        }),
      );
    expect(limit('oxygen').oxygenLimit_pct).toBe(10);
    expect(limit('oxygen').least_m3).toBeCloseTo(29.35, 2);
    // 52 % leaves 20.95·0.48.
    expect(limit('concentration').oxygenLimit_pct).toBeCloseTo(10.056, 9);
    expect(limit('stricter').oxygenLimit_pct).toBeCloseTo(10.056, 9);
  });

  test('at altitude the oxygen of thinner air counts, whichever way it is judged', () => {
    const high = (exposureBy: 'oxygen' | 'concentration') =>
      known(
        fillWith((built) => {
          Object.assign(roomOf(built), { altitude_m: 1500 });
          built.plan.basis.exposureBy = exposureBy;
        }),
      );
    // 43 % is 43 % at any height: the volume only goes with the pressure. 12 % is left sooner.
    expect(high('concentration').least_m3).toBeCloseTo((24.7 * 0.87879) / 0.83 / Math.log(1 / 0.57), 0);
    expect(high('oxygen').least_m3).toBeCloseTo((24.7 * 0.87879) / 0.83 / Math.log((20.95 * 0.83) / 12), 0);
  });

  test('has no band where nobody can be inside, or where the air is too thin', () => {
    expect(reason(fillWith((built) => Object.assign(roomOf(built).people, { exposure: 'none' })))).toMatch(/^nobody can be inside/);
    expect(reason(fillWith((built) => Object.assign(roomOf(built), { altitude_m: 6000 })))).toMatch(/altitude/);
  });
});
