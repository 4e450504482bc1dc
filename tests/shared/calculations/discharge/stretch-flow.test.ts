import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pipeGasOf } from '#shared/calculations/discharge/pipe-gas';
import { meanPressure_Pa, stretchInlet } from '#shared/calculations/discharge/stretch-flow';
import { churchillFriction } from '#shared/calculations/formulas/friction';
import { NITROGEN_R_J_kgK } from '#shared/calculations/formulas/nitrogen-coefficients';

const IDEAL = pipeGasOf('ideal');
/** Bore of NPS 1 Sch 40 with f·L/D = 16.6638, all of it as K so that friction stays what it is. */
const ONE_INCH = { from: 0, to: 1, length_m: 0, bore_m: 0.0266446, roughness_m: 0, lossFactor: (0.0222 * 20) / 0.0266446 };

describe('20 m of NPS 1 Sch 40, f 0.0222, nitrogen at 288.15 K from 60 bar (computed from isothermal pipe flow)', () => {
  test.each([
    [50, 1.5324],
    [40, 2.0397],
    [20, 2.4835],
    [15, 2.5124],
  ])('to %d bar: %d kg/s', (outlet_bar, flow_kg_s) => {
    const { inlet_Pa, isChoked } = stretchInlet(ONE_INCH, IDEAL(288.15), outlet_bar * 1e5, flow_kg_s, 40e5);
    expect(inlet_Pa / 60e5).toBeCloseTo(1, 4);
    expect(isChoked).toBe(false);
  });
  test('choked at 13.190 bar with 2.51477 kg/s, however low the pressure behind it', () => {
    for (const outlet_bar of [13.18, 5, 1]) {
      const { inlet_Pa, isChoked } = stretchInlet(ONE_INCH, IDEAL(288.15), outlet_bar * 1e5, 2.51477, 40e5);
      expect(inlet_Pa / 60e5).toBeCloseTo(1, 5);
      expect(isChoked).toBe(true);
    }
    expect(stretchInlet(ONE_INCH, IDEAL(288.15), 13.2e5, 2.51477, 40e5).isChoked).toBe(false);
  });
});

test('friction is that of Churchill at the Reynolds number of the flow', () => {
  const stretch = { from: 0, to: 1, length_m: 12, bore_m: 0.03, roughness_m: 0.0457e-3, lossFactor: 3 };
  const gas = IDEAL(270);
  const { inlet_Pa } = stretchInlet(stretch, gas, 20e5, 1.1, 25e5);
  const friction = churchillFriction((4 * 1.1) / (Math.PI * 0.03 * gas.viscosity_Pas), 0.0457 / 30);
  const area_m2 = (Math.PI / 4) * 0.03 ** 2;
  const flow_kg_s = area_m2 * Math.sqrt((inlet_Pa ** 2 - 20e5 ** 2) / (NITROGEN_R_J_kgK * 270 * (friction * (12 / 0.03) + 3 + 2 * Math.log(inlet_Pa / 20e5))));
  expect(flow_kg_s).toBeCloseTo(1.1, 8);
});

test('inlet rises with outlet and with flow, as its slopes say, on both sides of choking', () => {
  const stretch = fc.record({
    length_m: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 60, noNaN: true })),
    bore_m: fc.double({ min: 0.008, max: 0.15, noNaN: true }),
    lossFactor: fc.double({ min: 0.01, max: 20, noNaN: true }),
  });
  fc.assert(
    fc.property(stretch, fc.double({ min: 1.1e5, max: 2e7, noNaN: true }), fc.double({ min: 0.01, max: 1.5, noNaN: true }), (shape, outlet_Pa, mach) => {
      const gas = IDEAL(288.15);
      const pipe = { from: 0, to: 1, roughness_m: 0.0457e-3, ...shape };
      const flow_kg_s = (mach * outlet_Pa * (Math.PI / 4) * shape.bore_m ** 2) / Math.sqrt(NITROGEN_R_J_kgK * 288.15);
      fc.pre(Math.abs(mach - 1) > 1e-2);
      const at = (p: number, w: number): number => stretchInlet(pipe, gas, p, w, outlet_Pa).inlet_Pa;
      const { inlet_Pa, byOutlet, byFlow, isChoked } = stretchInlet(pipe, gas, outlet_Pa, flow_kg_s, outlet_Pa);
      expect(isChoked).toBe(mach > 1);
      expect(inlet_Pa).toBeGreaterThanOrEqual(outlet_Pa);
      expect(Math.abs((at(outlet_Pa * 1.0001, flow_kg_s) - at(outlet_Pa * 0.9999, flow_kg_s)) / (0.0002 * outlet_Pa) - byOutlet)).toBeLessThan(2e-3);
      const rise = (at(outlet_Pa, flow_kg_s * 1.0001) - at(outlet_Pa, flow_kg_s * 0.9999)) / (0.0002 * flow_kg_s);
      // Friction is taken as steady there where it is turbulent.
      expect(Math.abs(rise - byFlow) * flow_kg_s).toBeLessThan(0.15 * (inlet_Pa - outlet_Pa) + 1e-3 * inlet_Pa);
    }),
  );
});

test('a stretch without length and loss passes its pressure on, up to the speed of sound', () => {
  const nothing = { from: 0, to: 1, length_m: 0, bore_m: 0.02, roughness_m: 0, lossFactor: 0 };
  expect(stretchInlet(nothing, IDEAL(288.15), 20e5, 0.5, 20e5)).toEqual({ inlet_Pa: 20e5, byOutlet: 1, byFlow: 0, isChoked: false });
  const fast = stretchInlet(nothing, IDEAL(288.15), 1e5, 0.5, 20e5);
  expect(fast.isChoked).toBe(true);
  expect(fast.inlet_Pa).toBeCloseTo((0.5 / (Math.PI * 1e-4)) * Math.sqrt(NITROGEN_R_J_kgK * 288.15), 3);
});

test('the mean of p along a pipe with an even fall of p² (integrated)', () => {
  let sum = 0;
  for (let index = 0; index < 1000; index += 1) sum += Math.sqrt(60e5 ** 2 + ((index + 0.5) / 1000) * (20e5 ** 2 - 60e5 ** 2)) / 1000;
  expect(meanPressure_Pa(60e5, 20e5) / sum).toBeCloseTo(1, 6);
});
