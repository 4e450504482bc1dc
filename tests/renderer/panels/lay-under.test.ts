import { newPlan } from '#shared/model/plan';
import { toPlan } from '#shared/underlay/placement';
import { describe, expect, test } from 'vitest';
import { type LaidPlan, layUnder, originFor } from '../../../src-renderer/panels/dialogs/lay-under.ts';

const asset = { name: 'plan.dxf', file: 'plan.dxf', sha256: 'a'.repeat(64) };
const laidBy = (part: Partial<LaidPlan>) => {
  const outcome = layUnder({
    level: 'level-0',
    asset,
    kind: 'dxf',
    page: 1,
    name: 'plan',
    extents: { minX: 0, minY: 0, maxX: 20_000, maxY: 10_000 },
    hiddenLayers: [],
    metresPerUnit: null,
    trueWidth_m: null,
    ...part,
  })(newPlan('metric'));
  if (!outcome.ok) throw new Error(outcome.reason);
  const [underlay] = Object.values(outcome.next.levels['level-0']?.underlays ?? {});
  if (!underlay) throw new Error('Nothing was laid.');
  return { underlay, outcome };
};

describe('laying a floor plan under the drawing', () => {
  test('the file’s own units give the scale', () => {
    expect(laidBy({ metresPerUnit: 0.001 }).underlay).toMatchObject({ metresPerUnit: 0.001, calibration: 'file-units', at: { x: 0, y: 0 } });
  });

  test('a typed width gives the scale, is kept as a known length, and is one step with the rest', () => {
    const { underlay, outcome } = laidBy({ metresPerUnit: 0.001, trueWidth_m: 20, hiddenLayers: ['FURNITURE'] });
    expect(underlay).toMatchObject({ calibration: 'two-points', hiddenLayers: ['FURNITURE'] });
    expect(underlay.metresPerUnit).toBeCloseTo(0.001, 12);
    expect(underlay.knownLengths[0]?.distance_m).toBe(20);
    expect(outcome.label).toBe('Add floor plan');
  });

  test('paper lies with its corner on the origin', () => {
    const extents = { minX: 400, minY: -50, maxX: 900, maxY: 300 };
    const { underlay } = laidBy({ kind: 'pdf', extents, metresPerUnit: 0.02, trueWidth_m: 10 });
    const corner = toPlan(underlay, extents.minX, extents.minY);
    expect(corner.x).toBeCloseTo(0, 9);
    expect(corner.y).toBeCloseTo(0, 9);
  });

  test('a surveyed drawing far from its origin comes to the plan’s origin, in any unit', () => {
    const extents = { minX: 500_000_000, minY: 4_000_000_000, maxX: 500_020_000, maxY: 4_000_010_000 };
    const { underlay } = laidBy({ extents, metresPerUnit: 0.001 });
    const corner = toPlan(underlay, extents.minX, extents.minY);
    expect(Math.hypot(corner.x, corner.y)).toBeLessThan(1e-3);
    expect(laidBy({ extents, trueWidth_m: 20, metresPerUnit: 0.001 }).underlay.knownLengths).toHaveLength(1);
  });

  test('a drawing keeps its own origin when that is near', () => {
    expect(originFor('dxf', { minX: -3000, minY: 10, maxX: 5, maxY: 20 }, 0.001)).toEqual({ x: 0, y: 0 });
  });
});
