import type { LOSS_SETS } from '../../model/basis-of-design.ts';
import type { PipeSize } from '../../profile/pipe-table.ts';
import type { Basis } from '../topic.ts';
import { positive, within } from './checked.ts';
import { PIPE_ROUGHNESS_m, fullyRoughFriction } from './friction.ts';

export type LossSet = (typeof LOSS_SETS)[number];

export const LOSS_KINDS = ['elbow-90', 'elbow-45', 'tee-run', 'tee-branch', 'union', 'coupling'] as const;
export type LossKind = (typeof LOSS_KINDS)[number];

/** What one threaded fitting resists, as a loss coefficient and as the pipe of its bore that resists as much. */
export interface FittingLoss {
  /** K [-], on the velocity head in the bore. */
  readonly lossCoefficient: number;
  readonly equivalentLength_m: number;
}

const SCATTER = 'Measured losses of threaded fittings scatter by 20 % to 40 % about any table, and the sets differ by more in small sizes. The manufacturer of the unit may prescribe its own.';

/** Where each set comes from. */
export const fittingLossBasis: Readonly<Record<LossSet, Basis>> = {
  'tp-410': {
    formula: 'K = f_T·L/D,  L/D: elbow 90° 30, 45° 16, tee run 20, tee branch 60; union and coupling 7',
    source: 'TP-410, Flow of Fluids, memory; union and coupling are not in it and stand in from a table of the NFPA 12 kind, memory',
    caution: SCATTER,
  },
  'nfpa-12': {
    formula: 'L = D·L/D,  L/D: elbow 90° 32, 45° 15, tee run 20, tee branch 65, union and coupling 7;  K = f_T·L/D',
    source: 'equivalent lengths of threaded fittings of the NFPA 12 kind, memory; the constant L/D give every printed length again within 0.06 ft',
    caution: SCATTER,
  },
  ashrae: {
    formula: 'K by fitting and size;  L = D·K/f_T; union and coupling K = 7·f_T',
    source: 'ASHRAE Handbook, threaded fittings; sizes other than 1/2 to 2 from memory; union and coupling stand in from a table of the NFPA 12 kind, memory',
    caution: SCATTER,
  },
};

const JOINT_DIAMETERS = 7;
type Diameters = Readonly<Record<LossKind, number>>;
const TP_410: Diameters = { 'elbow-90': 30, 'elbow-45': 16, 'tee-run': 20, 'tee-branch': 60, union: JOINT_DIAMETERS, coupling: JOINT_DIAMETERS };
const NFPA_12: Diameters = { 'elbow-90': 32, 'elbow-45': 15, 'tee-run': 20, 'tee-branch': 65, union: JOINT_DIAMETERS, coupling: JOINT_DIAMETERS };

/** K of elbow 90°, elbow 45°, tee run and tee branch; the handbook has no 1/4. */
const ASHRAE: Readonly<Partial<Record<PipeSize, readonly [number, number, number, number]>>> = {
  '3/8': [2.5, 0.38, 0.9, 2.7],
  '1/2': [2.1, 0.37, 0.9, 2.4],
  '3/4': [1.7, 0.35, 0.9, 2.1],
  '1': [1.5, 0.34, 0.9, 1.8],
  '1-1/4': [1.3, 0.33, 0.9, 1.7],
  '1-1/2': [1.2, 0.32, 0.9, 1.6],
  '2': [1, 0.31, 0.9, 1.4],
  '2-1/2': [0.85, 0.3, 0.9, 1.3],
  '3': [0.8, 0.29, 0.9, 1.2],
  '4': [0.7, 0.28, 0.9, 1.1],
};

function ashraeCoefficient(kind: LossKind, size: PipeSize, roughFriction: number): number {
  const row = ASHRAE[size];
  if (!row) throw new RangeError(`size ${size} has no threaded fittings in the ASHRAE table.`);
  const [elbow90, elbow45, teeRun, teeBranch] = row;
  const joint = JOINT_DIAMETERS * roughFriction;
  return { 'elbow-90': elbow90, 'elbow-45': elbow45, 'tee-run': teeRun, 'tee-branch': teeBranch, union: joint, coupling: joint }[kind];
}

/**
 * Loss of one threaded fitting by a named set.
 *
 * @param set     whose table [-]
 * @param kind    fitting and the way through it [-]
 * @param size    nominal size NPS [-]
 * @param bore_m  D, bore of the pipe next to it [m], 0.001 to 1
 * @returns loss coefficient and equivalent length [-, m]
 * @throws {RangeError} bore not finite or out of range, or a size that the set does not have
 * @example fittingLoss('tp-410', 'elbow-90', '1/2', 0.0157988).equivalentLength_m // 0.474
 */
export function fittingLoss(set: LossSet, kind: LossKind, size: PipeSize, bore_m: number): FittingLoss {
  const roughFriction = fullyRoughFriction(PIPE_ROUGHNESS_m['commercial-steel'] / within('bore_m', bore_m, 0.001, 1));
  if (set === 'ashrae') {
    const lossCoefficient = ashraeCoefficient(kind, size, roughFriction);
    return { lossCoefficient, equivalentLength_m: (lossCoefficient / roughFriction) * bore_m };
  }
  const diameters = (set === 'tp-410' ? TP_410 : NFPA_12)[kind];
  return { lossCoefficient: diameters * roughFriction, equivalentLength_m: diameters * bore_m };
}

export const contractionLossBasis: Basis = {
  formula: 'K = ½·(1 − d²/D²), on the velocity head in d',
  source: 'TP-410, Flow of Fluids, sudden contraction, memory',
  caution: 'A reducer that is rounded or tapered inside loses less.',
};
/**
 * Loss of a reducer through which the gas runs into a smaller bore.
 *
 * @param bore_m         D, before it [m], > 0
 * @param smallerBore_m  d, behind it [m], above 0, at most D
 * @returns loss coefficient on the velocity head in the smaller bore [-]
 * @throws {RangeError} argument not finite or out of range
 * @example contractionLoss(0.02, 0.01) // 0.375
 */
export function contractionLoss(bore_m: number, smallerBore_m: number): number {
  const ratio = within('smallerBore_m', positive('smallerBore_m', smallerBore_m), 0, positive('bore_m', bore_m)) / bore_m;
  return 0.5 * (1 - ratio ** 2);
}

export const enlargementLossBasis: Basis = {
  formula: 'K = (D²/d² − 1)², on the velocity head in D',
  source: 'sudden enlargement (Borda and Carnot), from the balance of momentum',
  caution: 'Pipe of a pre-engineered unit must not grow downstream: this is for judging what is drawn.',
};
/**
 * Loss of a reducer through which the gas runs into a larger bore.
 *
 * @param bore_m        d, before it [m], > 0
 * @param largerBore_m  D, behind it [m], at least d
 * @returns loss coefficient on the velocity head in the larger bore [-]
 * @throws {RangeError} argument not finite or out of range
 * @example enlargementLoss(0.01, 0.02) // 9
 */
export function enlargementLoss(bore_m: number, largerBore_m: number): number {
  const ratio = within('largerBore_m', largerBore_m, positive('bore_m', bore_m), Number.MAX_VALUE) / bore_m;
  return (ratio ** 2 - 1) ** 2;
}
