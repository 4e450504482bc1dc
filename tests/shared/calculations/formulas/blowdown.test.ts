import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BLOWDOWN_PROCESSES, blowdownTimeScale_s, idealBlowdownAt, idealBlowdownTo, type Vessel } from '#shared/calculations/formulas/blowdown';
import { idealCylinderMass_kg } from '#shared/calculations/formulas/cylinder-gas';
import { idealOrificeFlow_kg_s } from '#shared/calculations/formulas/orifice';

/** 80 L at 200 bar and 15 °C through 5 mm, C_d 0.85. */
const VESSEL: Vessel = { volume_m3: 0.08, pressure_Pa: 200e5, temperature_K: 288.15, area_m2: Math.PI * 0.0025 ** 2, dischargeCoefficient: 0.85, backPressure_Pa: 101_325 };
const flow_kg_s = (pressure_Pa: number, temperature_K: number): number => idealOrificeFlow_kg_s(VESSEL.area_m2, VESSEL.dischargeCoefficient, pressure_Pa, temperature_K, 101_325);

describe('blowdown of an ideal gas: 80 L, 200 bar, 15 °C, 5 mm', () => {
  test('closed form: time scale 23.9374 s, first flow 0.781547 kg/s, 18.7082 kg at the start', () => {
    expect(blowdownTimeScale_s(VESSEL)).toBeCloseTo(23.9374, 3);
    expect(flow_kg_s(200e5, 288.15)).toBeCloseTo(0.781547, 5);
    expect(idealCylinderMass_kg(0.08, 200e5, 288.15)).toBeCloseTo(18.7082, 3);
  });

  // Closed form of choked blowdown, any gas-dynamics text; its integration in time gives 11.6344 bar and 127.844 K at 60 s too.
  test.each([
    [5, 162.299, 150.18, 265.5, 0.8149, 0.6114],
    [10, 131.705, 114.047, 245.43, 0.6695, 0.4829],
    [20, 86.731, 67.806, 211.54, 0.4618, 0.3092],
    [30, 57.114, 41.79, 184.22, 0.3268, 0.2042],
    [60, 16.31, 11.634, 127.84, 0.1311, 0.0683],
  ])('closed form: after %d s %d bar isothermal; %d bar, %d K, share %d and %d kg/s adiabatic', (time_s, isothermal_bar, pressure_bar, temperature_K, massFraction, flow) => {
    const isothermal = idealBlowdownAt(VESSEL, 'isothermal', time_s);
    expect(isothermal.pressure_Pa / 1e5).toBeCloseTo(isothermal_bar, 2);
    expect(isothermal.massFraction * 200).toBeCloseTo(isothermal_bar, 2);
    expect(isothermal.temperature_K).toBe(288.15);
    const adiabatic = idealBlowdownAt(VESSEL, 'adiabatic', time_s);
    expect(adiabatic.pressure_Pa / 1e5).toBeCloseTo(pressure_bar, 2);
    expect(adiabatic.temperature_K).toBeCloseTo(temperature_K, 1);
    expect(adiabatic.massFraction).toBeCloseTo(massFraction, 4);
    expect(flow_kg_s(adiabatic.pressure_Pa, adiabatic.temperature_K)).toBeCloseTo(flow, 3);
  });

  // The last pressure that chokes against one atmosphere is 101 325/0.528282 Pa.
  test.each([
    ['isothermal', 111.24],
    ['adiabatic', 112.78],
  ] as const)('closed form: %s, it stops choking against the atmosphere after %d s', (process, time_s) => {
    expect(idealBlowdownTo(VESSEL, process, 101_325 / 0.52828178).time_s).toBeCloseTo(time_s, 1);
  });

  test.each([
    ['isothermal', 71.71],
    ['adiabatic', 98.21],
  ] as const)('closed form: %s, all but a twentieth of the mass is out after %d s', (process, time_s) => {
    expect(Math.abs(idealBlowdownAt(VESSEL, process, time_s).massFraction - 0.05)).toBeLessThan(2e-5);
  });

  test('independent integration in time of mass and energy gives the adiabatic state at 60 s', () => {
    const R = 8.314462618 / 0.0280134;
    let mass = (200e5 * 0.08) / (R * 288.15);
    let temperature_K = 288.15;
    const steps = 60_000;
    for (let step = 0; step < steps; step += 1) {
      const out = (60 / steps) * VESSEL.area_m2 * 0.85 * 0.684731 * ((mass * R * temperature_K) / 0.08 / Math.sqrt(R * temperature_K));
      // d(m·cv·T) = −cp·T·dm
      temperature_K *= 1 - (0.4 * out) / mass;
      mass -= out;
    }
    const state = idealBlowdownAt(VESSEL, 'adiabatic', 60);
    expect(state.temperature_K).toBeCloseTo(temperature_K, 1);
    expect(state.pressure_Pa / ((mass * R * temperature_K) / 0.08)).toBeCloseTo(1, 3);
  });
});

describe('blowdown as a function', () => {
  const somePressure = fc.double({ min: 2e5, max: 199e5, noNaN: true });

  test('time to a pressure and pressure after that time are inverse', () => {
    fc.assert(
      fc.property(fc.constantFrom(...BLOWDOWN_PROCESSES), somePressure, (process, pressure_Pa) => {
        const end = idealBlowdownTo(VESSEL, process, pressure_Pa);
        expect(idealBlowdownAt(VESSEL, process, end.time_s).pressure_Pa / pressure_Pa).toBeCloseTo(1, 9);
      }),
    );
  });

  test('lower pressure takes longer, leaves less and is no warmer', () => {
    fc.assert(
      fc.property(fc.constantFrom(...BLOWDOWN_PROCESSES), somePressure, fc.double({ min: 1.001, max: 1.5, noNaN: true }), (process, pressure_Pa, factor) => {
        const low = idealBlowdownTo(VESSEL, process, pressure_Pa);
        const high = idealBlowdownTo(VESSEL, process, Math.min(200e5, pressure_Pa * factor));
        expect(low.time_s).toBeGreaterThan(high.time_s);
        expect(low.massFraction).toBeLessThan(high.massFraction);
        expect(low.temperature_K).toBeLessThanOrEqual(high.temperature_K);
      }),
    );
  });

  test('a pressure that no longer chokes is refused and the least one named', () => {
    expect(() => idealBlowdownTo(VESSEL, 'adiabatic', 1.9e5)).toThrow('toPressure_Pa brings the vessel to 190000 Pa, where the orifice no longer chokes: the pressure must be at least 191802 Pa');
    expect(() => idealBlowdownTo(VESSEL, 'adiabatic', 191_802)).not.toThrow();
    expect(() => idealBlowdownAt(VESSEL, 'isothermal', 120)).toThrow('time_s');
    expect(idealBlowdownTo({ ...VESSEL, backPressure_Pa: 0 }, 'isothermal', 1e5).time_s).toBeGreaterThan(111);
  });

  test('a pressure above that of the start is refused', () => {
    expect(() => idealBlowdownTo(VESSEL, 'adiabatic', 201e5)).toThrow('toPressure_Pa');
    expect(idealBlowdownTo(VESSEL, 'isothermal', 200e5)).toMatchObject({ time_s: 0, massFraction: 1 });
  });
});
