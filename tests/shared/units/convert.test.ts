import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as convert from '#shared/units/convert';

describe('NIST SP 811 (2008), appendix B.8', () => {
  test.each([
    ['foot', convert.feet_m(1), 0.3048],
    ['inch', convert.inches_m(1), 0.0254],
    ['square foot', convert.squareFeet_m2(1), 9.290304e-2],
    ['square inch', convert.squareInches_m2(1), 6.4516e-4],
    ['cubic foot', convert.cubicFeet_m3(1), 2.831685e-2],
    ['litre', convert.litres_m3(1), 1e-3],
    ['pound', convert.pounds_kg(1), 4.535924e-1],
    ['psi', convert.psi_Pa(1), 6.894757e3],
    ['psf', convert.psf_Pa(1), 4.788026e1],
    ['bar', convert.bar_Pa(1), 1e5],
    ['degree', convert.degrees_rad(1), 1.745329e-2],
  ])('one %s', (_, ours, published) => {
    expect(Math.abs(ours / published - 1)).toBeLessThan(5e-7);
  });

  test('temperatures: 212 °F is 100 °C is 373.15 K', () => {
    expect(convert.fahrenheit_K(212)).toBeCloseTo(373.15, 9);
    expect(convert.celsius_K(100)).toBeCloseTo(373.15, 9);
  });

  test('a gauge at sea level reads from one standard atmosphere, 101 325 Pa', () => {
    expect(convert.absoluteOf_Pa(0)).toBe(101_325);
    expect(convert.toBar(convert.gaugeOf_Pa(30_101_325))).toBe(300);
  });
});

test('every conversion undoes its counterpart', () => {
  const pairs: [(v: number) => number, (v: number) => number][] = [
    [convert.inches_m, convert.toInches],
    [convert.feet_m, convert.toFeet],
    [convert.millimetres_m, convert.toMillimetres],
    [convert.degrees_rad, convert.toDegrees],
    [convert.bar_Pa, convert.toBar],
    [convert.psi_Pa, convert.toPsi],
    [convert.psf_Pa, convert.toPsf],
    [convert.absoluteOf_Pa, convert.gaugeOf_Pa],
    [convert.celsius_K, convert.toCelsius],
    [convert.fahrenheit_K, convert.toFahrenheit],
    [convert.squareFeet_m2, convert.toSquareFeet],
    [convert.squareInches_m2, convert.toSquareInches],
    [convert.cubicFeet_m3, convert.toCubicFeet],
    [convert.litres_m3, convert.toLitres],
    [convert.pounds_kg, convert.toPounds],
  ];
  fc.assert(
    fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.constantFrom(...pairs), (value, [there, back]) => {
      expect(Math.abs(back(there(value)) - value)).toBeLessThan(1e-9 * Math.max(1, Math.abs(value)));
    }),
  );
});
