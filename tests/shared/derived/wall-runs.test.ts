import { expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { inFrontOf_m, neighboursOf, straightRunOf } from '#shared/derived/wall-runs';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { planBuilder } from '../../support/plan-builder.ts';

const ring = [planPoint(0, 0), planPoint(2, 0), planPoint(4, 0), planPoint(6, 0), planPoint(6, 4), planPoint(0, 4)];
const [space] = derivePlan(planBuilder().outline(ring, 3).hole(rectangle(1, 1, planPoint(2, 1))).plan).spaces;

test('pieces of one straight wall belong together, from whichever one asks', () => {
  if (!space) throw new Error('The plan has no space.');
  const lengths = space.walls.map((face) => straightRunOf(space, face).length);
  expect(lengths).toEqual([3, 3, 3, 1, 1, 1, 1, 1, 1, 1]);
});

test('neighbours go around their own ring', () => {
  if (!space) throw new Error('The plan has no space.');
  const [first] = space.walls;
  expect(first && neighboursOf(space, first).before).toBe(space.walls[5]);
  expect(first && neighboursOf(space, first).after).toBe(space.walls[1]);
  const hole = space.walls[6];
  expect(hole && neighboursOf(space, hole).before).toBe(space.walls[9]);
});

test('the room is in front of a wall', () => {
  const [south] = space?.walls ?? [];
  if (!south) throw new Error('The space has no wall.');
  expect(inFrontOf_m(planPoint(5, 3), south)).toBeCloseTo(3, 12);
  expect(inFrontOf_m(planPoint(5, -1), south)).toBeCloseTo(-1, 12);
});
