import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FORGED_CLASSES, fittingRating_Pa, forgedRating_Pa, isClassForService } from '#shared/calculations/formulas/fitting-rating';
import { pipeRating_Pa } from '#shared/calculations/formulas/pipe-rating';
import { threadDepth_m } from '#shared/calculations/formulas/pipe-threads';

const PSI_Pa = 6894.757;
const STRESS_Pa = 15_000 * PSI_Pa;

describe('malleable threaded fittings', () => {
  // Memory.
  test.each([
    ['1/4', '150', 20, 300],
    ['3', '150', 65, 300],
    ['1/4', '300', 20, 2000],
    ['1', '300', 20, 2000],
    ['1-1/4', '300', 20, 1500],
    ['2', '300', 20, 1500],
    ['2-1/2', '300', 20, 1000],
    ['3', '300', 20, 1000],
    ['1', '300', 200, 1785, 'F'],
    ['2', '300', 200, 1350, 'F'],
    ['3', '300', 200, 910, 'F'],
    ['1', '300', 300, 1360, 'F'],
    ['2', '300', 300, 1050, 'F'],
    ['3', '300', 300, 735, 'F'],
    ['1', '300', 400, 935, 'F'],
    ['2', '300', 400, 750, 'F'],
    ['3', '300', 400, 560, 'F'],
    ['1', '300', 175, 1892.5, 'F'],
    ['2', '300', 250, 1200, 'F'],
    ['3', '300', 350, 647.5, 'F'],
  ] as const)('ratings (memory): NPS %s Class %s at %d is %d psi', (size, fittingClass, temperature, rating_psi, unit: 'C' | 'F' = 'C') => {
    const temperature_K = unit === 'F' ? (temperature + 459.67) / 1.8 : temperature + 273.15;
    expect(fittingRating_Pa(size, fittingClass, temperature_K) / 6894.757 / rating_psi).toBeCloseTo(1, 3);
  });

  test('a hotter fitting is never rated higher, and one outside the table is refused', () => {
    fc.assert(
      fc.property(fc.double({ min: 250, max: 470, noNaN: true }), fc.double({ min: 0, max: 7, noNaN: true }), (temperature_K, more_K) => {
        expect(fittingRating_Pa('2', '300', temperature_K + more_K)).toBeLessThanOrEqual(fittingRating_Pa('2', '300', temperature_K));
      }),
    );
    expect(() => fittingRating_Pa('4', '300', 293.15)).toThrow('nominalSize 4');
    expect(() => fittingRating_Pa('1', '150', 373.15)).toThrow('temperature_K');
  });

  test('Class 150 is never for this service', () => {
    expect(isClassForService('150')).toBe(false);
    expect((['300', '2000', '3000', '6000'] as const).every(isClassForService)).toBe(true);
  });
});

describe('forged threaded fittings', () => {
  // ASME B31.1 104.1.2 by hand for the pipe that ASME B16.11 (memory) pairs with the class, walls of ASME B36.10M (double extra strong: memory): 15 000 psi, y 0.4, mill tolerance 12.5 %.
  test.each([
    ['2000', '1/2', 2739],
    ['2000', '1', 2097],
    ['2000', '2', 1596],
    ['3000', '1/2', 4271],
    ['3000', '1', 3743],
    ['3000', '2', 3171],
    ['6000', '1/2', 8829],
    ['6000', '3/4', 7239],
    ['6000', '1', 6527],
    ['6000', '1-1/4', 5483],
    ['6000', '1-1/2', 5021],
    ['6000', '2', 4403],
    ['6000', '2-1/2', 4473],
    ['6000', '3', 4035],
    ['6000', '4', 3576],
  ] as const)('Class %s NPS %s is rated %d psi', (forgedClass, size, expected) => {
    expect(Math.abs(forgedRating_Pa(size, forgedClass, STRESS_Pa, 0.875, 0.4) / PSI_Pa - expected)).toBeLessThanOrEqual(1);
  });

  test('a higher class bears more, and Class 2000 as much as Schedule 80 pipe', () => {
    for (const size of ['1/2', '3/4', '1', '1-1/4', '1-1/2', '2', '2-1/2', '3', '4'] as const) {
      const [two = 0, three = 0, six = 0] = FORGED_CLASSES.map((each) => forgedRating_Pa(size, each, STRESS_Pa, 0.875, 0.4));
      expect(two).toBeLessThan(three);
      expect(three).toBeLessThan(six);
    }
    expect(forgedRating_Pa('1', '2000', STRESS_Pa, 1, 0)).toBeCloseTo(pipeRating_Pa(1.315 * 0.0254, 0.179 * 0.0254, threadDepth_m('1'), STRESS_Pa, 1, 0), 3);
  });

  test('a size without double extra strong pipe is refused', () => {
    expect(() => forgedRating_Pa('3/8', '6000', STRESS_Pa, 0.875, 0.4)).toThrow('nominalSize 3/8');
  });
});
