import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NITROGEN_GREATEST_K, NITROGEN_LEAST_K, nitrogenDensity_kg_m3, nitrogenState, type NitrogenState } from '#shared/calculations/formulas/nitrogen';

const MOLAR_MASS = 0.02801348;
const at = (pressure_bar: number, temperature_C: number): NitrogenState => nitrogenState(nitrogenDensity_kg_m3(pressure_bar * 1e5, temperature_C + 273.15), temperature_C + 273.15);
const ATM = 1.01325;

/** Half a unit of the last printed digit, and a hair for the rounding of the half itself. */
const printed = (digits: number): number => 0.5001 * 10 ** -digits;
const agrees = (value: number, expected: number, digits: number): void => expect(Math.abs(value - expected), `${value} for ${expected}`).toBeLessThanOrEqual(printed(digits));

/** (∂T/∂p) at constant enthalpy, by its definition: from the state's own enthalpies. */
function throttlingSlope_K_bar(pressure_bar: number, temperature_C: number): number {
  const step = 0.01;
  const byPressure = (at(pressure_bar + step, temperature_C).enthalpy_J_kg - at(pressure_bar - step, temperature_C).enthalpy_J_kg) / (2 * step);
  return -byPressure / at(pressure_bar, temperature_C).cp_J_kgK;
}

/** Temperature at which a rising quantity is reached. */
function temperatureWhere(of: (temperature_C: number) => number, target: number): number {
  let least = -146;
  let greatest = 100;
  for (let step = 0; step < 60; step += 1) {
    const middle = (least + greatest) / 2;
    if (of(middle) > target) greatest = middle;
    else least = middle;
  }
  return least;
}

describe('nitrogen as a real gas', () => {
  // The check point the open CoolProp library carries with its nitrogen coefficients.
  test('check point of the equation: 138.8112 K, 10 065.5113 mol/m³', () => {
    const state = nitrogenState(10_065.5113 * MOLAR_MASS, 138.8112);
    expect(state.pressure_Pa / 5_255_537).toBeCloseTo(1, 6);
    expect(state.enthalpy_J_kg * MOLAR_MASS).toBeCloseTo(1620.78, 3);
    expect(state.entropy_J_kgK * MOLAR_MASS).toBeCloseTo(122.8195, 3);
  });

  // The critical state the open CoolProp library carries, 126.192 K: reached by a straight line from just above, where the equation holds here.
  test('critical point: 33.958 bar, 818.907 J/mol, 118.07314 J/(mol·K)', () => {
    const critical = (of: (state: NitrogenState) => number): number => 2 * of(nitrogenState(11_183.90146 * MOLAR_MASS, 126.2)) - of(nitrogenState(11_183.90146 * MOLAR_MASS, 126.208));
    expect(Math.abs(critical((state) => state.pressure_Pa) - 3_395_800)).toBeLessThan(3);
    expect(Math.abs(critical((state) => state.enthalpy_J_kg * MOLAR_MASS) - 818.906586)).toBeLessThan(0.003);
    expect(Math.abs(critical((state) => state.entropy_J_kgK * MOLAR_MASS) - 118.073144)).toBeLessThan(3e-5);
  });

  // Span et al. 2000, evaluated independently: ρ, Z, cv, cp, cp/cv, w, κ = ρw²/p, μ_JT.
  test.each([
    [ATM, 0, 1.25039, 5, 0.99954, 742.9, 1041.4, 1.4019, 336.97, 1.4012, 0.2586],
    [ATM, 15, 1.1851, 5, 0.99971, 743.0, 1041.3, 1.4015, 346.11, 1.4011, 0.2313],
    [ATM, 20, 1.16483, 5, 0.99976, 743.1, 1041.3, 1.4014, 349.1, 1.4011, 0.2229],
    [60, 20, 69.356, 3, 0.9943, 757.5, 1142.0, 1.5076, 361.76, 1.5128, 0.1761],
    [200, 15, 223.187, 3, 1.04779, 784.3, 1330.4, 1.6964, 420.55, 1.9736, 0.077],
    [200, 20, 218.544, 3, 1.05179, 782.9, 1317.9, 1.6834, 422.81, 1.9534, 0.0748],
    [200, 50, 194.79, 3, 1.07051, 776.4, 1257.9, 1.6203, 436.87, 1.8589, 0.061],
    [300, 15, 308.311, 3, 1.13774, 797.4, 1380.3, 1.7311, 481.02, 2.3779, 0.0285],
    [300, 20, 302.439, 3, 1.14005, 795.8, 1368.1, 1.7193, 481.85, 2.3407, 0.0277],
    [300, 50, 271.802, 3, 1.15079, 788.0, 1306.5, 1.658, 488.96, 2.1661, 0.0219],
  ])('Span et al. 2000: %d bar, %d °C has its density, heats, sound speed and throttling', (pressure_bar, temperature_C, density, digits, z, cv, cp, ratio, sound, kappa, throttling) => {
    const state = at(pressure_bar, temperature_C);
    agrees(state.density_kg_m3, density, digits);
    agrees(state.compressibility, z, pressure_bar === 60 ? 4 : 5);
    expect(Math.abs(state.cv_J_kgK - cv)).toBeLessThanOrEqual(0.06);
    agrees(state.cp_J_kgK, cp, 1);
    agrees(state.cp_J_kgK / state.cv_J_kgK, ratio, 4);
    agrees(state.soundSpeed_m_s, sound, 2);
    agrees((state.density_kg_m3 * state.soundSpeed_m_s ** 2) / state.pressure_Pa, kappa, 4);
    agrees(throttlingSlope_K_bar(pressure_bar, temperature_C), throttling, 4);
  });

  // Span et al. 2000, evaluated independently: ρ and Z.
  const GRID: Readonly<Record<number, readonly (readonly [number, number])[]>> = {
    10: [[13.404, 0.9929], [12.388, 0.9957], [11.724, 0.9974], [11.129, 0.9986], [10.426, 1]],
    25: [[33.83, 0.9835], [31.136, 0.9904], [29.399, 0.9943], [27.856, 0.9975], [26.047, 1.0007]],
    50: [[68.503, 0.9714], [62.646, 0.9845], [58.943, 0.9919], [55.696, 0.9977], [51.932, 1.0038]],
    100: [[138.237, 0.9628], [125.248, 0.9848], [117.249, 0.9972], [110.357, 1.0071], [102.497, 1.0172]],
    150: [[204.477, 0.9763], [184.679, 1.0019], [172.564, 1.0164], [162.183, 1.0279], [150.409, 1.0398]],
    200: [[263.594, 1.0098], [238.62, 1.0338], [223.187, 1.0478], [209.902, 1.059], [194.79, 1.0705]],
    250: [[314.401, 1.0583], [286.162, 1.0776], [268.404, 1.0891], [252.962, 1.0984], [235.249, 1.108]],
    300: [[357.51, 1.1168], [327.525, 1.1298], [308.311, 1.1377], [291.402, 1.1442], [271.802, 1.1508]],
  };
  const CELLS = Object.entries(GRID).flatMap(([pressure, cells]) => [-20, 0, 15, 30, 50].map((temperature, index) => [Number(pressure), temperature, ...(cells[index] ?? [0, 0])] as const));
  test.each(CELLS)('Span et al. 2000: at %d bar, %d °C density is %d kg/m³ and Z %d', (pressure_bar, temperature_C, density, z) => {
    agrees(at(pressure_bar, temperature_C).density_kg_m3, density, 3);
    agrees(at(pressure_bar, temperature_C).compressibility, z, 4);
  });

  // Constant enthalpy from 15 °C, evaluated independently from Span et al. 2000.
  test.each([
    [200, 60, -4.0],
    [200, ATM, -18.9],
    [300, 60, -9.9],
    [300, ATM, -25.5],
  ])('throttled from %d bar and 15 °C to %d bar it comes out at %d °C', (from_bar, to_bar, expected) => {
    const before = at(from_bar, 15).enthalpy_J_kg;
    agrees(temperatureWhere((temperature_C) => at(to_bar, temperature_C).enthalpy_J_kg, before), expected, 1);
  });

  test('cp/cv is not the isentropic exponent at 200 bar', () => {
    const state = at(200, 15);
    expect((state.density_kg_m3 * state.soundSpeed_m_s ** 2) / state.pressure_Pa - state.cp_J_kgK / state.cv_J_kgK).toBeGreaterThan(0.27);
  });

  test('ideal gas at rest: at 1 Pa Z is 1 and cp − cv is R', () => {
    const state = nitrogenState(nitrogenDensity_kg_m3(1, 293.15), 293.15);
    expect(state.compressibility).toBeCloseTo(1, 8);
    expect(state.cp_J_kgK - state.cv_J_kgK).toBeCloseTo(296.804, 2);
  });

  const someTemperature = fc.double({ min: NITROGEN_LEAST_K, max: NITROGEN_GREATEST_K, noNaN: true });
  const somePressure = fc.double({ min: 0, max: 8, noNaN: true }).map((power) => 10 ** power);

  test('pressure of the density is the pressure again', () => {
    fc.assert(
      fc.property(somePressure, someTemperature, (pressure_Pa, temperature_K) => {
        expect(nitrogenState(nitrogenDensity_kg_m3(pressure_Pa, temperature_K), temperature_K).pressure_Pa / pressure_Pa).toBeCloseTo(1, 10);
      }),
    );
  });

  test('density of the pressure is the density again, near the critical point too', () => {
    fc.assert(
      fc.property(fc.double({ min: 200, max: 420, noNaN: true }), fc.double({ min: 126.5, max: 135, noNaN: true }), (density, temperature_K) => {
        expect(nitrogenDensity_kg_m3(nitrogenState(density, temperature_K).pressure_Pa, temperature_K) / density).toBeCloseTo(1, 8);
      }),
    );
  });

  test('pressure rises with density at constant temperature', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 840, noNaN: true }), fc.double({ min: 1.0001, max: 1.1, noNaN: true }), someTemperature, (density, factor, temperature_K) => {
        expect(nitrogenState(density * factor, temperature_K).pressure_Pa).toBeGreaterThan(nitrogenState(density, temperature_K).pressure_Pa);
        expect(nitrogenState(density, temperature_K).pressureSlope_J_kg).toBeGreaterThan(0);
      }),
    );
  });

  const belongTogether = (density: number, temperature_K: number): void => {
    const state = nitrogenState(density, temperature_K);
    const step_K = 1e-3;
    const warmer = nitrogenState(density, temperature_K + step_K);
    const colder = nitrogenState(density, temperature_K - step_K);
    expect((warmer.internalEnergy_J_kg - colder.internalEnergy_J_kg) / (2 * step_K) / state.cv_J_kgK).toBeCloseTo(1, 5);
    expect((temperature_K * (warmer.entropy_J_kgK - colder.entropy_J_kgK)) / (2 * step_K) / state.cv_J_kgK).toBeCloseTo(1, 5);
    const warming = (warmer.pressure_Pa - colder.pressure_Pa) / (2 * step_K);
    const step = 1e-4 * density;
    const denser = nitrogenState(density + step, temperature_K);
    const thinner = nitrogenState(density - step, temperature_K);
    const work = (state.pressure_Pa / density ** 2) * 2 * step;
    expect((denser.internalEnergy_J_kg - thinner.internalEnergy_J_kg - temperature_K * (denser.entropy_J_kgK - thinner.entropy_J_kgK)) / work).toBeCloseTo(1, 5);
    const stiffness = (denser.pressure_Pa - thinner.pressure_Pa) / (2 * step);
    expect(Math.abs(stiffness - state.pressureSlope_J_kg)).toBeLessThan(1e-5 * state.pressureSlope_J_kg + 0.3);
    expect(((temperature_K * warming ** 2) / (state.cv_J_kgK * density ** 2) + state.pressureSlope_J_kg) / state.soundSpeed_m_s ** 2).toBeCloseTo(1, 5);
    expect(((temperature_K * warming ** 2) / (density ** 2 * state.pressureSlope_J_kg) + state.cv_J_kgK) / state.cp_J_kgK).toBeCloseTo(1, 5);
  };

  test('energy, entropy, pressure, heats and sound speed belong together: each is the slope of another', () => {
    fc.assert(fc.property(fc.double({ min: 1, max: 400, noNaN: true }), fc.double({ min: 150, max: 500, noNaN: true }), belongTogether));
  });

  // Only here do the four Gaussian terms count.
  test.each([
    [250, 127],
    [313, 126.5],
    [313, 130],
    [380, 127],
  ])('they belong together near the critical point too: %d kg/m³, %d K', belongTogether);

  test('outside its range nothing is answered', () => {
    expect(() => nitrogenDensity_kg_m3(1e5, 126)).toThrow('temperature_K must be from 126.2');
    expect(() => nitrogenDensity_kg_m3(1e5, 1001)).toThrow('temperature_K');
    expect(() => nitrogenDensity_kg_m3(0, 300)).toThrow('pressure_Pa');
    expect(() => nitrogenDensity_kg_m3(1.1e8, 300)).toThrow('pressure_Pa');
    expect(() => nitrogenDensity_kg_m3(Number.NaN, 300)).toThrow('pressure_Pa');
    expect(() => nitrogenState(0, 300)).toThrow('density_kg_m3');
    expect(() => nitrogenState(1, 100)).toThrow('temperature_K');
  });
});
