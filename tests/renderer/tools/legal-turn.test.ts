import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { legalArcs } from '#shared/derived/legal-arc';
import { normalAngle_rad } from '#shared/geometry/angle';
import { toDegrees } from '#shared/units/convert';
import { legalTurn_rad } from '../../../src-renderer/tools/legal-turn.ts';
import { planBuilder } from '../../support/plan-builder.ts';

const nozzleAt = (x: number, y: number, holes_rad?: number[]) => {
  const nozzle = derivePlan(planBuilder().room(10, 8, 2.7).network().nozzle(x, y, 2.5, holes_rad).plan).nozzles[0];
  if (!nozzle) throw new Error('The builder made a nozzle.');
  return nozzle;
};

const isLegal = (nozzle: Parameters<typeof legalArcs>[0], turn_rad: number): boolean =>
  legalArcs(nozzle).some(({ from_rad, to_rad }) => normalAngle_rad(turn_rad - from_rad) <= to_rad - from_rad);

describe('the turn that is taken', () => {
  test('is none where the holes blow free already', () => {
    expect(legalTurn_rad(nozzleAt(5, 4))).toBe(0);
  });

  test.each([[0.5, 4], [5, 0.5], [1.4, 1.4]])('at %d, %d is legal, in steps of 5°', (x, y) => {
    const nozzle = nozzleAt(x, y);
    const turn_rad = legalTurn_rad(nozzle);
    expect(isLegal(nozzle, turn_rad)).toBe(true);
    expect(toDegrees(turn_rad) / 5).toBeCloseTo(Math.round(toDegrees(turn_rad) / 5), 9);
  });

  test('is the middle of a legal range too narrow for a step', () => {
    const nozzle = nozzleAt(9.4, 0.7);
    expect(legalArcs(nozzle)[0]).toSatisfy(({ from_rad, to_rad }: { from_rad: number; to_rad: number }) => toDegrees(to_rad - from_rad) < 5);
    expect(isLegal(nozzle, legalTurn_rad(nozzle))).toBe(true);
  });

  test('stays as it is where no turn is legal or none can be known', () => {
    for (const nozzle of [nozzleAt(20, 4), nozzleAt(0.6, 0.6)]) {
      expect(legalArcs(nozzle)).toEqual([]);
      expect(legalTurn_rad(nozzle)).toBe(nozzle.nozzle.rotation_rad);
    }
  });
});
