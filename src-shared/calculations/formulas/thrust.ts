import { ATMOSPHERE_Pa } from '../../units/convert.ts';
import type { Basis } from '../topic.ts';
import { finite, notNegative, positive, within } from './checked.ts';

const GAMMA = 1.4;
/** p/p0 where a convergent hole chokes, 0.528282. */
const CRITICAL = (2 / (GAMMA + 1)) ** (GAMMA / (GAMMA - 1));

export const holeThrustBasis: Basis = {
  formula: 'F = 1.267876·p0·A·C_d − p_a·A,  1.267876 = (1 + γ)·(2/(γ+1))^(γ/(γ−1)), γ 1.4; below choking F = [2γ/(γ−1)·((p0/p_a)^((γ−1)/γ) − 1) + 1]·p_a·A·C_d − p_a·A',
  source: 'momentum of a convergent hole, F = ṁ·v + (p_e − p_a)·A, ideal gas',
  caution: 'Steady flow. The first blow of a discharge can be higher: real supports need reserve.',
};
/**
 * Force with which a jet from a convergent hole pushes back.
 *
 * @param pressure_Pa           p0, absolute, before the hole [Pa], not below p_a
 * @param area_m2               A, of the hole [m²], ≥ 0
 * @param dischargeCoefficient  C_d; 1 gives the greatest force [-], above 0, at most 1
 * @param ambient_Pa            p_a, absolute, of the room [Pa], > 0
 * @returns force, against the jet [N], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example holeThrust_N(4_000_000, 1e-4, 1, 101325) // 497.0
 */
export function holeThrust_N(pressure_Pa: number, area_m2: number, dischargeCoefficient: number, ambient_Pa: number = ATMOSPHERE_Pa): number {
  const area = notNegative('area_m2', area_m2);
  const outside_Pa = positive('ambient_Pa', ambient_Pa);
  const inside_Pa = within('pressure_Pa', pressure_Pa, outside_Pa, 1e9);
  const coefficient = within('dischargeCoefficient', positive('dischargeCoefficient', dischargeCoefficient), 0, 1);
  const isChoked = inside_Pa * CRITICAL >= outside_Pa;
  const subsonic = ((2 * GAMMA) / (GAMMA - 1)) * ((inside_Pa / outside_Pa) ** ((GAMMA - 1) / GAMMA) - 1) + 1;
  const momentum_N = (isChoked ? (1 + GAMMA) * CRITICAL * inside_Pa : subsonic * outside_Pa) * area;
  return Math.max(0, coefficient * momentum_N - outside_Pa * area);
}

/** The jet of one hole. */
export interface Jet {
  /** How hard it pushes back [N]. */
  readonly thrust_N: number;
  /** Where it blows on the plan, counter-clockwise from east [rad]. */
  readonly azimuth_rad: number;
  /** How far it blows upwards, below 0 downwards [rad]; level unless given. */
  readonly elevation_rad?: number;
}

/** What the jets of a nozzle do together. */
export interface NozzleThrust {
  /** Force on the nozzle, east, north and up [N]. */
  readonly force_N: readonly [x: number, y: number, z: number];
  /** Its size [N]. */
  readonly size_N: number;
  /** The greatest size with any one hole blocked [N]. */
  readonly blocked_N: number;
  /** Hole whose blocking gives it, by its place in the list. */
  readonly blockedHole: number;
  /** The greater of both: what the support must take [N]. */
  readonly worst_N: number;
}

type Force = readonly [number, number, number];

function forceOf({ thrust_N, azimuth_rad, elevation_rad = 0 }: Jet): Force {
  const back_N = -notNegative('thrust_N', thrust_N);
  const level_N = back_N * Math.cos(finite('elevation_rad', elevation_rad));
  return [level_N * Math.cos(finite('azimuth_rad', azimuth_rad)), level_N * Math.sin(azimuth_rad), back_N * Math.sin(elevation_rad)];
}

export const nozzleThrustBasis: Basis = {
  formula: 'F = −Σ F_i·d_i over the holes; the worst of all holes open and any one blocked',
  source: 'vector sum; holes all round cancel, holes on one side do not; one hole blocked: common practice',
  caution: 'With a hole blocked the others are taken to blow as before; in truth they blow a little harder.',
};
/**
 * Force of all the jets of a nozzle together, and with the worst hole blocked.
 *
 * @param jets  every hole with its thrust and direction [N, rad], one or more
 * @returns force on the nozzle, its size, and the sizes with a hole blocked [N]
 * @throws {RangeError} no hole, or a number not finite or below 0
 * @example nozzleThrust([{ thrust_N: 100, azimuth_rad: 0 }, { thrust_N: 100, azimuth_rad: Math.PI }]).worst_N // 100
 */
export function nozzleThrust(jets: readonly Jet[]): NozzleThrust {
  if (jets.length === 0) throw new RangeError('jets must name at least one hole.');
  const forces = jets.map(forceOf);
  const [x, y, z] = forces.reduce<Force>((sum, each) => [sum[0] + each[0], sum[1] + each[1], sum[2] + each[2]], [0, 0, 0]);
  const size_N = Math.hypot(x, y, z);
  let [blocked_N, blockedHole] = [-1, 0];
  for (const [index, each] of forces.entries()) {
    const rest_N = Math.hypot(x - each[0], y - each[1], z - each[2]);
    if (rest_N > blocked_N) [blocked_N, blockedHole] = [rest_N, index];
  }
  return { force_N: [x, y, z], size_N, blocked_N, blockedHole, worst_N: Math.max(size_N, blocked_N) };
}

export const elbowThrustBasis: Basis = {
  formula: 'F = (p·A + ṁ·v)·2·sin(θ/2), p gauge, θ turn of the flow',
  source: 'momentum balance of a bend of constant bore',
  caution: 'Steady flow; pressure and speed after the bend taken as before it. Screwed or welded pipe carries p·A in its own wall; the flow part always pulls at the support.',
};
/**
 * Force on an elbow from the gas that turns in it, outwards along the bisector.
 *
 * @param gaugePressure_Pa  p, over the surroundings [Pa], ≥ 0
 * @param boreArea_m2       A, inside area of the pipe [m²], > 0
 * @param massFlow_kg_s     ṁ, through it [kg/s], ≥ 0
 * @param velocity_m_s      v, of the gas [m/s], ≥ 0
 * @param turn_rad          θ, by which the flow turns [rad], 0 to π
 * @returns force [N], ≥ 0
 * @throws {RangeError} argument not finite or out of range
 * @example elbowThrust_N(4_000_000, 0.0005, 1, 100, Math.PI / 2) // 2969.8
 */
export function elbowThrust_N(gaugePressure_Pa: number, boreArea_m2: number, massFlow_kg_s: number, velocity_m_s: number, turn_rad: number): number {
  const push_N = notNegative('gaugePressure_Pa', gaugePressure_Pa) * positive('boreArea_m2', boreArea_m2);
  const flow_N = notNegative('massFlow_kg_s', massFlow_kg_s) * notNegative('velocity_m_s', velocity_m_s);
  return (push_N + flow_N) * 2 * Math.sin(within('turn_rad', turn_rad, 0, Math.PI) / 2);
}
