import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  fannoChokedFlow_kg_s,
  fannoFrictionLength,
  fannoMachIn,
  fannoMachOut,
  fannoPressureRatio,
  fannoStagnationRatio,
  fannoTemperatureRatio,
} from '#shared/calculations/formulas/fanno';

const GAMMA = 1.4;
const BORE_m = 0.0266446;
const NITROGEN_J_kgK = 296.8;

/** The momentum and energy balances by small steps of Mach number: another way to the same length. */
function lengthBySteps(from: number, to: number, gamma: number): number {
  const steps = 20_000;
  const step = (to - from) / steps;
  let sum = 0;
  for (let index = 0; index < steps; index += 1) {
    const mach = from + (index + 0.5) * step;
    sum += ((2 * (1 - mach ** 2)) / (gamma * mach ** 3 * (1 + ((gamma - 1) / 2) * mach ** 2))) * step;
  }
  return sum;
}

describe('Fanno flow', () => {
  // Tables of any text on gas dynamics (Shapiro), γ = 1.4, computed again outside the project.
  test.each([
    [0.05, 280.02, 21.9034, 11.5914, 1.1994],
    [0.1, 66.9216, 10.9435, 5.8218, 1.1976],
    [0.15, 27.932, 7.2866, 3.9103, 1.1946],
    [0.2, 14.5333, 5.4554, 2.9635, 1.1905],
    [0.25, 8.4834, 4.3546, 2.4027, 1.1852],
    [0.3, 5.2993, 3.6191, 2.0351, 1.1788],
    [0.4, 2.3085, 2.6958, 1.5901, 1.1628],
    [0.5, 1.0691, 2.1381, 1.3398, 1.1429],
    [0.6, 0.4908, 1.7634, 1.1882, 1.1194],
    [0.7, 0.2081, 1.4935, 1.0944, 1.0929],
    [0.8, 0.0723, 1.2893, 1.0382, 1.0638],
    [0.9, 0.0145, 1.1291, 1.0089, 1.0327],
    [1, 0, 1, 1, 1],
    // Supersonic rows from memory of the same tables.
    [2, 0.305, 0.4082, 1.6875, 0.6667],
    [3, 0.5222, 0.2182, 4.2346, 0.4286],
  ])('gas-dynamics tables, γ 1.4: Mach %d', (mach, length, pressure, stagnation, temperature) => {
    expect(Math.abs(fannoFrictionLength(mach, GAMMA) - length)).toBeLessThan(length > 100 ? 6e-4 : 6e-5);
    expect(Math.abs(fannoPressureRatio(mach, GAMMA) - pressure)).toBeLessThan(6e-5);
    expect(Math.abs(fannoStagnationRatio(mach, GAMMA) - stagnation)).toBeLessThan(6e-5);
    expect(Math.abs(fannoTemperatureRatio(mach, GAMMA) - temperature)).toBeLessThan(6e-5);
  });

  test('computed independently: Mach 0.2 to 0.5 takes f·L/D 13.4642 and leaves 0.391918 of the pressure', () => {
    expect(fannoFrictionLength(0.2, GAMMA) - fannoFrictionLength(0.5, GAMMA)).toBeCloseTo(13.4642, 4);
    expect(fannoMachOut(0.2, 13.4642, GAMMA)).toBeCloseTo(0.5, 5);
    expect(fannoPressureRatio(0.5, GAMMA) / fannoPressureRatio(0.2, GAMMA)).toBeCloseTo(0.391918, 6);
  });

  test('computed independently: nitrogen from rest at 60 bar, 288.15 K through 20 m of NPS 1 Schedule 40, f 0.0222, chokes at 2.49872 kg/s', () => {
    const length = (0.0222 * 20) / BORE_m;
    expect(length).toBeCloseTo(16.6638, 4);
    expect(fannoMachIn(length, GAMMA)).toBeCloseTo(0.188569, 6);
    expect(Math.abs(fannoChokedFlow_kg_s(BORE_m, length, 60e5, 288.15, NITROGEN_J_kgK, GAMMA) - 2.49872)).toBeLessThan(2e-5);
  });

  test('computed independently: the same pipe with 60 bar static in its inlet, 2.56147 kg/s, outlet 10.365 bar', () => {
    const length = (0.0222 * 20) / BORE_m;
    const mach = fannoMachIn(length, GAMMA);
    const outlet_Pa = 60e5 / fannoPressureRatio(mach, GAMMA);
    expect(Math.abs(outlet_Pa / 1e5 - 10.365)).toBeLessThan(6e-4);
    const reservoir_Pa = 60e5 * (1 + 0.2 * mach ** 2) ** 3.5;
    expect(Math.abs(fannoChokedFlow_kg_s(BORE_m, length, reservoir_Pa, 288.15, NITROGEN_J_kgK, GAMMA) - 2.56147)).toBeLessThan(2e-5);
  });

  test('textbook: without friction the pipe is a nozzle, Γ = 0.684731 for γ 1.4', () => {
    const flux = fannoChokedFlow_kg_s(0.01, 0, 1e6, 300, NITROGEN_J_kgK, GAMMA) / ((Math.PI / 4) * 1e-4);
    expect((flux * Math.sqrt(NITROGEN_J_kgK * 300)) / 1e6).toBeCloseTo(0.684731, 6);
  });

  test.each([
    [0.2, 0.5, 1.4],
    [0.05, 0.99, 1.3],
    [3, 1.2, 1.4],
  ])('small steps of the balances agree: Mach %d to %d, γ %d', (from, to, gamma) => {
    expect(fannoFrictionLength(from, gamma) - fannoFrictionLength(to, gamma)).toBeCloseTo(lengthBySteps(from, to, gamma), 3);
  });

  test('inverse of inverse: the outlet bears what the inlet bears less the pipe', () => {
    const gammas = fc.double({ min: 1.05, max: 1.67, noNaN: true });
    const machs = fc.oneof(fc.double({ min: 0.005, max: 0.999, noNaN: true }), fc.double({ min: 1.001, max: 20, noNaN: true }));
    fc.assert(
      fc.property(machs, gammas, fc.double({ min: 0, max: 0.999, noNaN: true }), (mach, gamma, share) => {
        const choke = fannoFrictionLength(mach, gamma);
        const out = fannoMachOut(mach, share * choke, gamma);
        expect(Math.abs(fannoFrictionLength(out, gamma) / (choke - share * choke) - 1)).toBeLessThan(1e-8);
        expect(Math.sign(out - 1)).toBe(Math.sign(mach - 1));
        if (mach < 1) expect(fannoMachIn(choke, gamma)).toBeCloseTo(mach, 9);
      }),
    );
  });

  test('a longer pipe brings the flow nearer to Mach 1, and no further', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.9, noNaN: true }), fc.double({ min: 0, max: 1.5, noNaN: true }), (mach, share) => {
        const choke = fannoFrictionLength(mach, GAMMA);
        const out = fannoMachOut(mach, share * choke, GAMMA);
        expect(out).toBeGreaterThanOrEqual(mach - 1e-12);
        expect(out).toBeLessThanOrEqual(1);
        expect(fannoMachOut(mach, (share + 0.1) * choke, GAMMA)).toBeGreaterThanOrEqual(out);
        if (share >= 1) expect(out).toBe(1);
      }),
    );
  });

  test('choked flow falls with length and rises with pressure and bore', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 500, noNaN: true }), fc.double({ min: 1.01, max: 3, noNaN: true }), (length, factor) => {
        const flow = fannoChokedFlow_kg_s(0.02, length, 5e6, 290, NITROGEN_J_kgK, GAMMA);
        expect(fannoChokedFlow_kg_s(0.02, length * factor, 5e6, 290, NITROGEN_J_kgK, GAMMA)).toBeLessThan(flow);
        expect(fannoChokedFlow_kg_s(0.02, length, 5e6 * factor, 290, NITROGEN_J_kgK, GAMMA) / flow).toBeCloseTo(factor, 9);
        expect(fannoChokedFlow_kg_s(0.02 * factor, length, 5e6, 290, NITROGEN_J_kgK, GAMMA)).toBeGreaterThan(flow);
      }),
    );
  });

  test('what no flow has is refused by name', () => {
    expect(() => fannoFrictionLength(0, GAMMA)).toThrow('mach');
    expect(() => fannoTemperatureRatio(0.5, 1)).toThrow('gamma');
    expect(() => fannoMachOut(0.5, -1, GAMMA)).toThrow('frictionLength');
    expect(() => fannoMachIn(1e9, GAMMA)).toThrow('frictionLength');
    expect(() => fannoChokedFlow_kg_s(0, 1, 1e6, 300, NITROGEN_J_kgK, GAMMA)).toThrow('bore_m');
  });
});
