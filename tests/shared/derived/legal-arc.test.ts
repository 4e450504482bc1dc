import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cornersNear } from '#shared/derived/corner-zone';
import type { DerivedNozzle } from '#shared/derived/derived';
import { derivePlan } from '#shared/derived/derive-plan';
import { jetsOf } from '#shared/derived/jets';
import { blankArcLimits, legalArcs } from '#shared/derived/legal-arc';
import { wallsAlone } from '#shared/derived/near-wall';
import { angleBetween_rad, axisAngle_rad } from '#shared/geometry/angle';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { LimitKey } from '#shared/profile/limit-catalogue';
import { type PlanBuilder, planBuilder } from '../../support/plan-builder.ts';
import { nozzleOf } from './one-nozzle.ts';
import { anyPlacing, movedPlan } from './placed-plan.ts';

const DEGREE = Math.PI / 180;
const hall = () => planBuilder().room(12, 10, 3);
const degrees = (nozzle: DerivedNozzle) => legalArcs(nozzle).map(({ from_rad, to_rad }) => [Number((from_rad / DEGREE).toFixed(4)), Number((to_rad / DEGREE).toFixed(4))]);

/** Whether a turn keeps corner, near-wall and free-jet limits, asked hole by hole. */
function isLegal(built: PlanBuilder, rotation_rad: number): boolean {
  const plan = structuredClone(built.plan);
  for (const network of Object.values(plan.networks)) for (const nozzle of Object.values(network.nozzles)) nozzle.rotation_rad = rotation_rad;
  const [nozzle] = derivePlan(plan).nozzles;
  const limits = nozzle?.profile?.limits;
  if (!nozzle?.space || !limits?.cornerZone_m || !limits.cornerAngle_rad || !limits.nearWallZone_m || !limits.nearWallAngle_rad || !limits.freeJet_m) return false;
  const { cornerZone_m, cornerAngle_rad, nearWallZone_m, nearWallAngle_rad, freeJet_m } = limits;
  const offCorner = cornersNear(nozzle, cornerZone_m.value).every(({ bearing_rad }) => nozzle.holes_rad.every((hole_rad) => angleBetween_rad(hole_rad, bearing_rad) >= cornerAngle_rad.value));
  const alongWall = wallsAlone(nozzle, nearWallZone_m.value, cornerZone_m.value).every(({ axis_rad }) =>
    nozzle.holes_rad.every((hole_rad) => axisAngle_rad(hole_rad, axis_rad) <= nearWallAngle_rad.value),
  );
  return offCorner && alongWall && jetsOf(nozzle).every(({ length_m }) => length_m >= freeJet_m.value);
}

describe('legal turns', () => {
  test('in the open are a full turn', () => {
    expect(degrees(nozzleOf(hall().nozzle(6, 5, 2.8)))).toEqual([[0, 360]]);
  });

  test('near one wall are ten degrees about parallel, twice', () => {
    expect(degrees(nozzleOf(hall().nozzle(6, 0.5, 2.8, [0])))).toEqual([
      [170, 190],
      [350, 370],
    ]);
  });

  test('in a corner keep twenty degrees off it and off anything nearer than the free jet', () => {
    // 1.2 m off both walls: the corner at 225°, no wall within 3 ft.
    expect(degrees(nozzleOf(hall().nozzle(1.2, 1.2, 2.8, [0])))).toEqual([[245, 565]]);
  });

  test('count every hole', () => {
    expect(degrees(nozzleOf(hall().nozzle(1.2, 1.2, 2.8, [0, Math.PI])))).toEqual([
      [65, 205],
      [245, 385],
    ]);
  });

  test('keep off a thing in the jet', () => {
    const [arc, ...others] = legalArcs(nozzleOf(hall().obstruction('rack', rectangle(0.2, 0.2, planPoint(6.5, 4.9)), 0, 3).nozzle(6, 5, 2.8, [0])));
    expect(others).toEqual([]);
    expect(arc?.from_rad).toBeCloseTo(Math.atan2(0.1, 0.5), 6);
    expect(arc?.to_rad).toBeCloseTo(2 * Math.PI - Math.atan2(0.1, 0.5), 6);
  });

  test('are none inside a thing, without holes or without a space', () => {
    expect(legalArcs(nozzleOf(hall().obstruction('duct', rectangle(1, 1, planPoint(5.5, 4.5)), 2, 3).nozzle(6, 5, 2.8)))).toEqual([]);
    expect(legalArcs(nozzleOf(hall().nozzle(6, 5, 2.8, [])))).toEqual([]);
    expect(legalArcs(nozzleOf(hall().nozzle(60, 5, 2.8)))).toEqual([]);
  });

  test.each(['cornerZone_m', 'cornerAngle_rad', 'nearWallZone_m', 'nearWallAngle_rad', 'freeJet_m'] satisfies LimitKey[])('cannot be known while %s is blank', (key) => {
    const built = hall().nozzle(6, 5, 2.8);
    for (const profile of Object.values(built.plan.profiles)) delete profile.limits[key];
    expect(legalArcs(nozzleOf(built))).toEqual([]);
    expect(blankArcLimits(nozzleOf(built))).toEqual([key]);
  });

  test('without a profile know none of their limits', () => {
    const built = hall().nozzle(6, 5, 2.8);
    expect(blankArcLimits(nozzleOf(built))).toEqual([]);
    built.plan.profiles = {};
    expect(blankArcLimits(nozzleOf(built))).toHaveLength(5);
  });
});

const tenths = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 10 + 0.017);
const anyBuilt = fc
  .record({ x: tenths(0, 119), y: tenths(0, 99), holes_rad: fc.array(tenths(0, 62), { minLength: 1, maxLength: 4 }), rack: fc.boolean() })
  .map(({ x, y, holes_rad, rack }) => {
    const built = hall().hole(rectangle(1, 1, planPoint(4, 4)));
    if (rack) built.obstruction('rack', rectangle(0.5, 3, planPoint(8, 3)), 0, 3);
    return built.nozzle(x, y, 2.8, holes_rad);
  });

test('a turn is legal exactly when every hole keeps every limit', () => {
  fc.assert(
    fc.property(anyBuilt, fc.integer({ min: 0, max: 719 }), (built, half_deg) => {
      const rotation_rad = (half_deg / 2 + 0.123) * DEGREE;
      const arcs = legalArcs(nozzleOf(built));
      const near = (end_rad: number): boolean => angleBetween_rad(end_rad, rotation_rad) < 1e-5;
      fc.pre(!arcs.some(({ from_rad, to_rad }) => near(from_rad) || near(to_rad)));
      const inArc = arcs.some(({ from_rad, to_rad }) => [-2 * Math.PI, 0, 2 * Math.PI].some((turn) => rotation_rad + turn >= from_rad && rotation_rad + turn <= to_rad));
      expect(inArc).toBe(isLegal(built, rotation_rad));
    }),
    { numRuns: 300 },
  );
});

test('both ends of every range keep every limit', () => {
  fc.assert(
    fc.property(anyBuilt, (built) => {
      for (const { from_rad, to_rad } of legalArcs(nozzleOf(built))) {
        expect(isLegal(built, from_rad)).toBe(true);
        expect(isLegal(built, to_rad)).toBe(true);
      }
    }),
    { numRuns: 150 },
  );
});

test('turning, shifting and mirroring the plan leave as many ranges, as wide', () => {
  fc.assert(
    fc.property(anyBuilt, anyPlacing, (built, placing) => {
      const width = (nozzle: DerivedNozzle | undefined) => (nozzle ? legalArcs(nozzle).reduce((sum, { from_rad, to_rad }) => sum + to_rad - from_rad, 0) : -1);
      expect(width(derivePlan(movedPlan(built.plan, placing)).nozzles[0])).toBeCloseTo(width(nozzleOf(built)), 5);
    }),
    { numRuns: 100 },
  );
});
