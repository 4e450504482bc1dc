import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LOSS_KINDS, type LossKind, contractionLoss, enlargementLoss, fittingLoss, fittingLossBasis } from '#shared/calculations/formulas/fitting-losses';
import { fullyRoughFriction } from '#shared/calculations/formulas/friction';
import { LOSS_SETS } from '#shared/model/basis-of-design';
import { PIPE_SIZES, type PipeSize, pipeBore_m } from '#shared/profile/pipe-table';
import { toFeet } from '#shared/units/convert';

type Set = (typeof LOSS_SETS)[number];
const at = (set: Set, kind: LossKind, size: PipeSize) => fittingLoss(set, kind, size, pipeBore_m(size, '40'));
const length_ft = (set: Set, kind: LossKind, size: PipeSize): number => toFeet(at(set, kind, size).equivalentLength_m);

describe('losses of fittings', () => {
  // L/D 30, 16, 20 and 60 of TP-410, Flow of Fluids (memory) times the bore of Schedule 40, computed independently.
  test.each<[PipeSize, number, number, number, number, number, number]>([
    ['1/2', 1.55, 0.474, 0.83, 1.04, 3.11, 0.948],
    ['3/4', 2.06, 0.628, 1.1, 1.37, 4.12, 1.256],
    ['1', 2.62, 0.799, 1.4, 1.75, 5.25, 1.599],
    ['1-1/4', 3.45, 1.052, 1.84, 2.3, 6.9, 2.103],
    ['1-1/2', 4.03, 1.227, 2.15, 2.68, 8.05, 2.454],
    ['2', 5.17, 1.575, 2.76, 3.45, 10.34, 3.15],
  ])('TP-410, Flow of Fluids (memory), equivalent lengths: NPS %s', (size, elbow_ft, elbow_m, elbow45_ft, run_ft, branch_ft, branch_m) => {
    expect(Math.abs(length_ft('tp-410', 'elbow-90', size) - elbow_ft)).toBeLessThan(6e-3);
    expect(Math.abs(at('tp-410', 'elbow-90', size).equivalentLength_m - elbow_m)).toBeLessThan(6e-4);
    expect(Math.abs(length_ft('tp-410', 'elbow-45', size) - elbow45_ft)).toBeLessThan(6e-3);
    expect(Math.abs(length_ft('tp-410', 'tee-run', size) - run_ft)).toBeLessThan(6e-3);
    expect(Math.abs(length_ft('tp-410', 'tee-branch', size) - branch_ft)).toBeLessThan(6e-3);
    expect(Math.abs(at('tp-410', 'tee-branch', size).equivalentLength_m - branch_m)).toBeLessThan(6e-4);
  });

  // Printed to 0.1 ft; 20·D of NPS 1 and 2 is printed 0.06 ft high.
  test.each<[PipeSize, number, number, number, number, number]>([
    ['1/2', 0.8, 1.7, 1, 3.4, 0.4],
    ['3/4', 1, 2.2, 1.4, 4.5, 0.5],
    ['1', 1.3, 2.8, 1.8, 5.7, 0.6],
    ['1-1/4', 1.7, 3.7, 2.3, 7.5, 0.8],
    ['1-1/2', 2, 4.3, 2.7, 8.7, 0.9],
    ['2', 2.6, 5.5, 3.5, 11.2, 1.2],
  ])('table of the NFPA 12 kind (memory), printed feet within 0.06: NPS %s', (size, elbow45, elbow90, run, branch, joint) => {
    const printed: Readonly<Record<LossKind, number>> = { 'elbow-45': elbow45, 'elbow-90': elbow90, 'tee-run': run, 'tee-branch': branch, union: joint, coupling: joint };
    for (const kind of LOSS_KINDS) expect(Math.abs(length_ft('nfpa-12', kind, size) - printed[kind]), kind).toBeLessThan(0.06);
  });

  test.each<[PipeSize, number, number, number, number]>([
    ['1/2', 2.1, 0.37, 0.9, 2.4],
    ['3/4', 1.7, 0.35, 0.9, 2.1],
    ['1', 1.5, 0.34, 0.9, 1.8],
    ['1-1/4', 1.3, 0.33, 0.9, 1.7],
    ['1-1/2', 1.2, 0.32, 0.9, 1.6],
    ['2', 1, 0.31, 0.9, 1.4],
  ])('ASHRAE Handbook, threaded fittings: K of NPS %s', (size, elbow90, elbow45, run, branch) => {
    const kinds = ['elbow-90', 'elbow-45', 'tee-run', 'tee-branch'] as const;
    expect(kinds.map((kind) => at('ashrae', kind, size).lossCoefficient)).toEqual([elbow90, elbow45, run, branch]);
  });

  test('the sets differ most in small sizes: NPS 1/2 elbow K 0.78 by TP-410, 2.1 (L/D 81) by ASHRAE', () => {
    const bore_m = pipeBore_m('1/2', '40');
    expect(at('tp-410', 'elbow-90', '1/2').lossCoefficient).toBeCloseTo(0.78, 2);
    expect(at('ashrae', 'elbow-90', '1/2').equivalentLength_m / bore_m).toBeCloseTo(81, 0);
  });

  test('loss coefficient and equivalent length say the same at fully rough friction', () => {
    const sizes = fc.constantFrom(...PIPE_SIZES.filter((size) => size !== '1/4'));
    fc.assert(
      fc.property(fc.constantFrom(...LOSS_SETS), fc.constantFrom(...LOSS_KINDS), sizes, fc.constantFrom('40', '80', '160'), (set, kind, size, schedule) => {
        const bore_m = pipeBore_m(size, schedule);
        const { lossCoefficient, equivalentLength_m } = fittingLoss(set, kind, size, bore_m);
        expect((fullyRoughFriction(0.0457e-3 / bore_m) * equivalentLength_m) / bore_m / lossCoefficient).toBeCloseTo(1, 9);
        expect(lossCoefficient).toBeGreaterThan(0);
      }),
    );
  });

  test.each(LOSS_SETS)('%s: a tee branch loses more than its run, a square elbow more than a half one, and each set names its source', (set) => {
    for (const size of PIPE_SIZES.filter((each) => each !== '1/4')) {
      expect(at(set, 'tee-branch', size).lossCoefficient).toBeGreaterThan(at(set, 'tee-run', size).lossCoefficient);
      expect(at(set, 'elbow-90', size).lossCoefficient).toBeGreaterThan(at(set, 'elbow-45', size).lossCoefficient);
      expect(at(set, 'union', size).lossCoefficient).toBe(at(set, 'coupling', size).lossCoefficient);
    }
    expect(fittingLossBasis[set].source).not.toBe('');
  });

  test('a size that the set does not have is refused by name, and so is no bore', () => {
    expect(() => at('ashrae', 'elbow-90', '1/4')).toThrow('size 1/4');
    expect(() => fittingLoss('tp-410', 'elbow-90', '1', 0)).toThrow('bore_m');
  });

  // TP-410, Flow of Fluids, sudden contraction (memory): K = 0.5·(1 − β²).
  test.each([
    [0.02, 0.02, 0],
    [0.02, 0.01, 0.375],
    [0.0266446, 0.0157988, 0.324],
  ])('TP-410, Flow of Fluids (memory): from %d m into %d m loses K %d', (bore_m, smaller_m, loss) => {
    expect(contractionLoss(bore_m, smaller_m)).toBeCloseTo(loss, 3);
  });

  test('a reducer does not widen', () => {
    expect(() => contractionLoss(0.01, 0.02)).toThrow('smallerBore_m');
  });

  // Momentum balance by hand with A = 1, 4 and v = 4, 1: p2 − p1 = ρ·v2·(v1 − v2)·1; what is lost over ρ·v2²/2 is (v1/v2 − 1)².
  test.each([
    [0.02, 0.02, 0],
    [0.01, 0.02, 9],
    [0.0157988, 0.0266446, 3.401],
  ])('momentum balance: from %d m out into %d m loses K %d', (bore_m, larger_m, loss) => {
    expect(enlargementLoss(bore_m, larger_m)).toBeCloseTo(loss, 2);
  });

  test('an enlargement does not narrow', () => {
    expect(() => enlargementLoss(0.02, 0.01)).toThrow('largerBore_m');
    expect(() => enlargementLoss(0.02, Number.NaN)).toThrow('largerBore_m');
  });
});
