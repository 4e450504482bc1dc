import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nitrogenExpandedTo } from '#shared/calculations/formulas/nitrogen-isentrope';
import { nitrogenDensity_kg_m3, nitrogenState } from '#shared/calculations/formulas/nitrogen';
import { chokedFlowFunction, chokedPressureRatio, idealOrificeFlow_kg_s, nozzleThroat, realChokedFlux_kg_m2s, realOrificeFlow_kg_s } from '#shared/calculations/formulas/orifice';

const idealFlux = (pressure_Pa: number, temperature_K: number, backPressure_Pa = 0): number => idealOrificeFlow_kg_s(1, 1, pressure_Pa, temperature_K, backPressure_Pa);

describe('orifice, ideal gas', () => {
  test('gas-dynamics text: at γ 1.4 the throat is at 0.528282 of the pressure', () => expect(chokedPressureRatio(1.4)).toBeCloseTo(0.528282, 6));
  test('gas-dynamics text: at γ 1.4 the choked flow function is 0.684731', () => expect(chokedFlowFunction(1.4)).toBeCloseTo(0.684731, 6));
  test('gas-dynamics text: at γ 5/3 (argon) 0.487139 and 0.726184', () => {
    expect(chokedPressureRatio(5 / 3)).toBeCloseTo(0.487139, 6);
    expect(chokedFlowFunction(5 / 3)).toBeCloseTo(Math.sqrt(5 / 3) * 0.75 ** 2, 9);
  });

  test('computed by hand: 10 mm, C_d 0.85, 60 bar, 20 °C passes 0.92982 kg/s, 232.135 kg/(s·m²·bar)', () => {
    expect(idealOrificeFlow_kg_s(Math.PI * 0.005 ** 2, 0.85, 60e5, 293.15, 101_325)).toBeCloseTo(0.92982, 5);
    expect(idealFlux(1e5, 293.15)).toBeCloseTo(232.135, 2);
  });

  // Isentropic flow tables, γ 1.4: p/p₀ and A/A* of a Mach number.
  test.each([
    [0.2, 0.972497, 2.96352],
    [0.5, 0.843019, 1.339844],
    [0.8, 0.656022, 1.038230],
  ])('isentropic tables, M %d: unchoked at p/p₀ %d the flow is 1/%d of the choked one', (_, ratio, areaRatio) => {
    expect(idealFlux(1e5, 293.15, ratio * 1e5) / idealFlux(1e5, 293.15)).toBeCloseTo(1 / areaRatio, 5);
  });

  test('flow falls as the back pressure rises, from choked to none', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (one, other) => {
        const [low, high] = one < other ? [one, other] : [other, one];
        expect(idealFlux(5e5, 300, low * 5e5)).toBeGreaterThanOrEqual(idealFlux(5e5, 300, high * 5e5));
      }),
    );
    expect(idealFlux(5e5, 300, 5e5)).toBe(0);
  });

  test('gas that would flow backwards, and a coefficient above 1, are refused', () => {
    expect(() => idealFlux(5e5, 300, 6e5)).toThrow('backPressure_Pa');
    expect(() => idealOrificeFlow_kg_s(1, 1.1, 5e5, 300, 1e5)).toThrow('dischargeCoefficient');
    expect(() => idealOrificeFlow_kg_s(-1, 1, 5e5, 300, 1e5)).toThrow('area_m2');
  });
});

describe('orifice, real gas', () => {
  // Isentropic flow with the equation of Span et al. 2000, evaluated independently, from 15 °C.
  test.each([
    [10, 1.004, 0.527, 3],
    [40, 1.0161, 0.5225, 4],
    [60, 1.0239, 0.5191, 4],
    [100, 1.0385, 0.5109, 4],
    [200, 1.0644, 0.4845, 4],
    [300, 1.0726, 0.4547, 4],
  ])('Span et al. 2000: at %d bar %d times the ideal gas passes, the throat at %d of the pressure', (pressure_bar, ratio, throat, digits) => {
    const pressure_Pa = pressure_bar * 1e5;
    expect(realChokedFlux_kg_m2s(pressure_Pa, 288.15) / idealFlux(pressure_Pa, 288.15)).toBeCloseTo(ratio, 4);
    expect(Math.abs(nozzleThroat(pressure_Pa, 288.15).pressure_Pa / pressure_Pa - throat)).toBeLessThanOrEqual(0.51 * 10 ** -digits);
  });

  test('no pressure on the isentrope gives more flux than the throat', () => {
    const rest = nitrogenState(nitrogenDensity_kg_m3(200e5, 288.15), 288.15);
    const fluxes = Array.from({ length: 200 }, (_, index) => {
      const state = nitrogenExpandedTo(200e5 * (0.3 + 0.0035 * index), rest.entropy_J_kgK, 230);
      return state ? state.density_kg_m3 * Math.sqrt(2 * Math.max(0, rest.enthalpy_J_kg - state.enthalpy_J_kg)) : 0;
    });
    expect(Math.max(...fluxes) / realChokedFlux_kg_m2s(200e5, 288.15)).toBeCloseTo(1, 5);
    expect(Math.max(...fluxes)).toBeLessThanOrEqual(realChokedFlux_kg_m2s(200e5, 288.15));
  });

  test('thin gas is the ideal one, choked or not', () => {
    for (const back of [0, 300, 700, 950]) expect(realOrificeFlow_kg_s(1e-4, 0.8, 1000, 288.15, back) / idealOrificeFlow_kg_s(1e-4, 0.8, 1000, 288.15, back)).toBeCloseTo(1, 3);
  });

  test('flow never rises with the back pressure, and is whole where choking ends', () => {
    const throat = nozzleThroat(200e5, 288.15);
    const flow = (back: number): number => realOrificeFlow_kg_s(1, 1, 200e5, 288.15, back);
    expect(flow(throat.pressure_Pa * 1.0001) / flow(throat.pressure_Pa)).toBeCloseTo(1, 6);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.999, noNaN: true }), (ratio) => {
        expect(flow(ratio * 200e5)).toBeGreaterThanOrEqual(flow(Math.min(1, ratio + 0.001) * 200e5));
      }),
    );
    expect(flow(200e5)).toBe(0);
  });

  test('gas that would turn liquid in the orifice is refused with the reason', () => {
    expect(() => realChokedFlux_kg_m2s(50e5, 140)).toThrow('cool below 126.2 K in the orifice');
    expect(() => realOrificeFlow_kg_s(1e-4, 1, 50e5, 128, 40e5)).toThrow('cool below 126.2 K in the orifice');
    expect(() => realChokedFlux_kg_m2s(50e5, 120)).toThrow('temperature_K');
  });
});
