import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { gasHeightLeft_m, gasInterface, holdTimeAllowedLeakage } from '#shared/calculations/formulas/hold-leakage';
import { type LeakyEnclosure, fanCoefficientOf, interfaceTime_s, mixingTime_s, mixtureDensity_kg_m3, wideInterfaceHeight_m } from '#shared/calculations/formulas/hold-time';

/** Worked room: 240 m³, 3 m high, leakage 0.10 m² at 10 Pa, n 0.6. */
const ROOM: LeakyEnclosure = { volume_m3: 240, height_m: 3, fanCoefficient: fanCoefficientOf(0.1, 10, 0.6), fanExponent: 0.6, lowerLeakFraction: 0.5, bias_Pa: 0 };

describe('which way the gas goes', () => {
  // Molar masses of IUPAC against air of 28.96 g/mol: nitrogen 28.01, argon 39.95, the blends about 34.
  test.each([
    ['IG-100', 1.165, 'rising'],
    ['IG-01', 1.661, 'descending'],
    ['IG-55', 1.412, 'descending'],
    ['IG-541', 1.417, 'descending'],
  ])('%s mixed with air', (_, agent_kg_m3, way) => {
    for (const concentration of [10, 40.3, 62, 100]) expect(gasInterface(mixtureDensity_kg_m3(agent_kg_m3, concentration))).toBe(way);
  });

  test('lighter gas is measured from the ceiling down, heavier from the floor up', () => {
    expect(gasHeightLeft_m('rising', 3, 0.5)).toBe(2.5);
    expect(gasHeightLeft_m('descending', 3, 2.5)).toBe(2.5);
    expect(gasHeightLeft_m('rising', 3, 0)).toBe(3);
    expect(() => gasHeightLeft_m('rising', 3, 3.1)).toThrow('protectedPoint_m');
  });

  // Computed by hand for IG-100 at 40.3 vol % in the worked room: 2.5 m of gas left after 3193.4 s.
  test('worked room: nitrogen to a point 0.5 m above the floor', () => {
    const mixture = mixtureDensity_kg_m3(1.165, 40.3);
    expect(interfaceTime_s(ROOM, mixture, gasHeightLeft_m(gasInterface(mixture), 3, 0.5))).toBeCloseTo(3193.4, 0);
  });

  test('a lower point loses lighter gas sooner', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2.8, noNaN: true }), fc.double({ min: 0.01, max: 0.2, noNaN: true }), (low, more) => {
        const time = (point: number): number => interfaceTime_s(ROOM, 1.18888, gasHeightLeft_m('rising', 3, point));
        expect(time(low)).toBeLessThan(time(low + more));
      }),
    );
  });

  test('gas whose lowest protected point is the floor holds for no time', () => {
    expect(interfaceTime_s(ROOM, 1.18888, gasHeightLeft_m('rising', 3, 0))).toBe(0);
  });
});

describe('leakage allowed', () => {
  const MODELS: readonly (readonly [string, (room: LeakyEnclosure) => number])[] = [
    ['sharp', (room) => interfaceTime_s(room, 1.288421, 2.5)],
    ['wide', (room) => interfaceTime_s(room, 1.288421, wideInterfaceHeight_m(3, 2.5, 40.3, 34.255))],
    ['mixing', (room) => mixingTime_s(room, 1.412, 40.3, 34.255)],
    ['lighter than air, with ventilation', (room) => interfaceTime_s({ ...room, bias_Pa: 1 }, 1.18888, 2.5)],
  ];

  test.each(MODELS)('put back, it holds for exactly the time wanted: %s', (_, timeOf) => {
    for (const wanted_s of [60, 600, 3600]) {
      const allowed = holdTimeAllowedLeakage(ROOM.fanCoefficient, 0.6, timeOf(ROOM), wanted_s);
      expect(timeOf({ ...ROOM, fanCoefficient: allowed.fanCoefficient })).toBeCloseTo(wanted_s, 6);
      expect(timeOf({ ...ROOM, fanCoefficient: fanCoefficientOf(allowed.leakageArea_m2, 10, 0.6) })).toBeCloseTo(wanted_s, 6);
    }
  });

  // By hand: 0.10 m² · 701.6 s/600 s.
  test('by hand: the worked room may leak 0.1169 m² at 10 Pa by the wide interface', () => {
    expect(holdTimeAllowedLeakage(ROOM.fanCoefficient, 0.6, 701.6, 600).leakageArea_m2).toBeCloseTo(0.116933, 5);
  });

  test('gas that holds for no time allows no leakage', () => {
    expect(holdTimeAllowedLeakage(0.06, 0.6, 0, 600)).toEqual({ fanCoefficient: 0, leakageArea_m2: 0 });
    expect(() => holdTimeAllowedLeakage(0.06, 0.6, 100, 0)).toThrow('wanted_s');
  });
});
