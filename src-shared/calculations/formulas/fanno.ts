import type { Basis } from '../topic.ts';
import { notNegative, positive, within } from './checked.ts';

/** Mach numbers that the formulas below take. */
export const MACH_LEAST = 1e-4;
export const MACH_GREATEST = 50;
/** Isentropic exponents that they take. */
export const GAMMA_LEAST = 1.01;
export const GAMMA_GREATEST = 1.67;

const machOf = (mach: number): number => within('mach', mach, MACH_LEAST, MACH_GREATEST);
const gammaOf = (gamma: number): number => within('gamma', gamma, GAMMA_LEAST, GAMMA_GREATEST);

const SOURCE = 'Shapiro, The Dynamics and Thermodynamics of Compressible Fluid Flow, and any text on gas dynamics';

export const fannoFrictionLengthBasis: Basis = {
  formula: 'f·L*/D = (1 − M²)/(γ·M²) + (γ+1)/(2γ)·ln[(γ+1)·M²/(2 + (γ−1)·M²)]',
  source: SOURCE,
  caution: 'f is the Darcy friction factor, four times that of Fanning (4·f·L*/D in the tables). Ideal gas in an insulated pipe of one bore.',
};
/**
 * How much friction a flow bears until it chokes.
 *
 * @param mach   M, where the stretch begins [-], 1e-4 to 50
 * @param gamma  γ, isentropic exponent [-], 1.01 to 1.67
 * @returns f·L over D up to Mach 1 [-]
 * @throws {RangeError} argument not finite or out of range
 * @example fannoFrictionLength(0.2, 1.4) // 14.5333
 */
export function fannoFrictionLength(mach: number, gamma: number): number {
  const square = machOf(mach) ** 2;
  const g = gammaOf(gamma);
  return (1 - square) / (g * square) + ((g + 1) / (2 * g)) * Math.log(((g + 1) * square) / (2 + (g - 1) * square));
}

export const fannoPressureBasis: Basis = { formula: 'p/p* = (1/M)·√[(γ+1)/(2 + (γ−1)·M²)]', source: SOURCE };
/**
 * Static pressure over that where the flow chokes.
 *
 * @param mach   M [-], 1e-4 to 50
 * @param gamma  γ, isentropic exponent [-], 1.01 to 1.67
 * @returns ratio [-]
 * @throws {RangeError} argument not finite or out of range
 * @example fannoPressureRatio(0.2, 1.4) // 5.4554
 */
export function fannoPressureRatio(mach: number, gamma: number): number {
  return Math.sqrt(fannoTemperatureRatio(mach, gamma)) / mach;
}

export const fannoTemperatureBasis: Basis = { formula: 'T/T* = (γ+1)/(2 + (γ−1)·M²)', source: SOURCE };
/**
 * Static temperature over that where the flow chokes.
 *
 * @param mach   M [-], 1e-4 to 50
 * @param gamma  γ, isentropic exponent [-], 1.01 to 1.67
 * @returns ratio [-]
 * @throws {RangeError} argument not finite or out of range
 * @example fannoTemperatureRatio(0.2, 1.4) // 1.1905
 */
export function fannoTemperatureRatio(mach: number, gamma: number): number {
  return (gammaOf(gamma) + 1) / (2 + (gamma - 1) * machOf(mach) ** 2);
}

export const fannoStagnationBasis: Basis = { formula: 'p0/p0* = (1/M)·[(2 + (γ−1)·M²)/(γ+1)]^((γ+1)/(2(γ−1)))', source: SOURCE };
/**
 * Stagnation pressure over that where the flow chokes.
 *
 * @param mach   M [-], 1e-4 to 50
 * @param gamma  γ, isentropic exponent [-], 1.01 to 1.67
 * @returns ratio [-]
 * @throws {RangeError} argument not finite or out of range
 * @example fannoStagnationRatio(0.2, 1.4) // 2.9635
 */
export function fannoStagnationRatio(mach: number, gamma: number): number {
  return fannoTemperatureRatio(mach, gamma) ** (-(gamma + 1) / (2 * (gamma - 1))) / mach;
}

/** Mach number between 1 and an end at which so much friction is left; the end must bear at least that much. */
function machBearing(frictionLength: number, gamma: number, end: number): number {
  let near = 1;
  let far = end;
  // Halving: near Mach 1 the curve lies flat, where quicker ways stumble.
  for (let step = 0; step < 60; step += 1) {
    const middle = (near + far) / 2;
    if (fannoFrictionLength(middle, gamma) < frictionLength) near = middle;
    else far = middle;
  }
  return (near + far) / 2;
}

export const fannoMachOutBasis: Basis = {
  formula: 'f·L*/D at the outlet = f·L*/D at the inlet − f·L/D',
  source: SOURCE,
  caution: 'Longer than f·L*/D: choked, Mach 1 at the outlet. A subsonic inlet then cannot keep its Mach number, and a supersonic one gets a shock in the pipe.',
};
/**
 * Mach number at the end of an insulated pipe; 1 when the pipe chokes.
 *
 * @param machIn          M1 [-], 1e-4 to 50
 * @param frictionLength  f·L/D of the pipe [-], ≥ 0
 * @param gamma           γ, isentropic exponent [-], 1.01 to 1.67
 * @returns Mach number, on the same side of 1 as the inlet [-]
 * @throws {RangeError} argument not finite or out of range
 * @example fannoMachOut(0.2, 13.4642, 1.4) // 0.5000
 */
export function fannoMachOut(machIn: number, frictionLength: number, gamma: number): number {
  const left = fannoFrictionLength(machIn, gamma) - notNegative('frictionLength', frictionLength);
  if (frictionLength === 0) return machIn;
  return left <= 0 ? 1 : machBearing(left, gamma, machIn);
}

export const fannoMachInBasis: Basis = { formula: 'f·L*/D solved for M, subsonic', source: SOURCE };
/**
 * Subsonic Mach number at the inlet of an insulated pipe that chokes at its end.
 *
 * @param frictionLength  f·L/D of the pipe [-], 0 to 7e7
 * @param gamma           γ, isentropic exponent [-], 1.01 to 1.67
 * @returns Mach number [-], at most 1
 * @throws {RangeError} argument not finite or out of range
 * @example fannoMachIn(16.6638, 1.4) // 0.188569
 */
export function fannoMachIn(frictionLength: number, gamma: number): number {
  const length = within('frictionLength', frictionLength, 0, fannoFrictionLength(MACH_LEAST, gamma));
  return length === 0 ? 1 : machBearing(length, gamma, MACH_LEAST);
}

export const fannoChokedFlowBasis: Basis = {
  formula: 'ṁ = A·p0·√(γ/(R·T0))·M1·[1 + (γ−1)/2·M1²]^(−(γ+1)/(2(γ−1))),  M1 from f·L*/D = f·L/D',
  source: `${SOURCE}; entrance without loss`,
  caution: 'Ideal gas. Only while the pressure behind the pipe is below that of the choked outlet.',
};
/**
 * Mass flow from a reservoir through an insulated pipe that chokes at its end.
 *
 * @param bore_m             D [m], > 0
 * @param frictionLength     f·L/D of the pipe [-], 0 to 7e7
 * @param reservoir_Pa       p0, absolute, at rest [Pa], > 0
 * @param reservoir_K        T0, at rest [K], > 0
 * @param gasConstant_J_kgK  R of the gas [J/(kg·K)], > 0
 * @param gamma              γ, isentropic exponent [-], 1.01 to 1.67
 * @returns mass flow [kg/s]
 * @throws {RangeError} argument not finite or out of range
 * @example fannoChokedFlow_kg_s(0.0266446, 16.6638, 60e5, 288.15, 296.8, 1.4) // 2.4987
 */
export function fannoChokedFlow_kg_s(bore_m: number, frictionLength: number, reservoir_Pa: number, reservoir_K: number, gasConstant_J_kgK: number, gamma: number): number {
  const mach = fannoMachIn(frictionLength, gamma);
  const area_m2 = (Math.PI / 4) * positive('bore_m', bore_m) ** 2;
  const rt = positive('gasConstant_J_kgK', gasConstant_J_kgK) * positive('reservoir_K', reservoir_K);
  return area_m2 * positive('reservoir_Pa', reservoir_Pa) * Math.sqrt(gamma / rt) * mach * (1 + ((gamma - 1) / 2) * mach ** 2) ** (-(gamma + 1) / (2 * (gamma - 1)));
}
