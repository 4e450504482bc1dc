import { cutLength_m } from '../calculations/formulas/cut-length.ts';
import { type Nipple, nippleOf } from '../calculations/formulas/nipples.ts';
import { type ThreadEngagement, effectiveThread_m } from '../calculations/formulas/pipe-threads.ts';
import type { DerivedNetwork } from '../derived/derived.ts';
import { findMadeFitting } from '../derived/made-fitting.ts';
import { remembered } from '../derived/remember.ts';
import { runTreeOf } from '../isometric/straight-runs.ts';
import { feet_m, inches_m } from '../units/convert.ts';
import { type AsBuilt, type LengthBasis, asBuiltOf } from './as-built.ts';
import { type EndTakeOff, endTakeOff } from './end-take-off.ts';
import { type PieceEndKind, type PieceRun, type RunEnd, pieceRunsOf } from './piece-runs.ts';

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
  /** An elbow with one outside thread. */
  readonly isStreet: boolean;
  readonly takeOff: EndTakeOff;
}

/** One piece of pipe to cut. */
export interface Piece {
  /** Network id. */
  readonly network: string;
  readonly from: PieceEnd;
  readonly to: PieceEnd;
  readonly size: PieceRun['size'];
  readonly schedule: PieceRun['schedule'];
  readonly material: PieceRun['material'];
  readonly joint: PieceRun['joint'];
  /** Pipes of the plan that the piece is part of. */
  readonly pipes: readonly string[];
  readonly centreToCentre_m: number;
  /** Whether the length between centres is drawn, was measured on site, or takes up what another pipe measured otherwise. */
  readonly basis: LengthBasis;
  /** Unrounded; null while an end is not known, or where the fittings would touch. */
  readonly cut_m: number | null;
  /** Ends that get a thread: both, or none where the joint is not threaded or there is no pipe. */
  readonly threads: 0 | 2;
  /** A piece so short that it is bought as a nipple; null for longer ones and where it is not threaded. */
  readonly nipple: Nipple | null;
  /** false where a street elbow screws straight into the next fitting. */
  readonly hasPipe: boolean;
  /** Shorter than a close nipple, or less than nothing between the fittings. */
  readonly isTooShort: boolean;
  /** Why there is no cut length, or none to cut by: each a clause. */
  readonly because: readonly string[];
}

/** Two lengths that differ by less are one [m]. */
const NOISE_m = 1e-9;
const takenOff = (takeOff: EndTakeOff): number => (takeOff.isKnown ? takeOff.takeOff_m : 0);

/** Two fittings that screw into each other are drawn so far apart, give or take [m]: the take-up of a thread or two. */
const MADE_UP_m = inches_m(1 / 8);

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

type Cut = Pick<Piece, 'cut_m' | 'isTooShort' | 'because' | 'nipple' | 'hasPipe'>;

/** A street elbow that screws into the fitting at the other end: how far the two are drawn from where they meet. */
function madeUp(gap_m: number): Cut {
  const none = { cut_m: null, nipple: null } as const;
  if (Math.abs(gap_m) <= MADE_UP_m) return { ...none, isTooShort: false, hasPipe: false, because: ['no pipe: the street elbow screws straight into the fitting'] };
  if (gap_m < 0) return { ...none, isTooShort: true, hasPipe: false, because: ['the fittings would touch'] };
  return { ...none, isTooShort: false, hasPipe: true, because: ['the outside thread of a street elbow screws into a fitting, not onto pipe: draw the fitting next to it, or take an elbow with two inside threads'] };
}

/** Cut length of a piece, or why there is none. */
function cutOf({ size, joint }: PieceRun, centreToCentre_m: number, from: EndTakeOff, to: EndTakeOff): Cut {
  const least_m = joint === 'threaded' ? 2 * effectiveThread_m(size) : 0;
  const left_m = centreToCentre_m - takenOff(from) - takenOff(to);
  const isStub = left_m < least_m - NOISE_m;
  const none = { cut_m: null, nipple: null, hasPipe: true } as const;
  if (!from.isKnown || !to.isKnown) return { ...none, isTooShort: isStub, because: [...new Set([from, to].flatMap((end) => (end.isKnown ? [] : [end.because])))] };
  if (from.isOutside || to.isOutside) return madeUp(left_m);
  if (!(left_m > from.engagement_m + to.engagement_m)) return { ...none, isTooShort: true, because: ['the fittings would touch'] };
  const cut_m = cutLength_m(centreToCentre_m, [from.reach_m, to.reach_m], [from.engagement_m, to.engagement_m]);
  const nipple = joint === 'threaded' ? nippleOf(size, cut_m) : null;
  return { cut_m, nipple, hasPipe: true, isTooShort: isStub, because: isStub ? ['it is shorter than a close nipple'] : [] };
}

function piecesOfRun(derived: DerivedNetwork, run: PieceRun, numbers: ReadonlyMap<string, number>, { stockLength_m, engagement }: TakeOffOptions): Piece[] {
  const made = derived.profile?.fittingClass ?? null;
  const endOf = (end: RunEnd): PieceEnd => ({
    label: String(numbers.get(end.node) ?? '?'),
    node: end.node,
    kind: end.kind,
    isStreet: end.fitting?.isStreet ?? false,
    takeOff: endTakeOff(end, run, made, engagement),
  });
  const first = endOf(run.from);
  const last = endOf(run.to);
  const free_m = run.length_m - takenOff(first.takeOff) - takenOff(last.takeOff);
  // What fits into one length of stock needs no coupling.
  let known: ReturnType<typeof stockCoupling> | undefined;
  const coupling = () => (known ??= stockCoupling(derived, run, engagement));
  const lengths_m = free_m <= stockLength_m ? [free_m] : pipesOfRun(free_m, 2 * takenOff(coupling().takeOff), stockLength_m, 2 * effectiveThread_m(run.size));
  let done_m = 0;
  return lengths_m.map((length_m, i): Piece => {
    const couplingAt = (place: number): PieceEnd => ({ label: `${last.label}${letters(place)}`, ...coupling() });
    const from = i === 0 ? first : couplingAt(i - 1);
    const isLast = i === lengths_m.length - 1;
    const to = isLast ? last : couplingAt(i);
    // The last piece takes what is left, so that the pieces add up to the run.
    const centreToCentre_m = isLast ? run.length_m - done_m : length_m + takenOff(from.takeOff) + takenOff(to.takeOff);
    done_m += centreToCentre_m;
    const { size, schedule, material, joint, pipes, basis } = run;
    const cut = cutOf(run, centreToCentre_m, from.takeOff, to.takeOff);
    return { network: derived.ref.id, from, to, size, schedule, material, joint, pipes, centreToCentre_m, basis, threads: joint === 'threaded' && cut.hasPipe ? 2 : 0, ...cut };
  });
}

/** What joins two lengths of stock in one run. */
function stockCoupling({ profile }: DerivedNetwork, run: PieceRun, engagement: ThreadEngagement): Omit<PieceEnd, 'label'> {
  const kind: 'coupling' | 'joint' = run.joint === 'threaded' ? 'coupling' : 'joint';
  const legs = [{ pipe: null, size: run.size }];
  const match = findMadeFitting(profile?.madeFittings ?? [], kind, legs) ?? null;
  const fitting = match && { legs, isReducing: false, isStreet: false, made: match };
  return { node: null, kind, isStreet: false, takeOff: endTakeOff({ kind, fitting, leg: fitting ? 0 : -1, isReduced: false }, run, profile?.fittingClass ?? null, engagement) };
}

/** a … z, aa … */
const letters = (place: number): string => (place < 26 ? '' : letters(Math.floor(place / 26) - 1)) + String.fromCharCode(97 + (place % 26));

/**
 * Every piece of pipe of a network from fitting to fitting, in the order of the isometric's numbers, with its cut length.
 * Pipe that was measured on site counts as measured, and what hangs on it follows. Runs longer than the stock get couplings.
 * Nothing is rounded.
 */
export function piecesOf(derived: DerivedNetwork, options: TakeOffOptions = USUAL_TAKE_OFF, asBuilt: AsBuilt = asBuiltOf(derived)): Piece[] {
  const numbers = new Map(runTreeOf(derived).nodes.map((node, i) => [node, i + 1]));
  return pieceRunsOf(derived, asBuilt).flatMap((run) => piecesOfRun(derived, run, numbers, options));
}

/** The pieces of a network as they are usually cut: several checks ask for the same. */
export const usualPiecesOf = remembered((derived: DerivedNetwork): readonly Piece[] => piecesOf(derived));
