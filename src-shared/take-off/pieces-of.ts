import { cutLength_m } from '../calculations/formulas/cut-length.ts';
import { type ThreadEngagement, effectiveThread_m } from '../calculations/formulas/pipe-threads.ts';
import type { DerivedNetwork } from '../derived/derived.ts';
import { pipeTreeOf } from '../derived/pipe-tree.ts';
import { runTreeOf } from '../isometric/straight-runs.ts';
import { feet_m } from '../units/convert.ts';
import { type EndTakeOff, endTakeOff } from './end-take-off.ts';
import { type PieceEndKind, type RunEnd, type StraightRun, straightRunsOf } from './piece-runs.ts';

/** Length that steel pipe is sold in, common practice [m]. */
export const STOCK_LENGTH_m = feet_m(21);

export interface TakeOffOptions {
  readonly stockLength_m: number;
  readonly engagement: ThreadEngagement;
}
export const USUAL_TAKE_OFF: TakeOffOptions = { stockLength_m: STOCK_LENGTH_m, engagement: 'shop' };

/** An end of a piece with what it takes off. */
export interface PieceEnd {
  /** "3" for the third node of the network's flow, "3a" for the first coupling on the way to it. */
  readonly label: string;
  /** null at a coupling that the stock length demands: it is no node of the plan. */
  readonly node: string | null;
  readonly kind: PieceEndKind;
  readonly takeOff: EndTakeOff;
}

/** One piece of pipe to cut. */
export interface Piece {
  /** Network id. */
  readonly network: string;
  readonly from: PieceEnd;
  readonly to: PieceEnd;
  readonly size: StraightRun['size'];
  readonly schedule: StraightRun['schedule'];
  readonly material: StraightRun['material'];
  readonly joint: StraightRun['joint'];
  /** Pipes of the plan that the piece is part of. */
  readonly pipes: readonly string[];
  readonly centreToCentre_m: number;
  /** Unrounded; null while an end is not known, or where the fittings would touch. */
  readonly cut_m: number | null;
  /** Ends that get a thread: both, or none where the joint is not threaded. */
  readonly threads: 0 | 2;
  /** Shorter than a close nipple, or less than nothing between the fittings. */
  readonly isTooShort: boolean;
  /** Why there is no cut length, or none to cut by: each a clause. */
  readonly because: readonly string[];
}

/** Two lengths that differ by less are one [m]. */
const NOISE_m = 1e-9;
const takenOff = (takeOff: EndTakeOff): number => (takeOff.isKnown ? takeOff.takeOff_m : 0);

/** Numbers of the nodes as the isometric shows them, from 1; those that have none there, such as where only the joint changes, follow. */
function nodeNumbersOf(derived: DerivedNetwork): ReadonlyMap<string, number> {
  const nodes = new Set([...runTreeOf(derived).nodes, ...pipeTreeOf(derived.network).order]);
  return new Map([...nodes].map((node, i) => [node, i + 1]));
}

/**
 * Lengths of pipe that a run is made of: whole stock lengths as long as they last. Where that leaves a stub, the last two share.
 * @param between_m what a coupling keeps two pipes apart
 */
function pipesOfRun(run_m: number, between_m: number, stock_m: number, least_m: number): number[] {
  const count = Math.max(1, Math.ceil((run_m + between_m - NOISE_m) / (stock_m + between_m)));
  const pipe_m = run_m - (count - 1) * between_m;
  if (count === 1) return [pipe_m];
  const rest_m = pipe_m - (count - 1) * stock_m;
  const whole = Array.from({ length: count - 2 }, () => stock_m);
  return rest_m >= least_m ? [...whole, stock_m, rest_m] : [...whole, (stock_m + rest_m) / 2, (stock_m + rest_m) / 2];
}

/** Cut length of a piece, or why there is none. */
function cutOf(run: StraightRun, centreToCentre_m: number, from: EndTakeOff, to: EndTakeOff): Pick<Piece, 'cut_m' | 'isTooShort' | 'because'> {
  const least_m = 2 * effectiveThread_m(run.size);
  const left_m = centreToCentre_m - takenOff(from) - takenOff(to);
  const isStub = left_m < least_m - NOISE_m;
  if (!from.isKnown || !to.isKnown) return { cut_m: null, isTooShort: isStub, because: [...new Set([from, to].flatMap((end) => (end.isKnown ? [] : [end.because])))] };
  if (!(left_m > from.engagement_m + to.engagement_m)) return { cut_m: null, isTooShort: true, because: ['the fittings would touch'] };
  return {
    cut_m: cutLength_m(centreToCentre_m, [from.reach_m, to.reach_m], [from.engagement_m, to.engagement_m]),
    isTooShort: isStub,
    because: isStub ? ['it is shorter than a close nipple'] : [],
  };
}

function piecesOfRun(derived: DerivedNetwork, run: StraightRun, numbers: ReadonlyMap<string, number>, { stockLength_m, engagement }: TakeOffOptions): Piece[] {
  const made = derived.profile?.fittingClass ?? null;
  const endOf = (end: RunEnd): PieceEnd => ({ label: String(numbers.get(end.node) ?? '?'), node: end.node, kind: end.kind, takeOff: endTakeOff(end, run, made, engagement) });
  const first = endOf(run.from);
  const last = endOf(run.to);
  const couplingKind: PieceEndKind = run.joint === 'threaded' ? 'coupling' : 'joint';
  const coupling = endTakeOff({ node: '', kind: couplingKind, isReducing: false }, run, made, engagement);
  const lengths_m = pipesOfRun(run.length_m - takenOff(first.takeOff) - takenOff(last.takeOff), 2 * takenOff(coupling), stockLength_m, 2 * effectiveThread_m(run.size));
  let done_m = 0;
  return lengths_m.map((length_m, i): Piece => {
    const couplingAt = (place: number): PieceEnd => ({ label: `${last.label}${letters(place)}`, node: null, kind: couplingKind, takeOff: coupling });
    const from = i === 0 ? first : couplingAt(i - 1);
    const isLast = i === lengths_m.length - 1;
    const to = isLast ? last : couplingAt(i);
    // The last piece takes what is left, so that the pieces add up to the run.
    const centreToCentre_m = isLast ? run.length_m - done_m : length_m + takenOff(from.takeOff) + takenOff(to.takeOff);
    done_m += centreToCentre_m;
    const { size, schedule, material, joint } = run;
    const pipes = run.pipes.map(({ ref }) => ref.id);
    return { network: derived.ref.id, from, to, size, schedule, material, joint, pipes, centreToCentre_m, threads: joint === 'threaded' ? 2 : 0, ...cutOf(run, centreToCentre_m, from.takeOff, to.takeOff) };
  });
}

/** a … z, aa … */
const letters = (place: number): string => (place < 26 ? '' : letters(Math.floor(place / 26) - 1)) + String.fromCharCode(97 + (place % 26));

/**
 * Every piece of pipe of a network from fitting to fitting, in the order of the isometric's numbers, with its cut length.
 * Runs longer than the stock get couplings. Nothing is rounded.
 */
export function piecesOf(derived: DerivedNetwork, options: TakeOffOptions = USUAL_TAKE_OFF): Piece[] {
  const numbers = nodeNumbersOf(derived);
  const numberOf = ({ to }: StraightRun): number => numbers.get(to.node) ?? numbers.size;
  const runs = straightRunsOf(derived).sort((a, b) => numberOf(a) - numberOf(b));
  return runs.flatMap((run) => piecesOfRun(derived, run, numbers, options));
}
