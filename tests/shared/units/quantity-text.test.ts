import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LengthSystem } from '#shared/units/length-text';
import { type QuantityKind, formatQuantity, formatQuantityAgainstLimit, parseQuantity, unitName } from '#shared/units/quantity-text';

const SYSTEMS: LengthSystem[] = ['feet', 'metric'];
const KINDS: QuantityKind[] = ['length', 'area', 'orificeArea', 'volume', 'mass', 'pressure', 'gaugePressure', 'pressureDifference', 'angle', 'count', 'massFlow', 'volumeFlow', 'voltage', 'current', 'ratio', 'temperature'];
const value = (text: string, kind: QuantityKind, system: LengthSystem): number => {
  const parsed = parseQuantity(text, kind, system);
  if (!parsed.ok) throw new Error(parsed.reason);
  return parsed.value;
};

test.each([
  [62.918, 'area', 'feet', '677.24 ft²'],
  [199.84, 'volume', 'metric', '199.84 m³'],
  [0.0242, 'area', 'metric', '0.0242 m²'],
  [24.7, 'mass', 'metric', '24.7 kg'],
  [24.7, 'mass', 'feet', '54.5 lb'],
  [30_101_325, 'pressure', 'metric', '301.0 bar abs'],
  [250, 'pressure', 'metric', '250 Pa'],
  [13_789_515, 'gaugePressure', 'metric', '137.9 bar gauge'],
  [13_789_515, 'gaugePressure', 'feet', '2000.0 psi gauge'],
  [250, 'pressureDifference', 'feet', '5.22 psf'],
  [Math.PI / 6, 'angle', 'feet', '30.0°'],
  [-1e-18, 'angle', 'feet', '0.0000°'],
  [6, 'count', 'metric', '6'],
  [0.35, 'massFlow', 'metric', '0.350 kg/s'],
  [0.4, 'volumeFlow', 'feet', '848 ft³/min'],
  [0.4, 'volumeFlow', 'metric', '0.400 m³/s'],
  [24, 'voltage', 'feet', '24.0 V'],
  [0.005, 'ratio', 'feet', '0.500 %'],
  [291.15, 'temperature', 'metric', '18.0 °C'],
  [291.15, 'temperature', 'feet', '64.4 °F'],
  [3.46, 'length', 'metric', '3.460 m'],
  [3, 'text', 'metric', '3'],
  [Number.NaN, 'mass', 'metric', 'not known'],
] as const)('%d as %s in %s prints %s', (figure, kind, system, text) => {
  expect(formatQuantity(figure, kind, system)).toBe(text);
});

test.each([
  ['300 bar(g)', 'pressure', 'feet', 30_101_325],
  ['60 barg', 'pressure', 'metric', 6_101_325],
  ['0 psig', 'pressure', 'feet', 101_325],
  ['301.01325', 'pressure', 'metric', 30_101_325],
  ['30.1 MPa', 'pressure', 'metric', 30_100_000],
  ['60 barg', 'gaugePressure', 'feet', 6_000_000],
  ['60', 'gaugePressure', 'metric', 6_000_000],
  ['250', 'pressureDifference', 'metric', 250],
  ['0.25 kPa', 'pressureDifference', 'feet', 250],
  ['80 L', 'volume', 'feet', 0.08],
  ['45°', 'angle', 'metric', Math.PI / 4],
  ['-45 deg', 'angle', 'metric', -Math.PI / 4],
  ['1 rad', 'angle', 'metric', 1],
  ['0,5 %', 'ratio', 'metric', 0.005],
  ['5', 'ratio', 'metric', 0.05],
  ['18 °C', 'temperature', 'feet', 291.15],
  ['-40', 'temperature', 'feet', 233.15],
  [`10"`, 'length', 'metric', 0.254],
  ['1.5A', 'current', 'metric', 1.5],
  ['1000 cfm', 'volumeFlow', 'metric', 0.471_947_443_2],
  ['360 m³/h', 'volumeFlow', 'feet', 0.1],
] as const)('%s as %s in %s', (text, kind, system, figure) => {
  expect(value(text, kind, system)).toBeCloseTo(figure, 6);
});

test.each<[string, QuantityKind]>([
  ['', 'mass'], ['heavy', 'mass'], ['4.5', 'count'], ['3 bar', 'mass'], ['1e9', 'mass'], ['1,234 kg', 'mass'], ['9'.repeat(400), 'mass'], ['--3', 'angle'], ['3 3', 'length'],
])('%s as %s is refused with a sentence', (text, kind) => {
  const parsed = parseQuantity(text, kind, 'metric');
  expect(parsed.ok).toBe(false);
  if (!parsed.ok) expect(parsed.reason).toMatch(/such as|Write|Use/);
});

test('every kind names the unit of a bare number, and means it', () => {
  for (const kind of KINDS) {
    for (const system of SYSTEMS) {
      const name = unitName(kind, system);
      expect(value('7', kind, system)).toBeCloseTo(value(`7 ${name}`, kind, system), 9);
    }
  }
});

test('a count and a kind without a unit name none', () => {
  expect([unitName('count', 'feet'), unitName('text', 'metric')]).toEqual(['', '']);
});

describe('what is printed can be typed back', () => {
  test('to a part in a hundred, or to its last digit', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 9000, noNaN: true }), fc.constantFrom(...KINDS.filter((kind) => kind !== 'count')), fc.constantFrom(...SYSTEMS), (figure, kind, system) => {
        const base = kind === 'temperature' ? figure / 20 + 200 : kind === 'pressure' ? 1_000_000 + figure * 1000 : figure;
        const typed = value(formatQuantity(base, kind, system), kind, system);
        expect(Math.abs(typed - base)).toBeLessThanOrEqual(Math.max(0.01 * base, 0.6));
      }),
    );
  });
});

test('a figure and its limit read differently whenever they differ, in their true order (D8)', () => {
  expect(formatQuantityAgainstLimit(48.998, 49, 'area', 'metric')).toEqual({ value: '48.998 m²', limit: '49.000 m²' });
  expect(formatQuantityAgainstLimit(49, 49, 'area', 'metric')).toEqual({ value: '49.00 m²', limit: '49.00 m²' });
  fc.assert(
    fc.property(fc.double({ min: 0.5, max: 5000, noNaN: true }), fc.double({ min: 1e-6, max: 0.9, noNaN: true }), fc.boolean(), fc.constantFrom(...KINDS), fc.constantFrom(...SYSTEMS), (limit, share, isLess, kind, system) => {
      const printed = formatQuantityAgainstLimit(limit * (isLess ? 1 - share : 1 + share), limit, kind, system);
      expect(printed.value).not.toBe(printed.limit);
    }),
  );
});
