import { FORGED_ENDS, type ForgedEnd, forgedReachBasis, forgedReach_m } from '../calculations/formulas/forged-fittings.ts';
import { type ThreadEngagement, threadEngagement_m } from '../calculations/formulas/pipe-threads.ts';
import { PIPE_ENDS, type PipeEnd, fittingReach_m } from '../calculations/formulas/threaded-fittings.ts';
import type { PipeSize } from '../profile/pipe-table.ts';
import type { UnitProfile } from '../profile/unit-profile.ts';
import type { PieceEndKind, PieceRun, RunEnd } from './piece-runs.ts';

/** What an end of a piece loses against the centre of its fitting, or why that is not known. */
export type EndTakeOff =
  | {
      readonly isKnown: true;
      readonly reach_m: number;
      readonly engagement_m: number;
      readonly takeOff_m: number;
      /** Where the reach was read; blank where there is none. */
      readonly source: string;
      /** The outside thread of a street elbow: it takes no pipe. */
      readonly isOutside?: true;
    }
  | { readonly isKnown: false; readonly because: string };

/** Ends of pipe that nothing is taken off: a cap, a drain and a nozzle screw onto a pipe that ends at its node. */
const BARE: ReadonlySet<PieceEndKind> = new Set(['open', 'nozzle', 'cap', 'plug', 'drain']);

const ENTER = 'take it from the fitting’s maker and enter it among the made fittings of the unit profile';
const UNMADE: Readonly<Partial<Record<PieceEndKind, string>>> = {
  'odd-bend': 'no made fitting turns by this angle',
  unfitted: 'a nozzle hangs here in the middle of a pipe: draw the branch that carries it',
  unfed: 'no agent comes here, or the pipe closes a ring: mend the network first',
};

const unknown = (because: string): EndTakeOff => ({ isKnown: false, because });
const REACH_SOURCE = 'ASME B16.3, Class 300, memory';

type TabledReach = { readonly reach_m: number; readonly source: string } | undefined;

/** Centre to end from the tables: malleable Class 300 and forged classes; undefined where they have none. */
function readReach(size: PipeSize, fittingClass: NonNullable<UnitProfile['fittingClass']>, kind: PieceEndKind): TabledReach {
  const malleable = PIPE_ENDS.find((end): end is PipeEnd => end === kind);
  const forged = FORGED_ENDS.find((end): end is ForgedEnd => end === kind);
  try {
    if (fittingClass === '300') return malleable && { reach_m: fittingReach_m(size, '300', malleable), source: REACH_SOURCE };
    return forged && { reach_m: forgedReach_m(size, fittingClass, forged), source: forgedReachBasis.source };
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

const read = new Map<string, TabledReach>();

/** The same, read once: the tables never change. */
function tabledReach(size: PipeSize, fittingClass: NonNullable<UnitProfile['fittingClass']>, kind: PieceEndKind): TabledReach {
  const key = `${size} ${fittingClass} ${kind}`;
  if (!read.has(key)) read.set(key, readReach(size, fittingClass, kind));
  return read.get(key);
}

/** Reach of the fitting and engagement of the thread at an end of a run. A maker's own length goes before the tables. */
export function endTakeOff({ kind, fitting, leg, isReduced }: Omit<RunEnd, 'node'>, { size, joint }: Pick<PieceRun, 'size' | 'joint'>, made: UnitProfile['fittingClass'], engagement: ThreadEngagement): EndTakeOff {
  if (BARE.has(kind)) return { isKnown: true, reach_m: 0, engagement_m: 0, takeOff_m: 0, source: '' };
  const unmade = UNMADE[kind];
  if (unmade) return unknown(unmade);
  if (isReduced) return unknown('a reducer stands between the fitting and this pipe: measure them made up, or enter a reducing fitting of these sizes among the made fittings of the unit profile');
  const engagement_m = joint === 'threaded' ? threadEngagement_m(size, engagement) : 0;
  const given_m = leg >= 0 ? fitting?.made?.reaches_m[leg] : undefined;
  const isStreet = fitting?.isStreet ?? false;
  if (given_m !== undefined && fitting?.made) {
    const { source } = fitting.made.fitting;
    if (isStreet && leg === 1) return { isKnown: true, reach_m: given_m, engagement_m: 0, takeOff_m: given_m, source, isOutside: true };
    return { isKnown: true, reach_m: given_m, engagement_m, takeOff_m: given_m - engagement_m, source };
  }
  if (joint !== 'threaded' || kind === 'joint') return unknown(`the centre-to-end of ${joint === 'threaded' ? 'welded or grooved' : joint} fittings is not known here: ${ENTER}`);
  if (fitting?.isReducing) return unknown(`reducing fitting, its length is not known here: ${ENTER}`);
  if (isStreet) return unknown(`the lengths of a street elbow are not known here: ${ENTER}`);
  if (made === null) return unknown('the fitting class is blank in the unit profile');
  const tabled = tabledReach(size, made, kind);
  if (!tabled) return unknown(`no table here has a Class ${made} fitting of this kind in NPS ${size}: ${ENTER}`);
  return { isKnown: true, ...tabled, engagement_m, takeOff_m: tabled.reach_m - engagement_m };
}
