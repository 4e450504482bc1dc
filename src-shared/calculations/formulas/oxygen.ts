import type { Basis } from '../topic.ts';
import { positive, within } from './checked.ts';

export const residualOxygenBasis: Basis = {
  formula: 'O2 = O2_air·(1 − C/100)',
  source: 'mixing, the displaced air lost; O2_air 20.95 % of dry air, 20.9 % or 21 % as chosen',
};
/**
 * Oxygen left in a room that holds a concentration of inert agent.
 *
 * @param concentration_pct  C, of agent [vol %], 0 to 100
 * @param oxygenBase_pct     O2_air, of the air before [vol %], 20 to 21
 * @returns oxygen [vol %]
 * @throws {RangeError} argument not finite or out of range
 * @example residualOxygen_pct(40.3, 20.95) // 12.507
 */
export function residualOxygen_pct(concentration_pct: number, oxygenBase_pct: number): number {
  return within('oxygenBase_pct', oxygenBase_pct, 20, 21) * (1 - within('concentration_pct', concentration_pct, 0, 100) / 100);
}

export const seaLevelOxygenBasis: Basis = {
  formula: 'O2_sea = O2·f, f = p_room/p_sea',
  source: 'partial pressure of oxygen; NFPA 2001 judges people by its sea-level equivalent (memory)',
  caution: 'The same share of oxygen supports people less, the higher the place.',
};
/**
 * Share of oxygen at sea level that has the partial pressure of what is in the room.
 *
 * @param oxygen_pct      O2, in the room [vol %], 0 to 100
 * @param altitudeFactor  f, pressure of the room over that at sea level [-], > 0
 * @returns sea-level equivalent [vol %]
 * @throws {RangeError} argument not finite or out of range
 * @example seaLevelOxygen_pct(12.507, 0.83) // 10.38
 */
export function seaLevelOxygen_pct(oxygen_pct: number, altitudeFactor: number): number {
  return within('oxygen_pct', oxygen_pct, 0, 100) * positive('altitudeFactor', altitudeFactor);
}

/**
 * Concentration of agent that leaves a share of oxygen.
 *
 * @param oxygen_pct      O2, to be left in the room [vol %], 0 to that of the air
 * @param oxygenBase_pct  O2_air, of the air before [vol %], 20 to 21
 * @returns concentration [vol %]
 * @throws {RangeError} argument not finite or out of range
 * @example concentrationForOxygen_pct(12, 20.95) // 42.72
 */
export function concentrationForOxygen_pct(oxygen_pct: number, oxygenBase_pct: number): number {
  const base_pct = within('oxygenBase_pct', oxygenBase_pct, 20, 21);
  return 100 * (1 - within('oxygen_pct', oxygen_pct, 0, base_pct) / base_pct);
}
