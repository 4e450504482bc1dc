import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Rooms, emptyRooms, roomsAfter } from '#shared/calculations/discharge/room';
import { NITROGEN_R_J_kgK } from '#shared/calculations/formulas/nitrogen-coefficients';
import { SMALL_UNIT } from './units.ts';

/** A steady flow into one room for a time, in even steps. */
function filledRoom(ventArea_m2: number, flow_kg_s: number, steps: number, until_s: number): Rooms {
  const input = { ...SMALL_UNIT, enclosures: SMALL_UNIT.enclosures.map((enclosure) => ({ ...enclosure, ventArea_m2 })) };
  let rooms = emptyRooms(input);
  for (let step = 0; step < steps; step += 1) rooms = roomsAfter(rooms, [flow_kg_s], (step * until_s) / steps, until_s / steps);
  return rooms;
}
const overOf = ({ enclosures }: Rooms): number => enclosures[0]?.overpressure_Pa ?? Number.NaN;
const shareOf = ({ spaces }: Rooms): number => spaces[0]?.share ?? Number.NaN;

describe('pressure', () => {
  test('a sealed room holds all that flows in: Δp = m·R·T/V', () => {
    expect(overOf(filledRoom(0, 0.35, 40, 20))).toBeCloseTo((7 * NITROGEN_R_J_kgK * 293.15) / 39.87, 6);
  });
  test('a steady flow settles where the vent passes it: Δp = ρ/2·(Q/(C_d·A))²', () => {
    const rooms = filledRoom(0.0242, 0.35, 200, 10);
    const pressure_Pa = 101_325 + overOf(rooms);
    const density_kg_m3 = (pressure_Pa / 293.15) * (shareOf(rooms) / NITROGEN_R_J_kgK + (1 - shareOf(rooms)) / 287.05);
    const inflow_m3_s = (0.35 * NITROGEN_R_J_kgK * 293.15) / pressure_Pa;
    expect(overOf(rooms) / ((density_kg_m3 / 2) * (inflow_m3_s / (0.61 * 0.0242)) ** 2)).toBeCloseTo(1, 3);
    expect(overOf(rooms)).toBeGreaterThan(230);
    expect(overOf(rooms)).toBeLessThan(270);
  });
  test('while it rises it follows the volume balance (integrated in fine explicit steps)', () => {
    let over_Pa = 0;
    for (let step = 0; step < 20_000; step += 1) {
      const pressure_Pa = 101_325 + over_Pa;
      const out_m3_s = 0.61 * 0.0242 * Math.sqrt((2 * over_Pa) / (pressure_Pa / (287.05 * 293.15)));
      over_Pa += (0.4 / 20_000) * ((0.35 * NITROGEN_R_J_kgK * 293.15 - pressure_Pa * out_m3_s) / 39.87);
    }
    expect(overOf(filledRoom(0.0242, 0.35, 200, 0.4)) / over_Pa).toBeCloseTo(1, 2);
  });
  test('any vent and any step leave it finite and not below outdoors; a larger vent leaves less', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 10, noNaN: true }), fc.double({ min: 0, max: 10, noNaN: true }), fc.double({ min: 0, max: 20, noNaN: true }), fc.double({ min: 1e-3, max: 5, noNaN: true }), (a, b, flow_kg_s, step_s) => {
        const small = overOf(filledRoom(Math.min(a, b), flow_kg_s, 10, 10 * step_s));
        const large = overOf(filledRoom(Math.max(a, b), flow_kg_s, 10, 10 * step_s));
        expect(Number.isFinite(small) && large >= 0).toBe(true);
        expect(large).toBeLessThanOrEqual(small * (1 + 1e-9) + 1e-9);
      }),
    );
  });
  test('a vent as large as a wall leaves as good as nothing', () => {
    expect(overOf(filledRoom(20, 0.35, 100, 10))).toBeLessThan(1e-3);
  });
});

describe('concentration', () => {
  test('m = V/s·ln(100/(100 − C)): the agent for 40.3 % brings 40.3 % (form of ISO 14520-1)', () => {
    const mass_kg = (39.87 / ((NITROGEN_R_J_kgK * 293.15) / 101_325)) * Math.log(100 / (100 - 40.3));
    expect(100 * shareOf(filledRoom(20, mass_kg / 50, 30, 50))).toBeCloseTo(40.3, 4);
  });
  test('a sealed room holds all its air beside the agent', () => {
    const rooms = filledRoom(0, 0.35, 2000, 50);
    const air_Pa = 101_325;
    expect(shareOf(rooms)).toBeCloseTo(overOf(rooms) / (air_Pa + overOf(rooms)), 5);
  });
  test('the time to 95 % lies between the steps, where a straight line crosses it', () => {
    const coarse = filledRoom(20, 0.35, 60, 120).spaces[0]?.timeTo95_s ?? 0;
    const fine = filledRoom(20, 0.35, 6000, 120).spaces[0]?.timeTo95_s ?? 0;
    const exact = (39.87 / ((0.35 * NITROGEN_R_J_kgK * 293.15) / 101_325)) * Math.log(1 / (1 - 0.95 * 0.403));
    expect(fine / exact).toBeCloseTo(1, 4);
    expect(coarse / exact).toBeCloseTo(1, 3);
  });
  test('it is never reached where too little comes', () => {
    expect(filledRoom(20, 0.05, 60, 120).spaces[0]?.timeTo95_s).toBeUndefined();
  });
});
