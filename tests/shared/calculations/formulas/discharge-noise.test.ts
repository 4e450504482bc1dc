import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { HARD_ROOM_ABSORPTION, roomConstant_m2, soundLevel_dB } from '#shared/calculations/formulas/discharge-noise';

describe('sound of a discharge at a place', () => {
  test('in the open a point source falls by 20·lg r + 11 dB (textbook; 10·lg 4π = 10.992)', () => {
    for (const distance_m of [0.5, 1, 3, 10]) expect(soundLevel_dB([118], [distance_m], Infinity)).toBeCloseTo(118 - 20 * Math.log10(distance_m) - 10.992, 2);
  });

  test('twice as far is 6 dB less in the open, two alike are 3 dB more', () => {
    expect(soundLevel_dB([100], [2], Infinity) - soundLevel_dB([100], [4], Infinity)).toBeCloseTo(6.0206, 4);
    expect(soundLevel_dB([100, 100], [2, 2], Infinity) - soundLevel_dB([100], [2], Infinity)).toBeCloseTo(3.0103, 4);
  });

  test('far off in a room only what it throws back is left: Lw + 10·lg(4/R)', () => {
    const room_m2 = roomConstant_m2(200, HARD_ROOM_ABSORPTION);
    expect(room_m2).toBeCloseTo(200 / 9, 9);
    expect(soundLevel_dB([118], [1e6], room_m2)).toBeCloseTo(118 + 10 * Math.log10(4 / (200 / 9)), 9);
  });

  test('worked by hand: 118 dB, 3 m and 4 m away, R = 8.1056 m²', () => {
    // 10^11.8 · (1/(36π) + 1/(64π) + 8/8.1056) = 10^11.8 · (0.008842 + 0.004974 + 0.986972) = 6.3145·10^11; its 10·lg is 118.0034.
    expect(soundLevel_dB([118, 118], [3, 4], 8.1056)).toBeCloseTo(118.0034, 3);
  });

  test('a room is never quieter than the open, and a source never quieter than none', () => {
    const source = fc.record({ power_dB: fc.double({ min: 60, max: 150, noNaN: true }), distance_m: fc.double({ min: 0.1, max: 50, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(source, { minLength: 1, maxLength: 6 }), source, fc.double({ min: 1, max: 1000, noNaN: true }), (sources, more, room_m2) => {
        const level = (all: readonly typeof more[], room: number): number => soundLevel_dB(all.map(({ power_dB }) => power_dB), all.map(({ distance_m }) => distance_m), room);
        expect(level(sources, room_m2)).toBeGreaterThan(level(sources, Infinity));
        expect(level([...sources, more], room_m2)).toBeGreaterThanOrEqual(level(sources, room_m2));
      }),
    );
  });

  test('what is out of range is refused', () => {
    expect(() => soundLevel_dB([100], [0], 10)).toThrow('distances_m');
    expect(() => soundLevel_dB([100, 100], [1], 10)).toThrow('as many');
    expect(() => soundLevel_dB([100], [1], 0)).toThrow('room_m2');
    expect(() => roomConstant_m2(10, 1)).toThrow('absorption');
    expect(soundLevel_dB([], [], 10)).toBe(-Infinity);
  });
});
