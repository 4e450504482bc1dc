import { EXPOSURES as EXPOSURE_BANDS } from '../../model/basis-of-design.ts';
import type { Basis } from '../topic.ts';
import { SUM_NOISE } from './agent-quantity.ts';
import { notNegative, within } from './checked.ts';

/** How long people may be in the gas, longest first; `none` is no exposure at all. */
export { EXPOSURE_BANDS };
export type ExposureBand = (typeof EXPOSURE_BANDS)[number];

/** What a band is judged by: the concentration, the oxygen at its sea-level equivalent, or whichever is stricter. */
export const EXPOSURE_JUDGEMENTS = ['stricter', 'concentration', 'oxygen'] as const;
export type ExposureJudgement = (typeof EXPOSURE_JUDGEMENTS)[number];

interface BandLimits {
  readonly longest_s: number;
  /** Greatest concentration of the band [vol %]. */
  readonly greatest_pct: number;
  /** Least oxygen of the band, sea-level equivalent [vol %]. */
  readonly leastOxygen_pct: number;
}

/** The limits of each band, ends included. */
export const EXPOSURE_LIMITS: Readonly<Record<ExposureBand, BandLimits>> = {
  '5-min': { longest_s: 300, greatest_pct: 43, leastOxygen_pct: 12 },
  '3-min': { longest_s: 180, greatest_pct: 52, leastOxygen_pct: 10 },
  '30-s': { longest_s: 30, greatest_pct: 62, leastOxygen_pct: 8 },
  none: { longest_s: 0, greatest_pct: 100, leastOxygen_pct: 0 },
};

export const exposureBasis: Basis = {
  formula: '≤ 43 % or ≥ 12 % O2: 5 min; ≤ 52 % or ≥ 10 % O2: 3 min; ≤ 62 % or ≥ 8 % O2: 30 s, room not normally occupied; beyond: no exposure',
  source: 'NFPA 2001 exposure to inert gas, 1.5.1.3 of the 2004 to 2018 editions (43 % and 5 min from a worked sheet that cites 2015, the rest memory); no-effect level 43 % and lowest effect level 52 % in ISO 14520-8 (memory)',
  caution: 'At exactly 43 % the oxygen is 11.94 %, not 12 %: the two ways of judging differ there, and the stricter one stands unless another is chosen.',
};
export const exposureConditionsBasis: Basis = {
  formula: 'EPA SNAP: O2 not below 10 % if people are out within 1 min, not below 12 % if it takes longer; CO2 not above 5 %',
  source: 'EPA SNAP questions and answers on inert gas; OSHA 29 CFR 1910.160 and .162: alarm before the discharge with time to leave (memory); 29 CFR 1910.134: below 19.5 % O2 nobody goes back in before the room is aired and tested',
  caution: 'The authority having jurisdiction, the listing and the manual of the unit decide who may be exposed and for how long.',
};

/**
 * How long people may be in a concentration of inert agent.
 *
 * @param concentration_pct  C, of agent [vol %], 0 to 100
 * @returns band [-]
 * @throws {RangeError} argument not finite or out of range
 * @example bandByConcentration(43) // '5-min'
 */
export function bandByConcentration(concentration_pct: number): ExposureBand {
  within('concentration_pct', concentration_pct, 0, 100);
  return EXPOSURE_BANDS.find((band) => concentration_pct <= EXPOSURE_LIMITS[band].greatest_pct * (1 + SUM_NOISE)) ?? 'none';
}

/**
 * How long people may be in a share of oxygen.
 *
 * @param oxygenSeaLevel_pct  O2, sea-level equivalent [vol %], 0 to 100
 * @returns band [-]
 * @throws {RangeError} argument not finite or out of range
 * @example bandByOxygen(11.94) // '3-min'
 */
export function bandByOxygen(oxygenSeaLevel_pct: number): ExposureBand {
  within('oxygenSeaLevel_pct', oxygenSeaLevel_pct, 0, 100);
  return EXPOSURE_BANDS.find((band) => oxygenSeaLevel_pct >= EXPOSURE_LIMITS[band].leastOxygen_pct * (1 - SUM_NOISE)) ?? 'none';
}

/**
 * How long people may be in the gas, judged as chosen.
 *
 * @param concentration_pct   C, of agent [vol %], 0 to 100
 * @param oxygenSeaLevel_pct  O2, sea-level equivalent [vol %], 0 to 100
 * @param judgement           what it is judged by [-]
 * @returns band [-]
 * @throws {RangeError} argument not finite or out of range
 * @example exposureBand(43, 11.94, 'stricter') // '3-min'
 */
export function exposureBand(concentration_pct: number, oxygenSeaLevel_pct: number, judgement: ExposureJudgement): ExposureBand {
  const byConcentration = bandByConcentration(concentration_pct);
  const byOxygen = bandByOxygen(oxygenSeaLevel_pct);
  if (judgement === 'concentration') return byConcentration;
  if (judgement === 'oxygen') return byOxygen;
  return longestExposure_s(byConcentration) < longestExposure_s(byOxygen) ? byConcentration : byOxygen;
}

/**
 * Longest time that a band allows people in the gas.
 *
 * @param band  of exposure [-]
 * @returns time [s], 0 where nobody may be exposed
 * @example longestExposure_s('3-min') // 180
 */
export function longestExposure_s(band: ExposureBand): number {
  return EXPOSURE_LIMITS[band].longest_s;
}

/**
 * Whether people are out within what the band allows. The delay before the discharge is not taken off, and where nobody may be exposed no egress time keeps it.
 *
 * @param egress_s  time to leave the room [s], ≥ 0
 * @param band      of exposure [-]
 * @returns whether it is kept [-]
 * @throws {RangeError} argument not finite or out of range
 * @example egressKept(200, '3-min') // false
 */
export function egressKept(egress_s: number, band: ExposureBand): boolean {
  return notNegative('egress_s', egress_s) <= longestExposure_s(band) && band !== 'none';
}
