import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type VentOpening, enclosurePressure_Pa, reliefVentArea_m2, ventChain } from '#shared/calculations/formulas/relief-vent';

const VENT: VentOpening = { area_m2: 0.3, dischargeCoefficient: 0.61 };
const opening = fc.record({ area_m2: fc.double({ min: 0.01, max: 5, noNaN: true }), dischargeCoefficient: fc.double({ min: 0.1, max: 1, noNaN: true }) });

describe('openings on the way outdoors', () => {
  // Flow of air for 500 Pa through all three in turn, found by halving on the sum of the three orifice losses: 2.684885 m³/s.
  test('orifice losses in turn: vent, duct and louvre', () => {
    const { jetArea_m2, dischargeCoefficient, area_m2 } = ventChain([VENT, { area_m2: 0.5, dischargeCoefficient: 0.8 }, { area_m2: 0.25, dischargeCoefficient: 0.45 }]);
    expect(jetArea_m2).toBeCloseTo(0.0932007, 7);
    expect(jetArea_m2 * Math.sqrt((2 * 500) / 1.205)).toBeCloseTo(2.684885, 5);
    expect(dischargeCoefficient * area_m2).toBeCloseTo(jetArea_m2, 12);
  });

  // By hand: 0.3·0.4/√(0.3² + 0.4²) = 0.24.
  test('by hand: 0.3 and 0.4 m² make 0.24 m²', () => {
    expect(ventChain([VENT, { ...VENT, area_m2: 0.4 }]).area_m2).toBeCloseTo(0.24, 12);
  });

  test.each([
    ['two', 2, 0.212132],
    ['four', 4, 0.15],
  ])('by hand: %s equal openings let through one over the root of their number', (_, count, expected) => {
    const chain = ventChain(Array.from({ length: count }, () => VENT));
    expect(chain.area_m2).toBeCloseTo(expected, 6);
    expect(chain.dischargeCoefficient).toBeCloseTo(0.61, 12);
  });

  test('a chain is tighter than its tightest opening, whatever the order', () => {
    fc.assert(
      fc.property(fc.array(opening, { minLength: 1, maxLength: 6 }), opening, (openings, more) => {
        const chain = ventChain(openings);
        expect(chain.area_m2).toBeLessThanOrEqual(Math.min(...openings.map(({ area_m2 }) => area_m2)) * (1 + 1e-12));
        expect(chain.dischargeCoefficient).toBeLessThanOrEqual(1 + 1e-12);
        expect(ventChain([...openings, more]).jetArea_m2).toBeLessThan(chain.jetArea_m2);
        expect(ventChain([...openings].reverse()).jetArea_m2).toBeCloseTo(chain.jetArea_m2, 9);
      }),
    );
  });

  test('no way outdoors is refused', () => {
    expect(() => ventChain([])).toThrow('openings');
    expect(() => ventChain([{ area_m2: 0, dischargeCoefficient: 0.61 }])).toThrow('area_m2');
    expect(() => ventChain([{ area_m2: 1, dischargeCoefficient: 1.1 }])).toThrow('dischargeCoefficient');
  });
});

describe('pressure in the enclosure', () => {
  // The worked vents by hand, read backwards: 240 m³, IG-100 at 20 °C, C_d 0.61, air of 1.205 kg/m³ leaving.
  test.each([
    ['mean flow', 2.2494, 0.1099, 500],
    ['mean flow', 2.2494, 0.1554, 250],
    ['peak flow', 6.073, 0.2966, 500],
    ['peak flow', 6.073, 0.4195, 250],
  ])('worked room: %s of %d kg/s through %d m²', (_, flow, area, pressure) => {
    expect(enclosurePressure_Pa(flow, 0.85828, area, 0.61, 1.205) / pressure).toBeCloseTo(1, 2);
  });

  test('inverse: the vent for a pressure gives that pressure', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 50, noNaN: true }), fc.double({ min: 10, max: 5000, noNaN: true }), fc.double({ min: 0.3, max: 1, noNaN: true }), (flow, pressure, coefficient) => {
        const area = reliefVentArea_m2(flow, 0.858, pressure, coefficient, 1.19);
        expect(enclosurePressure_Pa(flow, 0.858, area, coefficient, 1.19) / pressure).toBeCloseTo(1, 9);
      }),
    );
  });

  test('a closed vent is refused, not endless', () => {
    expect(() => enclosurePressure_Pa(1, 0.858, 0, 0.61, 1.205)).toThrow('area_m2');
  });
});
