import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PIPE_ROUGHNESS_m, churchillFriction, colebrookFriction, flowRegime, fullyRoughFriction, haalandFriction } from '#shared/calculations/formulas/friction';
import { type PipeSize, pipeBore_m } from '#shared/profile/pipe-table';

const anyRoughness = fc.double({ min: 0, max: 0.1, noNaN: true });
/** Reynolds numbers spread evenly over the powers of ten. */
const reynoldsBetween = (least: number, greatest: number): fc.Arbitrary<number> =>
  fc.double({ min: Math.log10(least), max: Math.log10(greatest), noNaN: true }).map((power) => Math.min(greatest, Math.max(least, 10 ** power)));

describe('friction factor', () => {
  // Evaluated from the published formulas outside the project, with Python, to six places.
  test.each([
    [1e4, 0, 0.030883, 0.030886, 0.031002],
    [1e5, 0, 0.01799, 0.017825, 0.017875],
    [1e5, 1e-3, 0.022175, 0.021966, 0.022343],
    [1e6, 1e-3, 0.019943, 0.019941, 0.020022],
    [1e6, 0.01, 0.037965, 0.038036, 0.037991],
    [1e7, 1e-3, 0.019667, 0.019702, 0.019677],
  ])('computed independently: Re %d, ε/D %d', (reynolds, rough, colebrook, haaland, churchill) => {
    expect(Math.abs(colebrookFriction(reynolds, rough) - colebrook)).toBeLessThan(6e-7);
    expect(Math.abs(haalandFriction(reynolds, rough) - haaland)).toBeLessThan(6e-7);
    expect(Math.abs(churchillFriction(reynolds, rough) - churchill)).toBeLessThan(6e-7);
  });

  // The published formula evaluated outside the project, with Python.
  test.each([
    [3000, 0, 0.042975],
    [3000, 1e-3, 0.043692],
    [2500, 0.01, 0.035446],
  ])('computed independently: Churchill in the transition, Re %d, ε/D %d', (reynolds, rough, churchill) => {
    expect(Math.abs(churchillFriction(reynolds, rough) - churchill)).toBeLessThan(6e-7);
  });

  test('open library fluids, its printed examples: Re 1e5, ε/D 1e-4', () => {
    expect(colebrookFriction(1e5, 1e-4)).toBeCloseTo(0.018513866, 9);
    expect(haalandFriction(1e5, 1e-4)).toBeCloseTo(0.018265053, 9);
    expect(churchillFriction(1e5, 1e-4)).toBeCloseTo(0.018462625, 9);
  });

  test.each([0, 1e-3, 0.05])('Hagen and Poiseuille: 64/Re at Re 500, ε/D %d', (rough) => {
    expect(colebrookFriction(500, rough)).toBeCloseTo(0.128, 12);
    expect(churchillFriction(500, rough)).toBeCloseTo(0.128, 5);
  });

  // Roughness 0.00015 ft, Schedule 40; printed values of TP-410, Flow of Fluids (2009 and later) from memory.
  test.each<[PipeSize, number, number]>([
    ['1/2', 0.0259, 0.026],
    ['3/4', 0.024, 0.024],
    ['1', 0.0225, 0.022],
    ['1-1/4', 0.021, 0.021],
    ['1-1/2', 0.0202, 0.02],
    ['2', 0.019, 0.019],
    ['2-1/2', 0.0182, 0.018],
    ['3', 0.0173, 0.017],
    ['4', 0.0163, 0.016],
  ])('fully rough NPS %s: %d computed independently, %d printed in TP-410 (memory)', (size, computed, printed) => {
    const friction = fullyRoughFriction((0.00015 * 0.3048) / pipeBore_m(size, '40'));
    expect(Math.abs(friction - computed)).toBeLessThanOrEqual(6e-5);
    expect(Math.abs(friction - printed)).toBeLessThanOrEqual(5.5e-4);
  });

  test.each([
    ['commercial-steel', 0.0457],
    ['galvanized-steel', 0.152],
    ['drawn-tubing', 0.00152],
    ['stainless-steel', 0.015],
  ] as const)('Hydraulic Institute data tables: roughness of %s is %d mm', (material, roughness_mm) => {
    expect(PIPE_ROUGHNESS_m[material] * 1000).toBeCloseTo(roughness_mm, 12);
  });

  test('Colebrook is solved to 1e-10', () => {
    fc.assert(
      fc.property(reynoldsBetween(2001, 1e12), anyRoughness, (reynolds, rough) => {
        const inverse = 1 / Math.sqrt(colebrookFriction(reynolds, rough));
        expect(Math.abs(inverse + 2 * Math.log10(rough / 3.7 + (2.51 * inverse) / reynolds))).toBeLessThan(1e-10 * inverse);
      }),
    );
  });

  test('Haaland and Churchill stay near Colebrook in turbulent flow', () => {
    fc.assert(
      fc.property(reynoldsBetween(1e4, 1e8), fc.double({ min: 0, max: 0.05, noNaN: true }), (reynolds, rough) => {
        const colebrook = colebrookFriction(reynolds, rough);
        expect(Math.abs(haalandFriction(reynolds, rough) / colebrook - 1)).toBeLessThan(0.025);
        expect(Math.abs(churchillFriction(reynolds, rough) / colebrook - 1)).toBeLessThan(0.035);
      }),
    );
  });

  test('a rougher pipe has no less friction, and Colebrook comes down to fully rough', () => {
    fc.assert(
      fc.property(reynoldsBetween(4000, 1e9), fc.double({ min: 1e-5, max: 0.04, noNaN: true }), fc.double({ min: 1.01, max: 2, noNaN: true }), (reynolds, rough, factor) => {
        expect(churchillFriction(reynolds, rough * factor)).toBeGreaterThan(churchillFriction(reynolds, rough));
        expect(colebrookFriction(reynolds, rough * factor)).toBeGreaterThan(colebrookFriction(reynolds, rough));
        expect(haalandFriction(reynolds, rough * factor)).toBeGreaterThan(haalandFriction(reynolds, rough));
        expect(colebrookFriction(reynolds, rough)).toBeGreaterThan(fullyRoughFriction(rough));
        expect(colebrookFriction(1e12, rough) / fullyRoughFriction(rough)).toBeCloseTo(1, 4);
      }),
    );
  });

  test('Churchill has no step anywhere from laminar to turbulent', () => {
    fc.assert(
      fc.property(reynoldsBetween(1, 1e8), anyRoughness, (reynolds, rough) => {
        expect(churchillFriction(reynolds * 1.0001, rough) / churchillFriction(reynolds, rough)).toBeCloseTo(1, 2);
        expect(Number.isFinite(churchillFriction(reynolds, rough))).toBe(true);
      }),
    );
  });

  test.each([
    [1, 'laminar'],
    [2000, 'laminar'],
    [2001, 'transition'],
    [3999, 'transition'],
    [4000, 'turbulent'],
    [1e7, 'turbulent'],
  ])('critical zone of TP-410 (memory): Re %d is %s', (reynolds, regime) => {
    expect(flowRegime(reynolds)).toBe(regime);
  });

  test('what no pipe has is refused by name', () => {
    expect(() => churchillFriction(0, 0)).toThrow('reynolds');
    expect(() => colebrookFriction(1e5, -1e-9)).toThrow('relativeRoughness');
    expect(() => haalandFriction(500, 0)).toThrow('reynolds');
    expect(() => fullyRoughFriction(0)).toThrow('relativeRoughness');
    expect(() => flowRegime(Number.NaN)).toThrow('reynolds');
  });
});
