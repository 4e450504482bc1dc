import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BLOWDOWN_PROCESSES, idealBlowdownTo, type Vessel } from '#shared/calculations/formulas/blowdown';
import { realBlowdownTo } from '#shared/calculations/formulas/blowdown-real';
import { nitrogenDensity_kg_m3, nitrogenState } from '#shared/calculations/formulas/nitrogen';
import { realChokedFlux_kg_m2s } from '#shared/calculations/formulas/orifice';

/** 80 L at 200 bar and 15 °C through 5 mm, C_d 0.85. */
const VESSEL: Vessel = { volume_m3: 0.08, pressure_Pa: 200e5, temperature_K: 288.15, area_m2: Math.PI * 0.0025 ** 2, dischargeCoefficient: 0.85, backPressure_Pa: 101_325 };

/** Mass and internal energy in the vessel followed in time by midpoint steps: knows nothing of entropy. */
function followed(time_s: number, steps: number): { readonly temperature_K: number; readonly pressure_Pa: number; readonly massFraction: number } {
  let near_K = VESSEL.temperature_K;
  const stateOf = (mass: number, energy: number): ReturnType<typeof nitrogenState> => {
    let state = nitrogenState(mass / VESSEL.volume_m3, near_K);
    for (let step = 0; step < 8; step += 1) {
      near_K += (energy / mass - state.internalEnergy_J_kg) / state.cv_J_kgK;
      state = nitrogenState(mass / VESSEL.volume_m3, near_K);
    }
    return state;
  };
  const start = nitrogenState(nitrogenDensity_kg_m3(VESSEL.pressure_Pa, VESSEL.temperature_K), VESSEL.temperature_K);
  let mass = start.density_kg_m3 * VESSEL.volume_m3;
  const first = mass;
  let energy = mass * start.internalEnergy_J_kg;
  const slopes = (m: number, u: number): [number, number] => {
    const state = stateOf(m, u);
    const out = VESSEL.area_m2 * VESSEL.dischargeCoefficient * realChokedFlux_kg_m2s(state.pressure_Pa, state.temperature_K);
    return [-out, -out * state.enthalpy_J_kg];
  };
  const step_s = time_s / steps;
  for (let step = 0; step < steps; step += 1) {
    const [m, u] = slopes(mass, energy);
    const [middleM, middleU] = slopes(mass + (m * step_s) / 2, energy + (u * step_s) / 2);
    mass += middleM * step_s;
    energy += middleU * step_s;
  }
  const end = stateOf(mass, energy);
  return { temperature_K: end.temperature_K, pressure_Pa: end.pressure_Pa, massFraction: mass / first };
}

describe('blowdown of real nitrogen', () => {
  // Gas left at constant entropy with the equation of Span et al. 2000, evaluated independently, beside the ideal gas.
  test.each([
    [100, 235.4, 0.685, 236.4, 0.61],
    [60, 202.2, 0.503, 204.3, 0.423],
    [30, 164.0, 0.319, 167.6, 0.258],
  ])('Span et al. 2000: from 200 bar, 15 °C to %d bar %d K and %d of the mass are left (ideal %d K, %d)', (pressure_bar, temperature_K, massFraction, ideal_K, idealFraction) => {
    const real = realBlowdownTo(VESSEL, 'adiabatic', pressure_bar * 1e5);
    expect(Math.abs(real.temperature_K - temperature_K)).toBeLessThanOrEqual(0.051);
    expect(Math.abs(real.massFraction - massFraction)).toBeLessThanOrEqual(5.1e-4);
    const ideal = idealBlowdownTo(VESSEL, 'adiabatic', pressure_bar * 1e5);
    expect(Math.abs(ideal.temperature_K - ideal_K)).toBeLessThanOrEqual(0.051);
    expect(Math.abs(ideal.massFraction - idealFraction)).toBeLessThanOrEqual(5.1e-4);
  });

  test.each([100, 40])('independent integration in time of mass and energy comes to %d bar at the same time', (pressure_bar) => {
    const end = realBlowdownTo(VESSEL, 'adiabatic', pressure_bar * 1e5);
    const state = followed(end.time_s, 120);
    expect(state.pressure_Pa / end.pressure_Pa).toBeCloseTo(1, 3);
    expect(state.temperature_K).toBeCloseTo(end.temperature_K, 1);
    expect(state.massFraction / end.massFraction).toBeCloseTo(1, 4);
  });

  test('isothermal: time is the integral of dm/ṁ, by midpoints over pressure', () => {
    const steps = 400;
    let time_s = 0;
    for (let step = 0; step < steps; step += 1) {
      const at = (part: number): number => 200e5 * 0.3 ** ((step + part) / steps);
      const mass_kg = (nitrogenDensity_kg_m3(at(0), 288.15) - nitrogenDensity_kg_m3(at(1), 288.15)) * VESSEL.volume_m3;
      time_s += mass_kg / (VESSEL.area_m2 * VESSEL.dischargeCoefficient * realChokedFlux_kg_m2s(at(0.5), 288.15));
    }
    expect(realBlowdownTo(VESSEL, 'isothermal', 60e5).time_s / time_s).toBeCloseTo(1, 5);
  });

  test.each(BLOWDOWN_PROCESSES)('thin gas is the ideal one: %s', (process) => {
    const thin = { ...VESSEL, pressure_Pa: 2000, backPressure_Pa: 0 };
    const real = realBlowdownTo(thin, process, 800);
    const ideal = idealBlowdownTo(thin, process, 800);
    expect(real.time_s / ideal.time_s).toBeCloseTo(1, 3);
    expect(real.temperature_K / ideal.temperature_K).toBeCloseTo(1, 3);
    expect(real.massFraction / ideal.massFraction).toBeCloseTo(1, 3);
  });

  test('lower pressure takes longer, leaves less and is no warmer', () => {
    fc.assert(
      fc.property(fc.constantFrom(...BLOWDOWN_PROCESSES), fc.double({ min: 40e5, max: 190e5, noNaN: true }), (process, pressure_Pa) => {
        const low = realBlowdownTo(VESSEL, process, pressure_Pa);
        const high = realBlowdownTo(VESSEL, process, pressure_Pa * 1.05);
        expect(low.time_s).toBeGreaterThan(high.time_s);
        expect(low.massFraction).toBeLessThan(high.massFraction);
        expect(low.temperature_K).toBeLessThanOrEqual(high.temperature_K);
      }),
      { numRuns: 20 },
    );
  });

  test('where the range of the equation or the choking ends it is refused with the reason', () => {
    expect(() => realBlowdownTo(VESSEL, 'adiabatic', 15e5)).toThrow('toPressure_Pa is too low for the real gas');
    expect(() => realBlowdownTo(VESSEL, 'isothermal', 1.8e5)).toThrow('no longer chokes: the pressure must be at least 19');
    expect(() => realBlowdownTo(VESSEL, 'isothermal', 210e5)).toThrow('toPressure_Pa');
    expect(() => realBlowdownTo({ ...VESSEL, temperature_K: 100 }, 'isothermal', 100e5)).toThrow('temperature_K');
    expect(realBlowdownTo(VESSEL, 'adiabatic', 200e5)).toMatchObject({ time_s: 0, massFraction: 1 });
  });
});
