import type { Basis } from '../topic.ts';
import { between, within } from './checked.ts';

/** Reynolds numbers that the formulas below take. */
const REYNOLDS_LEAST = 1e-6;
const REYNOLDS_GREATEST = 1e12;
/** Relative roughness that they take; the chart of Moody ends at 0.05. */
export const RELATIVE_ROUGHNESS_GREATEST = 0.1;

const LAMINAR_UP_TO = 2000;
const TURBULENT_FROM = 4000;

export type PipeMaterial = 'commercial-steel' | 'galvanized-steel' | 'drawn-tubing' | 'stainless-steel';

export const pipeRoughnessBasis: Basis = {
  formula: 'ε by material',
  source: 'Hydraulic Institute data tables; commercial steel 0.00015 ft and galvanized steel 0.0005 ft also by Moody (1944), memory',
  caution: 'New clean pipe. Rust, scale and sealant in the bore raise it.',
};
/** Absolute roughness of new pipe by material [m]. */
export const PIPE_ROUGHNESS_m: Readonly<Record<PipeMaterial, number>> = {
  'commercial-steel': 0.0457e-3,
  'galvanized-steel': 0.152e-3,
  'drawn-tubing': 0.00152e-3,
  'stainless-steel': 0.015e-3,
};

const roughness = (relativeRoughness: number): number => within('relativeRoughness', relativeRoughness, 0, RELATIVE_ROUGHNESS_GREATEST);

export type FlowRegime = 'laminar' | 'transition' | 'turbulent';

export const flowRegimeBasis: Basis = {
  formula: 'laminar: Re ≤ 2000; transition: 2000 < Re < 4000; turbulent: Re ≥ 4000',
  source: 'limits of the critical zone in TP-410, Flow of Fluids, memory',
  caution: 'In the transition the friction is not certain: Churchill runs through it smoothly, measured values scatter.',
};
/**
 * How the flow in a pipe runs.
 *
 * @param reynolds  Re [-], 1e-6 to 1e12
 * @returns laminar, transition or turbulent [-]
 * @throws {RangeError} argument not finite or out of range
 * @example flowRegime(3000) // 'transition'
 */
export function flowRegime(reynolds: number): FlowRegime {
  within('reynolds', reynolds, REYNOLDS_LEAST, REYNOLDS_GREATEST);
  if (reynolds <= LAMINAR_UP_TO) return 'laminar';
  return reynolds < TURBULENT_FROM ? 'transition' : 'turbulent';
}

export const haalandBasis: Basis = {
  formula: '1/√f = −1.8·log10[(ε/(3.7·D))^1.11 + 6.9/Re]',
  source: 'Haaland, J. Fluids Eng. 105 (1983) 89',
  caution: 'Turbulent flow only; within about 2 % of Colebrook.',
};
/**
 * Darcy friction factor by Haaland, which needs no iteration.
 *
 * @param reynolds           Re [-], 2000 to 1e12
 * @param relativeRoughness  ε/D [-], 0 to 0.1
 * @returns Darcy friction factor, four times that of Fanning [-]
 * @throws {RangeError} argument not finite or out of range
 * @example haalandFriction(1e5, 1e-4) // 0.018265053
 */
export function haalandFriction(reynolds: number, relativeRoughness: number): number {
  within('reynolds', reynolds, LAMINAR_UP_TO, REYNOLDS_GREATEST);
  return (-1.8 * Math.log10((roughness(relativeRoughness) / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2;
}

export const colebrookBasis: Basis = {
  formula: '1/√f = −2·log10[ε/(3.7·D) + 2.51/(Re·√f)]; f = 64/Re when laminar',
  source: 'Colebrook, J. Inst. Civ. Eng. 11 (1939) 133; laminar by Hagen and Poiseuille',
  caution: 'Darcy friction factor, four times that of Fanning. In the transition it is carried on below the range for which it was made.',
};
/**
 * Darcy friction factor by Colebrook, solved until nothing changes; 64/Re when laminar.
 *
 * @param reynolds           Re [-], 1e-6 to 1e12
 * @param relativeRoughness  ε/D [-], 0 to 0.1
 * @returns Darcy friction factor, four times that of Fanning [-]
 * @throws {RangeError} argument not finite or out of range
 * @example colebrookFriction(1e5, 1e-4) // 0.018513866
 */
export function colebrookFriction(reynolds: number, relativeRoughness: number): number {
  const rough = roughness(relativeRoughness) / 3.7;
  if (flowRegime(reynolds) === 'laminar') return 64 / reynolds;
  const smooth = 2.51 / reynolds;
  let inverse = haalandFriction(reynolds, relativeRoughness) ** -0.5;
  // Newton's steps on 1/√f: the line is almost straight there, so that three or four are enough.
  for (let step = 0; step < 20; step += 1) {
    const inner = rough + smooth * inverse;
    const change = (inverse + 2 * Math.log10(inner)) / (1 + ((2 / Math.LN10) * smooth) / inner);
    inverse -= change;
    if (Math.abs(change) <= 1e-14 * inverse) break;
  }
  return inverse ** -2;
}

export const churchillBasis: Basis = {
  formula: 'f = 8·[(8/Re)¹² + (A + B)^−1.5]^(1/12),  A = {2.457·ln[1/((7/Re)^0.9 + 0.27·ε/D)]}¹⁶,  B = (37 530/Re)¹⁶',
  source: 'Churchill, Chem. Eng. 84 (1977) 91',
  caution: 'Darcy friction factor, four times that of Fanning. It runs smoothly through the transition, where measured values scatter.',
};
/**
 * Darcy friction factor by Churchill: laminar, transition and turbulent in one line.
 *
 * @param reynolds           Re [-], 1e-6 to 1e12
 * @param relativeRoughness  ε/D [-], 0 to 0.1
 * @returns Darcy friction factor, four times that of Fanning [-]
 * @throws {RangeError} argument not finite or out of range
 * @example churchillFriction(1e5, 1e-4) // 0.018462625
 */
export function churchillFriction(reynolds: number, relativeRoughness: number): number {
  within('reynolds', reynolds, REYNOLDS_LEAST, REYNOLDS_GREATEST);
  const a = (2.457 * Math.log(1 / ((7 / reynolds) ** 0.9 + 0.27 * roughness(relativeRoughness)))) ** 16;
  const b = (37_530 / reynolds) ** 16;
  return 8 * ((8 / reynolds) ** 12 + (a + b) ** -1.5) ** (1 / 12);
}

export const fullyRoughBasis: Basis = {
  formula: 'f_T = 0.25/log10²[ε/(3.7·D)]',
  source: 'limit of Colebrook for great Re, as TP-410, Flow of Fluids takes it for fittings',
};
/**
 * Darcy friction factor of a rough pipe at great Reynolds numbers.
 *
 * @param relativeRoughness  ε/D [-], above 0, below 0.1
 * @returns Darcy friction factor, four times that of Fanning [-]
 * @throws {RangeError} argument not finite or out of range
 * @example fullyRoughFriction(0.00172) // 0.0225
 */
export function fullyRoughFriction(relativeRoughness: number): number {
  return 0.25 / Math.log10(between('relativeRoughness', relativeRoughness, 0, RELATIVE_ROUGHNESS_GREATEST) / 3.7) ** 2;
}
