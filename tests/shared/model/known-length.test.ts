import { describe, expect, test } from 'vitest';
import { isSameStretch } from '#shared/model/known-length';

const between = (ax: number, ay: number, bx: number, by: number, distance_m = 5) => ({ a: { x: ax, y: ay }, b: { x: bx, y: by }, distance_m });

describe('isSameStretch', () => {
  test('holds for the same two places, whichever way round and whatever distance was typed', () => {
    expect(isSameStretch(between(0, 0, 100, 0), between(0, 0, 100, 0, 6))).toBe(true);
    expect(isSameStretch(between(0, 0, 100, 0), between(100, 0, 0, 0))).toBe(true);
    expect(isSameStretch(between(0, 0, 100, 0), between(0.5, 0, 99.4, 0.3))).toBe(true);
  });

  test('does not hold for a stretch elsewhere, or one that goes on', () => {
    expect(isSameStretch(between(0, 0, 100, 0), between(0, 0, 0, 100))).toBe(false);
    expect(isSameStretch(between(0, 0, 100, 0), between(0, 2, 100, 2))).toBe(false);
    expect(isSameStretch(between(0, 0, 100, 0), between(0, 0, 200, 0))).toBe(false);
  });
});
