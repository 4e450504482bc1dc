import { describe, expect, test } from 'vitest';
import { wallsAlone, wallsNear } from '#shared/derived/near-wall';
import { axisAngle_rad } from '#shared/geometry/angle';
import { rectangle } from '#shared/geometry/outline';
import { planPoint, polar } from '#shared/geometry/point';
import { planBuilder } from '../../support/plan-builder.ts';
import { nozzleOf } from './one-nozzle.ts';

const ZONE_m = 0.9;
const at = (x: number, y: number) => nozzleOf(planBuilder().room(6, 4, 3).nozzle(x, y, 2.8));

describe('a nozzle stands near a wall', () => {
  test.each([
    ['within the zone', 3, 0.5, 1],
    ['exactly on its border', 3, 0.9, 1],
    ['a hair outside', 3, 0.901, 0],
    ['of two walls', 0.5, 0.5, 2],
    ['touching it', 3, 0, 1],
  ])('%s', (_, x, y, count) => {
    expect(wallsNear(at(x, y), ZONE_m)).toHaveLength(count);
  });

  test('with its distance and axis, the nearest first', () => {
    const [south, west] = wallsNear(at(0.6, 0.5), ZONE_m);
    expect(south?.distance_m).toBeCloseTo(0.5, 12);
    expect(axisAngle_rad(south?.axis_rad ?? 1, 0)).toBeCloseTo(0, 12);
    expect(west?.distance_m).toBeCloseTo(0.6, 12);
    expect(axisAngle_rad(west?.axis_rad ?? 1, Math.PI / 2)).toBeCloseTo(0, 12);
  });

  test('not from behind it', () => {
    const ring = [planPoint(0, 0), planPoint(6, 0), planPoint(6, 4), planPoint(3.05, 4), planPoint(3.05, 1), planPoint(2.95, 1), planPoint(2.95, 4), planPoint(0, 4)];
    const near = wallsNear(nozzleOf(planBuilder().outline(ring, 3).nozzle(2.5, 3, 2.8)), ZONE_m);
    expect(near.map(({ face }) => face.segment.a.x)).toEqual([2.95]);
  });

  test('off the corner of a column it is to blow across the way to the corner', () => {
    const near = wallsNear(nozzleOf(planBuilder().room(9, 9, 3).hole(rectangle(1, 1, planPoint(4, 4))).nozzle(3.7, 3.7, 2.8)), ZONE_m);
    expect(near).toHaveLength(2);
    for (const { distance_m, axis_rad } of near) {
      expect(distance_m).toBeCloseTo(0.3 * Math.SQRT2, 12);
      expect(axisAngle_rad(axis_rad, -Math.PI / 4)).toBeCloseTo(0, 12);
    }
  });

  test('beside a column only the side it faces counts', () => {
    const near = wallsNear(nozzleOf(planBuilder().room(9, 9, 3).hole(rectangle(1, 1, planPoint(4, 4))).nozzle(3.7, 4.1, 2.8)), ZONE_m);
    expect(near).toHaveLength(1);
    expect(near[0]?.distance_m).toBeCloseTo(0.3, 12);
  });

  test('around a round column there is always one', () => {
    const round = Array.from({ length: 24 }, (_, i) => polar(planPoint(5, 5), (i * Math.PI) / 12, 0.5));
    for (let i = 0; i < 96; i += 1) {
      const place = polar(planPoint(5, 5), (i * Math.PI) / 48, 0.8);
      const near = wallsNear(nozzleOf(planBuilder().room(10, 10, 3).hole(round).nozzle(place.x, place.y, 2.8)), ZONE_m);
      expect(near.length).toBeGreaterThan(0);
      expect(axisAngle_rad(near[0]?.axis_rad ?? 0, (i * Math.PI) / 48)).toBeGreaterThan((80 * Math.PI) / 180);
    }
  });

  test('never while it hangs in no space', () => {
    expect(wallsNear(at(-3, -3), ZONE_m)).toEqual([]);
  });
});

describe('a near wall counts alone', () => {
  test('unless it belongs to a corner the nozzle stands in', () => {
    expect(wallsAlone(at(0.5, 0.5), ZONE_m, 1.5)).toEqual([]);
    expect(wallsAlone(at(3, 0.5), ZONE_m, 1.5)).toHaveLength(1);
    expect(wallsAlone(at(0.5, 0.5), ZONE_m, 0.2)).toHaveLength(2);
  });

  test('also when the wall of the corner was drawn in pieces', () => {
    const ring = [planPoint(0, 0), planPoint(0.2, 0), planPoint(6, 0), planPoint(6, 4), planPoint(0, 4)];
    expect(wallsAlone(nozzleOf(planBuilder().outline(ring, 3).nozzle(0.6, 0.6, 2.8)), ZONE_m, 1.5)).toEqual([]);
  });
});
