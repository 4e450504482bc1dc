import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { soundAt_dBA, soundSum_dBA } from '#shared/calculations/formulas/sound-level';

describe('loudness', () => {
  // Acoustics, any handbook: 6.02 dB less at twice the distance, 20 dB less at ten times, two alike sources 3.01 dB more, ten 10 dB more.
  test.each([
    [90, 3, 90],
    [90, 6, 83.979],
    [90, 1.5, 96.021],
    [90, 30, 70],
  ])('%s dB at 3 m are %s m off %s dB', (measured_dBA, distance_m, expected) => {
    expect(soundAt_dBA(measured_dBA, distance_m)).toBeCloseTo(expected, 3);
  });

  test.each([
    [[70, 70], 73.01],
    [[70, 60], 70.414],
    [[70, 80], 80.414],
    [Array.from({ length: 10 }, () => 50), 60],
    [[65], 65],
    [[], -Infinity],
  ])('%j together are %s dB', (levels, expected) => {
    if (Number.isFinite(expected)) expect(soundSum_dBA(levels)).toBeCloseTo(expected, 2);
    else expect(soundSum_dBA(levels)).toBe(expected);
  });

  // Independent of the logarithm: power over the area of a sphere, I = P/(4πr²).
  test('intensity over spheres says the same', () => {
    fc.assert(
      fc.property(fc.double({ min: 40, max: 120, noNaN: true }), fc.double({ min: 0.5, max: 200, noNaN: true }), (level_dBA, distance_m) => {
        const power = 10 ** (level_dBA / 10) * 4 * Math.PI * 3 ** 2;
        expect(soundAt_dBA(level_dBA, distance_m)).toBeCloseTo(10 * Math.log10(power / (4 * Math.PI * distance_m ** 2)), 9);
      }),
    );
  });

  test('another sound makes it no quieter, and no louder than both alike', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 130, noNaN: true }), fc.double({ min: 0, max: 130, noNaN: true }), (one, other) => {
        const sum = soundSum_dBA([one, other]);
        expect(sum).toBeGreaterThanOrEqual(Math.max(one, other));
        expect(sum).toBeLessThanOrEqual(Math.max(one, other) + 10 * Math.log10(2) + 1e-9);
      }),
    );
  });

  test('what is no figure is refused', () => {
    expect(() => soundAt_dBA(90, 0)).toThrow(RangeError);
    expect(() => soundAt_dBA(Number.NaN, 1)).toThrow(RangeError);
    expect(() => soundSum_dBA([80, Infinity])).toThrow(RangeError);
  });
});
