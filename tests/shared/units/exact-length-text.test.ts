import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { exactLengthText, lengthOnMark } from '#shared/units/exact-length-text';
import { parseLength } from '#shared/units/length-text';
import '../../support/property-seed.ts';

const IN = 0.0254;

describe('a measured length is written as it was read', () => {
  test.each([
    // 3460 mm is 136.2205 in: no 1/64 of an inch.
    [3.46, 'feet', '3.460 m'],
    [0.2544, 'feet', '254.4 mm'],
    [136.5 * IN, 'feet', `11'-4 1/2"`],
    [(9 + 31 / 32) * IN, 'feet', '9 31/32"'],
    [136.5 * IN, 'metric', '3.4671 m'],
    [(9 + 31 / 32) * IN, 'metric', '9 31/32"'],
    [3.46, 'metric', '3.460 m'],
    [0, 'feet', '0"'],
    [Number.NaN, 'feet', 'not known'],
  ] as const)('%f m in %s: %s', (length_m, system, words) => expect(exactLengthText(length_m, system)).toBe(words));

  test('what stands on no mark has decimals, or is left to whoever asks', () => {
    expect(lengthOnMark(Math.PI, 'metric')).toBeUndefined();
    expect(exactLengthText(Math.PI, 'metric')).toBe('3141.59 mm');
    expect(exactLengthText(Math.PI, 'feet')).toBe('123.6848"');
  });

  test('reads back to within 0.005 mm, whatever it is, and just the same the second time', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 60, noNaN: true }), fc.constantFrom('feet' as const, 'metric' as const), (length_m, system) => {
        const read = parseLength(exactLengthText(length_m, system), system);
        expect(read.ok && Math.abs(read.length_m - length_m)).toBeLessThanOrEqual(5.1e-6);
        if (read.ok) expect(parseLength(exactLengthText(read.length_m, system), system)).toEqual(expect.objectContaining({ length_m: expect.closeTo(read.length_m, 8) }));
      }),
    );
  });
});
