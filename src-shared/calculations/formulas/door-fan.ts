import type { Basis } from '../topic.ts';
import { finite, positive, within } from './checked.ts';

/** Air at 20 °C [kg/m³]. */
export const AIR_kg_m3 = 1.205;

/** One reading of a door fan: the flow that held a pressure difference, both without their sign. */
export interface FanReading {
  readonly pressure_Pa: number;
  readonly flow_m3_s: number;
}

/** Power law through the readings of one direction. */
export interface FanFit {
  /** k1, flow of air [m³/s] at 1 Pa. */
  readonly fanCoefficient: number;
  /** n. */
  readonly fanExponent: number;
  /** r of the logarithms, 0 to 1: 1 when every reading lies on the line. */
  readonly correlation: number;
  readonly readings: number;
  /** Five readings or more. */
  readonly isEnough: boolean;
  /** n from 0.5, an orifice, to 1, a fine crack: anything else says that a reading is wrong. */
  readonly isPlausible: boolean;
}

const RECOMMENDED_READINGS = 5;

export const doorFanBasis: Basis = {
  formula: 'Q = k1·Δp^n;  n = Σ(x−x̄)(y−ȳ)/Σ(x−x̄)²,  ln k1 = ȳ − n·x̄,  x = ln Δp, y = ln Q',
  source: 'door-fan power law; least squares of the logarithms. At least five readings: common practice',
  caution: 'Readings are taken with the static pressure subtracted and the flow corrected to 20 °C, as the standard of the door-fan test says. An exponent outside 0.5 to 1 means a faulty test.',
};
/**
 * Power law of the leaks from the readings of one direction of a door-fan test.
 *
 * @param readings  pressure difference and flow of each reading [Pa, m³/s], two or more, all above 0
 * @returns coefficient, exponent, correlation, and whether they can be trusted [m³/s at 1 Pa, -]
 * @throws {RangeError} fewer than two readings, all at one pressure, or a number not above 0
 * @example fitDoorFan([{ pressure_Pa: 10, flow_m3_s: 0.25 }, { pressure_Pa: 40, flow_m3_s: 0.5 }]).fanExponent // 0.5
 */
export function fitDoorFan(readings: readonly FanReading[]): FanFit {
  if (readings.length < 2) throw new RangeError(`readings must be two or more, better five, not ${readings.length}.`);
  const points = readings.map(({ pressure_Pa, flow_m3_s }) => ({ x: Math.log(positive('pressure_Pa', pressure_Pa)), y: Math.log(positive('flow_m3_s', flow_m3_s)) }));
  const meanX = points.reduce((sum, { x }) => sum + x, 0) / points.length;
  const meanY = points.reduce((sum, { y }) => sum + y, 0) / points.length;
  let [xx, xy, yy] = [0, 0, 0];
  for (const { x, y } of points) {
    xx += (x - meanX) ** 2;
    xy += (x - meanX) * (y - meanY);
    yy += (y - meanY) ** 2;
  }
  // Readings taken at what is meant to be one pressure say nothing of the slope.
  if (xx < 1e-6) throw new RangeError('readings must be at pressures that differ: one pressure does not give an exponent.');
  const fanExponent = xy / xx;
  return {
    fanCoefficient: Math.exp(meanY - fanExponent * meanX),
    fanExponent,
    // A flow that does not change with the pressure is no fit at all.
    correlation: yy === 0 ? 0 : Math.min(1, Math.abs(xy) / Math.sqrt(xx * yy)),
    readings: readings.length,
    isEnough: readings.length >= RECOMMENDED_READINGS,
    isPlausible: fanExponent >= 0.5 - 1e-9 && fanExponent <= 1 + 1e-9,
  };
}

export const bothDirectionsBasis: Basis = {
  formula: 'k1 = (k1_in + k1_out)/2,  n = (n_in + n_out)/2',
  source: 'means of both directions, ISO 14520-1 Annex E, memory',
  caution: 'Where the two differ much, a flap or a membrane opens one way only: find it.',
};
/**
 * Power law of the leaks from both directions of a door-fan test.
 *
 * @param inward   fit of the readings with air blown in [-]
 * @param outward  fit of the readings with air drawn out [-]
 * @returns mean coefficient and exponent, and the poorer of each judgement [m³/s at 1 Pa, -]
 * @throws {RangeError} a coefficient not above 0 or an exponent not finite
 */
export function bothDirections(inward: FanFit, outward: FanFit): FanFit {
  return {
    fanCoefficient: (positive('fanCoefficient', inward.fanCoefficient) + positive('fanCoefficient', outward.fanCoefficient)) / 2,
    fanExponent: (finite('fanExponent', inward.fanExponent) + finite('fanExponent', outward.fanExponent)) / 2,
    correlation: Math.min(inward.correlation, outward.correlation),
    readings: inward.readings + outward.readings,
    isEnough: inward.isEnough && outward.isEnough,
    isPlausible: inward.isPlausible && outward.isPlausible,
  };
}

export const leakageAreaBasis: Basis = {
  formula: 'A = k1·Δp^n/(C_d·√(2·Δp/ρ_a)),  C_d = 0.61,  ρ_a = 1.205 kg/m³',
  source: 'door-fan power law with the orifice flow of a leakage area; 0.61 sharp-edged orifice',
};
/**
 * Equivalent leakage area at a pressure: the sharp-edged hole that leaks as much.
 *
 * @param fanCoefficient  k1, flow of air at 1 Pa [m³/s], > 0
 * @param fanExponent     n [-], 0.5 to 1
 * @param pressure_Pa     Δp, difference at which the area is stated [Pa], > 0
 * @returns area [m²]
 * @throws {RangeError} argument not finite or out of range
 * @example leakageArea_m2(0.0624240, 0.6, 10) // 0.1000
 */
export function leakageArea_m2(fanCoefficient: number, fanExponent: number, pressure_Pa: number): number {
  const flow_m3_s = positive('fanCoefficient', fanCoefficient) * positive('pressure_Pa', pressure_Pa) ** within('fanExponent', fanExponent, 0.5, 1);
  return flow_m3_s / (0.61 * Math.sqrt((2 * pressure_Pa) / AIR_kg_m3));
}
