import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FOOT_m, INCH_m } from '#shared/units/convert';
import { type LengthSystem, formatAgainstLimit, formatLength, parseLength } from '#shared/units/length-text';

const SYSTEMS: LengthSystem[] = ['feet', 'metric'];
const elevenFourHalf_m = 11 * FOOT_m + 4.5 * INCH_m;

/** What both systems make of a text, which must be the same length. */
function inEither(text: string): number {
  const [feet, metric] = SYSTEMS.map((system) => parseLength(text, system));
  expect(feet, text).toEqual(metric);
  if (!feet?.ok) throw new Error(`${text} was not understood`);
  return feet.length_m;
}
const refusal = (text: string, system: LengthSystem = 'feet'): string => {
  const parsed = parseLength(text, system);
  if (parsed.ok) throw new Error(`${text} was taken for ${parsed.length_m} m`);
  return parsed.reason;
};

describe('one length in every way of writing, whichever system is set', () => {
  test.each([
    `11' 4 1/2"`, `11'-4 1/2"`, `11'4 1/2"`, `11' - 4 1/2"`, `11'-4-1/2"`, `11-4 1/2`, `11-4-1/2`, `11 - 4 1/2`, `11-4.5`, `11-4 1/2"`, `11' 4.5"`,
    `11' 4.5`, `11ft 4.5in`, `11 ft 4 1/2 in`, `11 feet 4 1/2 inches`, `11 FT. 4.5 IN.`, `11ft-4½in`, `11′ 4½″`, `11’-4½”`, `11‘ 4 ½“`, `11'-4½''`,
    `11–4 1⁄2`, `11.375'`, `11.375 ft`, `11 3/8'`, `136.5"`, `136,5"`, `136 1/2 in`, `136-1/2"`, `136½″`, `  11-4 1/2  `, `+11-4 1/2`,
  ])('%s', (text) => {
    expect(inEither(text)).toBeCloseTo(elevenFourHalf_m, 12);
  });

  test.each([
    ['3460 mm', 3.46], ['3460mm', 3.46], ['346 cm', 3.46], ['3.46 m', 3.46], ['3,46 m', 3.46], ['3.46 metres', 3.46], ['3460 millimeters', 3.46],
    ['0,305 m', 0.305], ['.5 m', 0.5], [`3/4"`, 0.75 * INCH_m], [`¾″`, 0.75 * INCH_m], [`0-4`, 4 * INCH_m], [`-0-4`, -4 * INCH_m], [`−0'-4"`, -4 * INCH_m],
    [`- 0-4`, -4 * INCH_m], [`-11-4 1/2`, -elevenFourHalf_m], [`-½"`, -0.5 * INCH_m], [`0`, 0], [`-0`, 0], [`11' 1/2"`, 11 * FOOT_m + 0.5 * INCH_m],
    [`11'-1/2"`, 11 * FOOT_m + 0.5 * INCH_m], [`11-1/2"`, 11.5 * INCH_m], [`11-0 1/2`, 11 * FOOT_m + 0.5 * INCH_m], [`5-0`, 5 * FOOT_m],
    [`6'`, 6 * FOOT_m], [`5/8"`, 0.625 * INCH_m], [`5 / 8 "`, 0.625 * INCH_m], [`1/3"`, INCH_m / 3],
  ])('%s', (text, length_m) => {
    expect(inEither(text)).toBeCloseTo(length_m, 12);
  });

  test('a number alone is feet or metres as set, never guessed from its size', () => {
    expect(parseLength('3.46', 'metric')).toEqual({ ok: true, length_m: 3.46 });
    expect(parseLength('3,46', 'metric')).toEqual({ ok: true, length_m: 3.46 });
    expect(parseLength('3460', 'metric')).toEqual({ ok: true, length_m: 3460 });
    expect(parseLength('11.375', 'feet')).toEqual({ ok: true, length_m: 11.375 * FOOT_m });
  });
});

describe('what cannot be meant is refused with an example', () => {
  test.each(['', '   ', 'abc', '11-14', `11' 12"`, `4 3/2"`, `9/8"`, `1/0"`, `11 4 1/2`, `11 4`, `4" 11'`, `11' 4' 2"`, `11'-4"-3`, '3 m 4"', '3.46 km', '1e3', '0x10',
    'Infinity', 'NaN', '--3', '3-', `'`, `"`, `' 4"`, '11.5-4', `11.5' 4"`, '1.2.3', '1,234.5', '1,2,3', '9'.repeat(40), '1'.repeat(5000), '3/4', '4 1/2', '11-1/2', '(3)', '3 + 4', '<b>3</b>',
    '3460 m m', '100001 m'])('%s', (text) => {
    for (const system of SYSTEMS) expect(refusal(text, system)).toMatch(/such as|Write|Say|fraction/);
  });

  test('a comma before three digits can mean two things', () => {
    for (const text of ['3,460', '3,460 mm', '12,345"']) expect(refusal(text)).toContain('two ways');
  });

  test('a fraction without a unit asks for one', () => {
    expect(refusal('4 1/2')).toContain('feet or inches');
    expect(refusal('11-1/2')).toContain('feet or inches');
  });

  test('the sentence says what a number alone means', () => {
    expect(refusal('abc', 'feet')).toContain('a number alone is feet');
    expect(refusal('abc', 'metric')).toContain('a number alone is metres');
  });

  test('any text is answered, never thrown at', () => {
    const piece = fc.constantFrom('1', '4', '0', '/', '2', "'", '"', '-', ' ', '.', ',', 'mm', 'm', 'ft', 'in', '½', '′');
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.array(piece, { maxLength: 12 }).map((parts) => parts.join(''))), fc.constantFrom(...SYSTEMS), (text, system) => {
        const parsed = parseLength(text, system);
        if (parsed.ok) expect(Math.abs(parsed.length_m)).toBeLessThanOrEqual(100_000);
        else expect(parsed.reason.length).toBeGreaterThan(10);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('print', () => {
  test.each([
    [elevenFourHalf_m, 'feet', `11'-4 1/2"`], [4 * INCH_m, 'feet', `4"`], [-4 * INCH_m, 'feet', `-4"`], [0, 'feet', `0"`], [-1e-6, 'feet', `0"`],
    [FOOT_m - 0.0001, 'feet', `1'-0"`], [0.75 * INCH_m, 'feet', `3/4"`], [4.877, 'feet', `16'-0"`],
    [3.46, 'metric', '3.460 m'], [0.254, 'metric', '254 mm'], [-0.254, 'metric', '-254 mm'], [0.9996, 'metric', '1.000 m'], [0, 'metric', '0 mm'], [-0.0001, 'metric', '0 mm'],
    [Number.NaN, 'feet', 'not known'], [Number.POSITIVE_INFINITY, 'metric', 'not known'],
  ] as const)('%d m in %s', (length_m, system, text) => {
    expect(formatLength(length_m, system)).toBe(text);
  });

  test.each([[9.97 * INCH_m, 'feet', `9 31/32"`], [0.25384, 'metric', '253.8 mm'], [3.46004, 'metric', '3.4600 m']] as const)('%d m finely in %s', (length_m, system, text) => {
    expect(formatLength(length_m, system, { precision: 'fine' })).toBe(text);
  });

  test('what is printed can be typed back, within half of the last unit', () => {
    fc.assert(
      fc.property(fc.double({ min: -200, max: 200, noNaN: true }), fc.constantFrom(...SYSTEMS), fc.constantFrom(...SYSTEMS), fc.constantFrom('site', 'fine'), (length_m, system, typedIn, precision) => {
        const parsed = parseLength(formatLength(length_m, system, { precision }), typedIn);
        const half_m = (system === 'feet' ? INCH_m / (precision === 'site' ? 32 : 128) : precision === 'site' ? 0.0005 : 0.00005) + 1e-9;
        expect(parsed.ok && Math.abs(parsed.length_m - length_m) <= half_m).toBe(true);
      }),
    );
  });

  test('a printed sixteenth is typed back exactly', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 20_000 }), (sixteenths) => {
        const text = formatLength((sixteenths / 16) * INCH_m, 'feet');
        const parsed = parseLength(text, 'feet');
        expect(parsed.ok && formatLength(parsed.length_m, 'feet')).toBe(text);
      }),
    );
  });
});

describe('D8: rounding never hides a fault', () => {
  test('9.97 in against 10 in never prints 10', () => {
    expect(formatAgainstLimit(9.97 * INCH_m, 10 * INCH_m, 'feet')).toEqual({ value: `9 31/32"`, limit: `10"` });
    expect(formatAgainstLimit(0.2539, 0.254, 'metric')).toEqual({ value: '253.9 mm', limit: '254.0 mm' });
    expect(formatAgainstLimit(9.9999 * INCH_m, 10 * INCH_m, 'feet')).toEqual({ value: '9.99990"', limit: '10.00000"' });
  });

  test('what is kept exactly, or differs by float noise only, prints plainly', () => {
    expect(formatAgainstLimit(10 * INCH_m, 0.254, 'feet')).toEqual({ value: `10"`, limit: `10"` });
    expect(formatAgainstLimit(0.254 - 1e-12, 0.254, 'metric')).toEqual({ value: '254 mm', limit: '254 mm' });
    expect(formatAgainstLimit(8 * INCH_m, 0.254, 'feet')).toEqual({ value: `8"`, limit: `10"` });
  });

  test('different lengths read differently and in their true order', () => {
    const limits = fc.double({ min: 0.01, max: 50, noNaN: true });
    const offsets = fc.tuple(fc.double({ min: 1, max: 9.99, noNaN: true }), fc.integer({ min: -8, max: 0 }), fc.boolean()).map(([m, e, less]) => (less ? -1 : 1) * m * 10 ** e);
    fc.assert(
      fc.property(limits, offsets, fc.constantFrom(...SYSTEMS), (limit_m, offset_m, system) => {
        const printed = formatAgainstLimit(limit_m + offset_m, limit_m, system);
        expect(printed.value).not.toBe(printed.limit);
        const value = parseLength(printed.value, system);
        const limit = parseLength(printed.limit, system);
        expect(value.ok && limit.ok && Math.sign(value.length_m - limit.length_m)).toBe(Math.sign(offset_m));
      }),
    );
  });
});
