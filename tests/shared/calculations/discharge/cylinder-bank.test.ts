import { describe, expect, test } from 'vitest';
import { cylinderBankOf } from '#shared/calculations/discharge/cylinder-bank';
import { NITROGEN_R_J_kgK } from '#shared/calculations/formulas/nitrogen-coefficients';
import { SMALL_UNIT } from './units.ts';

const SHUT = { flow_kg_s: 0, enthalpy_J_kg: 0 };

describe('steel and gas', () => {
  test('a closed cylinder whose steel is warmer ends at their common temperature (heat balance, c of steel 470 J/(kg·K))', () => {
    const bank = cylinderBankOf({ ...SMALL_UNIT, gas: 'ideal', steelMass_kg: 60 });
    const { start } = bank;
    const gas_J_K = start.mass_kg * 2.5 * NITROGEN_R_J_kgK;
    const end = bank.after({ ...start, wall_K: 330 }, SHUT, 1e6);
    const common_K = (gas_J_K * 288.15 + 60 * 470 * 330) / (gas_J_K + 60 * 470);
    expect(end?.gas.temperature_K).toBeCloseTo(common_K, 6);
    expect(end?.wall_K).toBeCloseTo(common_K, 6);
  });
  test('what the steel loses the gas gains', () => {
    const bank = cylinderBankOf(SMALL_UNIT);
    const { start } = bank;
    const end = bank.after({ ...start, wall_K: 330 }, SHUT, 20);
    expect(((330 - (end?.wall_K ?? 0)) * SMALL_UNIT.steelMass_kg * 470) / ((end?.energy_J ?? 0) - start.energy_J)).toBeCloseTo(1, 9);
    expect(end?.wall_K).toBeLessThan(329);
  });
});

test('what leaves takes its mass and enthalpy with it', () => {
  const bank = cylinderBankOf({ ...SMALL_UNIT, process: 'adiabatic' });
  const { start } = bank;
  const end = bank.after(start, { flow_kg_s: 0.3, enthalpy_J_kg: start.gas.enthalpy_J_kg }, 2);
  expect(end?.mass_kg).toBeCloseTo(start.mass_kg - 0.6, 12);
  expect(end?.energy_J).toBeCloseTo(start.energy_J - 0.6 * start.gas.enthalpy_J_kg, 3);
  expect(end?.gas.density_kg_m3).toBeCloseTo((start.mass_kg - 0.6) / 0.08, 9);
});
