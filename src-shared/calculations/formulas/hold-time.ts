import type { Basis } from '../topic.ts';
import { between, notNegative, positive, within } from './checked.ts';
import { AIR_kg_m3 } from './door-fan.ts';

const GRAVITY_m_s2 = 9.80665;

/** An enclosure that leaks: what every hold-time model needs of it. */
export interface LeakyEnclosure {
  /** Net volume [m³]. */
  readonly volume_m3: number;
  /** Greatest height of the gas [m]. */
  readonly height_m: number;
  /** k1 of the door fan: flow of air [m³/s] at 1 Pa. */
  readonly fanCoefficient: number;
  /** n of the door fan, 0.5 to 1. */
  readonly fanExponent: number;
  /** Share of the leaks through which the gas leaves. */
  readonly lowerLeakFraction: number;
  /** Steady pressure of the ventilation [Pa]. */
  readonly bias_Pa: number;
}

const SOURCE = 'form of NFPA 2001 Annex C and ISO 14520-1 Annex E from memory, derived again from orifice flow and volume balance';

export const mixtureDensityBasis: Basis = {
  formula: 'ρ_m = ρ_e·c/100 + ρ_a·(100 − c)/100,  ρ_a = 1.205 kg/m³',
  source: SOURCE,
};
/**
 * Density of agent mixed with air at 20 °C.
 *
 * @param agentDensity_kg_m3  ρ_e, of the pure agent [kg/m³], > 0
 * @param concentration_pct   c, of agent [vol %], 0 to 100
 * @returns density [kg/m³]
 * @throws {RangeError} argument not finite or out of range
 * @example mixtureDensity_kg_m3(1.412, 40.3) // 1.288421
 */
export function mixtureDensity_kg_m3(agentDensity_kg_m3: number, concentration_pct: number): number {
  const share = within('concentration_pct', concentration_pct, 0, 100) / 100;
  return positive('agentDensity_kg_m3', agentDensity_kg_m3) * share + AIR_kg_m3 * (1 - share);
}

/** What drives the gas out of a leaking enclosure. */
export interface LeakDrive {
  /** Of the leaks. */
  readonly k2: number;
  /** Of the column of gas. */
  readonly k3: number;
  /** Of the ventilation. */
  readonly k4: number;
}

/** What the air that comes in above adds to the density of the mixture that goes out below [kg/m³]. */
const airResistance_kg_m3 = ({ fanExponent, lowerLeakFraction: lower }: LeakyEnclosure): number => AIR_kg_m3 * (lower / (1 - lower)) ** (1 / fanExponent);

export const leakDriveBasis: Basis = {
  formula: 'k2 = k1·(ρ_a/2)^n; k3 = 2·g·|ρ_m − ρ_a|/(ρ_m + ρ_a·(F/(1 − F))^(1/n)); k4 = 2·P_bias/(ρ_m + ρ_a·(F/(1 − F))^(1/n))',
  source: SOURCE,
};
/**
 * What drives the gas out: k2 of the leaks, k3 of the column and k4 of the ventilation.
 *
 * @param room           the leaking enclosure [-]
 * @param mixture_kg_m3  ρ_m, of the gas mixture [kg/m³], > 0
 * @returns the three factors of the hold-time formulas [-]
 * @throws {RangeError} argument not finite or out of range
 * @example leakDrive({ volume_m3: 240, height_m: 3, fanCoefficient: 0.062424, fanExponent: 0.6, lowerLeakFraction: 0.5, bias_Pa: 0 }, 1.288421).k3 // 0.656191
 */
export function leakDrive(room: LeakyEnclosure, mixture_kg_m3: number): LeakDrive {
  const n = within('fanExponent', room.fanExponent, 0.5, 0.999);
  between('lowerLeakFraction', room.lowerLeakFraction, 0, 1);
  const resistance = positive('mixture_kg_m3', mixture_kg_m3) + airResistance_kg_m3(room);
  return {
    k2: positive('fanCoefficient', room.fanCoefficient) * (AIR_kg_m3 / 2) ** n,
    k3: (2 * GRAVITY_m_s2 * Math.abs(mixture_kg_m3 - AIR_kg_m3)) / resistance,
    k4: (2 * notNegative('bias_Pa', room.bias_Pa)) / resistance,
  };
}

export const interfaceTimeBasis: Basis = {
  formula: 't = (V/H0)·[(k3·H0+k4)^(1−n) − (k3·H+k4)^(1−n)]/[(1−n)·k2·F·k3]; sharp H = H_p; wide H = H0 − (H0−H_p)·c_i/(2·c_min)',
  source: `${SOURCE}; the wide interface derived from a linear profile`,
  caution: 'A mixture lighter than air rises from the floor: heights are then measured from the ceiling down. Its column is so weak that ventilation decides.',
};
/**
 * Time until a sharp interface of air has come to a height: the gas above or below it is unchanged.
 *
 * @param room             the leaking enclosure [-]
 * @param mixture_kg_m3    ρ_m, of the gas mixture [kg/m³], > 0, not that of air
 * @param gasHeight_m      H, height of gas still left, from the floor when heavier than air, from the ceiling when lighter [m], 0 to the room's height
 * @returns time [s], ≥ 0
 * @throws {RangeError} argument not finite or out of range, or the mixture as heavy as air and nothing else to drive it
 * @example interfaceTime_s({ volume_m3: 240, height_m: 3, fanCoefficient: 0.062424, fanExponent: 0.6, lowerLeakFraction: 0.5, bias_Pa: 0 }, 1.288421, 2.5) // 1220.5
 */
export function interfaceTime_s(room: LeakyEnclosure, mixture_kg_m3: number, gasHeight_m: number): number {
  const height_m = positive('height_m', room.height_m);
  const left_m = within('gasHeight_m', gasHeight_m, 0, height_m);
  const { k2, k3, k4 } = leakDrive(room, positive('mixture_kg_m3', mixture_kg_m3));
  const floorArea_m2 = positive('volume_m3', room.volume_m3) / height_m;
  const rest = 1 - room.fanExponent;
  if (k3 === 0) {
    if (k4 === 0) throw new RangeError('The mixture is as heavy as air and there is no ventilation pressure: nothing drives it out.');
    return (floorArea_m2 * (height_m - left_m)) / (room.lowerLeakFraction * k2 * k4 ** room.fanExponent);
  }
  return (floorArea_m2 * ((k3 * height_m + k4) ** rest - (k3 * left_m + k4) ** rest)) / (rest * k2 * room.lowerLeakFraction * k3);
}

export const wideInterfaceHeightBasis: Basis = {
  formula: 'H = H0 − (H0−H_p)·c_i/(2·c_min)',
  source: 'derived from a linear profile between gas and air; compare with the adopted text of ISO 14520-1 Annex E',
};
/**
 * Height of the sharp interface that holds as much gas as a wide one whose least concentration stands at the protected height.
 *
 * @param height_m                  H0, of the room [m], > 0
 * @param protectedHeight_m         H_p, gas needed up to it [m], 0 to H0
 * @param concentration_pct         c_i, at the start [vol %], above 0, at most 100
 * @param leastConcentration_pct    c_min, at the protected height at the end [vol %], above 0, at most c_i
 * @returns height [m], not below 0
 * @throws {RangeError} argument not finite or out of range
 * @example wideInterfaceHeight_m(3, 2.5, 40.3, 34.255) // 2.70588
 */
export function wideInterfaceHeight_m(height_m: number, protectedHeight_m: number, concentration_pct: number, leastConcentration_pct: number): number {
  const above_m = positive('height_m', height_m) - within('protectedHeight_m', protectedHeight_m, 0, height_m);
  const start = within('concentration_pct', positive('concentration_pct', concentration_pct), 0, 100);
  const end = within('leastConcentration_pct', positive('leastConcentration_pct', leastConcentration_pct), 0, start);
  return Math.max(0, height_m - (above_m * start) / (2 * end));
}

export const mixingTimeBasis: Basis = {
  formula: 't = V/(F·k2)·∫[c_min→c_i] dc/(c·(k3(c)·H0 + k4)^n)',
  source: SOURCE,
  caution: 'Only where the gas is kept mixed, as by air handling that goes on.',
};
/** Enough for 1e-9 in any room, and even. */
const MIXING_STEPS = 400;
/**
 * Time until a mixture that stays mixed has thinned to a concentration.
 *
 * @param room                    the leaking enclosure [-]
 * @param agentDensity_kg_m3      ρ_e, of the pure agent [kg/m³], > 0, not that of air unless there is a bias
 * @param concentration_pct       c_i, at the start [vol %], above 0, at most 100
 * @param leastConcentration_pct  c_min, at the end [vol %], above 0, at most c_i
 * @returns time [s], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example mixingTime_s({ volume_m3: 240, height_m: 3, fanCoefficient: 0.062424, fanExponent: 0.6, lowerLeakFraction: 0.5, bias_Pa: 0 }, 1.412, 40.3, 34.255) // 1183.0
 */
export function mixingTime_s(room: LeakyEnclosure, agentDensity_kg_m3: number, concentration_pct: number, leastConcentration_pct: number): number {
  const start = within('concentration_pct', positive('concentration_pct', concentration_pct), 0, 100);
  const end = within('leastConcentration_pct', positive('leastConcentration_pct', leastConcentration_pct), 0, start);
  if (agentDensity_kg_m3 === AIR_kg_m3 && room.bias_Pa === 0) throw new RangeError('The agent is as heavy as air and there is no ventilation pressure: nothing drives it out.');
  // The integral over ln c is smooth: Simpson's rule.
  const step = Math.log(start / end) / MIXING_STEPS;
  // Refuses what is out of range; on the way down nothing of it but the mixture changes.
  leakDrive(room, mixtureDensity_kg_m3(agentDensity_kg_m3, end));
  const height_m = positive('height_m', room.height_m);
  const air_kg_m3 = airResistance_kg_m3(room);
  let sum = 0;
  for (let index = 0; index <= MIXING_STEPS; index += 1) {
    const share = Math.min(100, end * Math.exp(index * step)) / 100;
    const mixture_kg_m3 = agentDensity_kg_m3 * share + AIR_kg_m3 * (1 - share);
    const resistance = mixture_kg_m3 + air_kg_m3;
    const k3 = (2 * GRAVITY_m_s2 * Math.abs(mixture_kg_m3 - AIR_kg_m3)) / resistance;
    const k4 = (2 * room.bias_Pa) / resistance;
    const weight = index === 0 || index === MIXING_STEPS ? 1 : index % 2 === 1 ? 4 : 2;
    sum += weight / (k3 * height_m + k4) ** room.fanExponent;
  }
  const { k2 } = leakDrive(room, AIR_kg_m3);
  return ((positive('volume_m3', room.volume_m3) / (room.lowerLeakFraction * k2)) * sum * step) / 3;
}

export const fanFlowBasis: Basis = {
  formula: 'k1 = C_d·A·√(2·Δp/ρ_a)/Δp^n,  C_d = 0.61',
  source: 'door-fan power law with the orifice flow of a leakage area; 0.61 sharp-edged orifice',
};
/**
 * Fan coefficient k1 of a leakage area that was stated at a pressure.
 *
 * @param leakageArea_m2  A, equivalent leakage area [m²], > 0
 * @param pressure_Pa     Δp, at which it was stated [Pa], > 0
 * @param fanExponent     n [-], 0.5 to 0.999
 * @returns flow of air at 1 Pa [m³/s]
 * @throws {RangeError} argument not finite or out of range
 * @example fanCoefficientOf(0.1, 10, 0.6) // 0.0624240
 */
export function fanCoefficientOf(leakageArea_m2: number, pressure_Pa: number, fanExponent: number): number {
  const flow_m3_s = 0.61 * positive('leakageArea_m2', leakageArea_m2) * Math.sqrt((2 * positive('pressure_Pa', pressure_Pa)) / AIR_kg_m3);
  return flow_m3_s / pressure_Pa ** within('fanExponent', fanExponent, 0.5, 0.999);
}
