import { type ThreadEngagement, threadEngagement_m } from '../calculations/formulas/pipe-threads.ts';
import { type FittingClass, type PipeEnd, fittingReach_m } from '../calculations/formulas/threaded-fittings.ts';
import type { PipeSize } from '../profile/pipe-table.ts';
import type { UnitProfile } from '../profile/unit-profile.ts';
import type { PieceEndKind, RunEnd, StraightRun } from './piece-runs.ts';

/** What an end of a piece loses against the centre of its fitting, or why that is not known. */
export type EndTakeOff =
  | { readonly isKnown: true; readonly reach_m: number; readonly engagement_m: number; readonly takeOff_m: number }
  | { readonly isKnown: false; readonly because: string };

/** Ends with a length in the tables, and bare ends. A cap and a nozzle screw onto a pipe that ends at its node. */
const TABLED: Readonly<Partial<Record<PieceEndKind, PipeEnd>>> = {
  open: 'open',
  nozzle: 'open',
  cap: 'open',
  'elbow-90': 'elbow-90',
  'elbow-45': 'elbow-45',
  tee: 'tee',
  coupling: 'coupling',
};

/** Never the length of a straight one. */
const REDUCING = 'reducing fitting: take its length from the fitting’s maker';
const UNTABLED: Readonly<Partial<Record<PieceEndKind, string>>> = {
  'odd-bend': 'no made fitting turns by this angle',
  cross: 'the length of a cross is not known here: take it from the fitting’s maker',
  reducer: REDUCING,
  joint: 'the joint is not threaded: take its length from the maker',
  unfitted: 'a nozzle hangs here in the middle of a pipe: draw the branch that carries it',
};

/** Class of malleable fittings, as far as there is a table for it. */
const malleableClass = (made: NonNullable<UnitProfile['fittingClass']>): FittingClass | undefined => (made === '300' ? made : undefined);

const unknown = (because: string): EndTakeOff => ({ isKnown: false, because });

/** A of the fitting and engagement of the thread at an end of a run. */
export function endTakeOff(end: RunEnd, { size, joint }: Pick<StraightRun, 'size' | 'joint'>, made: UnitProfile['fittingClass'], engagement: ThreadEngagement): EndTakeOff {
  const untabled = UNTABLED[end.kind];
  if (untabled) return unknown(untabled);
  const tabled = TABLED[end.kind];
  if (tabled === 'open') return { isKnown: true, reach_m: 0, engagement_m: 0, takeOff_m: 0 };
  if (joint !== 'threaded') return unknown(`the centre-to-end of ${joint} fittings is not known here: take it from the fitting’s maker`);
  if (end.isReducing) return unknown(REDUCING);
  if (made === null) return unknown('the fitting class is blank in the unit profile');
  const fittingClass = malleableClass(made);
  if (!fittingClass || !tabled) return unknown(`the centre-to-end of Class ${made} fittings is not known here: take it from the fitting’s maker`);
  const reach_m = tabledReach(size, fittingClass, tabled);
  if (reach_m === undefined) return unknown(`NPS ${size} has no Class ${made} fitting in the table: take its length from the maker`);
  const engagement_m = threadEngagement_m(size, engagement);
  return { isKnown: true, reach_m, engagement_m, takeOff_m: reach_m - engagement_m };
}

function tabledReach(size: PipeSize, fittingClass: FittingClass, end: PipeEnd): number | undefined {
  try {
    return fittingReach_m(size, fittingClass, end);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}
