import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { resizedRectangle } from '#shared/geometry/rectangle';
import { fromSouthWest, sideNames } from '../../../src-renderer/panels/bench/size-fields.tsx';

const ring = rectangle(3, 2, planPoint(1, 1));

describe('the sides of a rectangle on the bench', () => {
  test('begin at its south-western corner, which stands still', () => {
    for (const shift of [0, 1, 2, 3]) {
      const from = fromSouthWest([...ring.slice(shift), ...ring.slice(0, shift)]);
      expect(from[0]).toEqual(planPoint(1, 1));
      expect(resizedRectangle(from, [4, 2])).toContainEqual(planPoint(1, 1));
    }
  });

  test('are called by the compass where they run with it', () => {
    expect(sideNames(ring)).toEqual(['East to west', 'North to south']);
    expect(sideNames([...ring.slice(1), ...ring.slice(0, 1)])).toEqual(['North to south', 'East to west']);
    expect(sideNames([planPoint(0, 0), planPoint(1, 1), planPoint(0, 2), planPoint(-1, 1)])).toEqual(['One side', 'Other side']);
  });
});
