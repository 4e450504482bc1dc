import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pipeRating_Pa } from '#shared/calculations/formulas/pipe-rating';
import { pipeRatingTopic } from '#shared/calculations/pipe-rating';
import { numberOf, runTopic } from '../../support/run-topic.ts';

const PSI_Pa = 6894.757;
const USUAL = { joint: 'threaded', millFactor: 0.875, y: 0.4 };
const rating_psi = (input: Readonly<Record<string, unknown>>): number => numberOf(runTopic(pipeRatingTopic, { ...USUAL, ...input }), 'pipePressure_Pa') / PSI_Pa;

describe('pipe rating', () => {
  // ASME B31.1 104.1.2 with y 0.4 (memory), mill tolerance 12.5 %, walls of ASME B36.10M, thread depth 0.8/n: computed by hand, psi.
  // Columns: Schedule 40 and 80 threaded at 15 000 psi, at 17 100 psi, nominal wall simple form at 15 000 psi, welded at 15 000 psi.
  test.each([
    ['1/2', 1417, 2739, 1615, 3123, 1852, 3209, 3747, 5235],
    ['3/4', 1232, 2357, 1404, 2687, 1596, 2767, 3055, 4290],
    ['1', 1099, 2097, 1253, 2391, 1447, 2497, 2857, 3950],
    ['1-1/4', 982, 1850, 1119, 2109, 1273, 2195, 2353, 3285],
    ['1-1/2', 927, 1742, 1057, 1986, 1191, 2059, 2116, 2983],
    ['2', 842, 1596, 960, 1819, 1067, 1875, 1783, 2575],
  ])('ASME B31.1: NPS %s', (nominalSize, ...expected) => {
    const forms = [{ allowableStress_psi: 15_000 }, { allowableStress_psi: 17_100 }, { allowableStress_psi: 15_000, millFactor: 1, y: 0 }, { allowableStress_psi: 15_000, joint: 'welded' }];
    const found = forms.flatMap((form) => ['40', '80'].map((schedule) => rating_psi({ nominalSize, schedule, ...form })));
    for (const [index, value] of found.entries()) expect(Math.abs(value - (expected[index] ?? Number.NaN))).toBeLessThanOrEqual(1);
  });

  test.each([
    ['ERW, mill tolerance, simple form', 12_800, 0.875, 1165],
    ['newer stress, nominal wall', 17_100, 1, 2111],
  ])('what is assumed moves NPS 1/2 Schedule 40: %s', (_, allowableStress_psi, millFactor, expected) => {
    expect(Math.abs(rating_psi({ nominalSize: '1/2', schedule: '40', allowableStress_psi, millFactor, y: 0 }) - expected)).toBeLessThanOrEqual(1);
  });

  test('inverse: the wall of the rated pressure is the wall it was rated for', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.002, max: 0.008, noNaN: true }), fc.double({ min: 0, max: 0.001, noNaN: true }), (wall_m, thread_m) => {
        const rated_Pa = pipeRating_Pa(0.0334, wall_m, thread_m, 1e8, 0.875, 0.4);
        const needed_m = (rated_Pa * 0.0334) / (2 * (1e8 + rated_Pa * 0.4)) + thread_m;
        expect(needed_m).toBeCloseTo(0.875 * wall_m, 12);
        expect(pipeRating_Pa(0.0334, wall_m + 0.0001, thread_m, 1e8, 0.875, 0.4)).toBeGreaterThan(rated_Pa);
      }),
    );
  });

  test('a pipe cut through by its thread bears nothing', () => {
    expect(pipeRating_Pa(0.02, 0.001, 0.001, 1e8, 1, 0.4)).toBe(0);
  });

  test('the weaker of pipe and fitting limits the line', () => {
    const strong = runTopic(pipeRatingTopic, { ...USUAL, nominalSize: '1', schedule: '80', allowableStress_psi: 15_000, joint: 'threaded', fittingClass: '300' });
    expect(numberOf(strong, 'fittingPressure_Pa') / PSI_Pa).toBeCloseTo(2000, 1);
    expect(numberOf(strong, 'lineLimit_Pa')).toBe(numberOf(strong, 'fittingPressure_Pa'));
    expect(strong.weakest).toBe('fitting');
    const weak = runTopic(pipeRatingTopic, { ...USUAL, nominalSize: '1', schedule: '40', allowableStress_psi: 15_000, joint: 'threaded', fittingClass: '300' });
    expect([weak.lineLimit_Pa, weak.weakest]).toEqual([weak.pipePressure_Pa, 'pipe']);
    expect(runTopic(pipeRatingTopic, { ...USUAL, nominalSize: '4', schedule: '80', allowableStress_psi: 15_000, joint: 'welded' }).fittingPressure_Pa).toBeNull();
  });

  // ASME B31.1 by hand for the pipe that ASME B16.11 (memory) pairs with the class.
  test('a forged fitting is rated as the pipe it pairs with', () => {
    const pipe = { ...USUAL, nominalSize: '1', schedule: '40', allowableStress_psi: 15_000, fittingClass: '2000' };
    const result = runTopic(pipeRatingTopic, pipe);
    expect(numberOf(result, 'fittingPressure_Pa') / PSI_Pa).toBeCloseTo(2097.23, 1);
    expect([result.weakest, result.fittingForService]).toEqual(['pipe', true]);
    expect(numberOf(runTopic(pipeRatingTopic, { ...pipe, fittingClass: 3000 }), 'fittingPressure_Pa') / PSI_Pa).toBeCloseTo(3743.18, 1);
  });

  test('Class 150 is marked as not for this service, and no class says nothing', () => {
    const pipe = { ...USUAL, nominalSize: '1', schedule: '40', allowableStress_psi: 15_000 };
    const weak = runTopic(pipeRatingTopic, { ...pipe, fittingClass: '150' });
    expect(numberOf(weak, 'fittingPressure_Pa') / PSI_Pa).toBeCloseTo(300, 3);
    expect([weak.weakest, weak.fittingForService]).toEqual(['fitting', false]);
    expect(runTopic(pipeRatingTopic, pipe).fittingForService).toBeNull();
  });

  test('units in any form give the same answer', () => {
    const at = (stress: Readonly<Record<string, number>>): number => rating_psi({ nominalSize: '2', schedule: '160', ...stress });
    expect(at({ allowableStress_MPa: 103.421355 })).toBeCloseTo(at({ allowableStress_psi: 15_000 }), 2);
    expect(at({ allowableStress_Pa: 103_421_355 })).toBeCloseTo(at({ allowableStress_MPa: 103.421355 }), 6);
  });
});
