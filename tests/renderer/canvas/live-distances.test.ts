import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { ceilingDrop_m, governingWalls } from '../../../src-renderer/canvas/live-distances.ts';
import { smallPlan } from './support/small-plan.ts';

const derived = derivePlan(smallPlan());
const room = derived.spaces.find((space) => space.kind === 'room');
if (!room) throw new Error('there is a room');

describe('the two walls that fix a place', () => {
  test('the nearest, and the nearest that runs another way', () => {
    const found = governingWalls({ x: 5.5, y: 0.8 }, room);
    expect(found.map(({ length_m }) => Number(length_m.toFixed(6)))).toEqual([0.5, 0.8]);
    expect(found.map(({ to }) => to)).toEqual([
      { x: 6, y: 0.8 },
      { x: 5.5, y: 0 },
    ]);
  });

  test('never two parallel walls', () => {
    const [first, second] = governingWalls({ x: 3, y: 0.2 }, room);
    expect(first?.to.y).toBe(0);
    expect(second?.to.y).toBeCloseTo(0.2);
  });

  test('a space without walls has none', () => {
    expect(governingWalls({ x: 0, y: 0 }, { walls: [] })).toEqual([]);
  });
});

describe('the drop below the ceiling', () => {
  test('is the local ceiling above the orifice', () => {
    const nozzle = derived.nozzles[0];
    expect(nozzle && ceilingDrop_m(nozzle)).toBeCloseTo(0.2);
  });

  test('is not known while the ceiling is not', () => {
    expect(ceilingDrop_m({ at: { x: 0, y: 0, z: 2 }, localCeiling_m: undefined })).toBeUndefined();
    expect(ceilingDrop_m({ at: undefined, localCeiling_m: 2.4 })).toBeUndefined();
  });
});
