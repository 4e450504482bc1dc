import { setNozzleHeight } from '../commands/set-nozzle-height.ts';
import { setPipeHeight } from '../commands/set-pipe-height.ts';
import { editCylinder } from '../commands/edit-cylinder.ts';
import type { Command } from '../commands/command.ts';
import type { Plan, RefOf } from '../model/plan.ts';
import { lastKept } from './last-kept.ts';
import { aroundLevel, isSound, trialsOn } from './trial.ts';

/** Heights in which nothing is stopped that is not stopped as drawn [m above the finished floor]. */
export interface HeightRange {
  readonly drawn_m: number;
  readonly least_m: number;
  readonly greatest_m: number;
}

/** Ends are found to this, on the safe side [m]. */
const FINE_m = 0.0005;
/** What breaks in a narrower band than this between two heights that break nothing may be passed over [m]. */
const STRIDE_m = 0.05;
/** Farther from the drawn height nothing is looked for [m]. */
const FARTHEST_m = 0.6;

/**
 * How far a height may go up and down before the first rule breaks, by strides from the drawn height and then by halving; every
 * height tried is worked out and checked as a whole, but for what a discharge would have to be run for.
 */
function rangeOf(plan: Plan, drawn_m: number, changeTo: (height_m: number) => Command, most: { readonly up_m: number; readonly down_m: number }): HeightRange {
  const tried = trialsOn(plan);
  const kept = (sign: 1 | -1, most_m: number): number => (most_m <= 0 ? 0 : (lastKept((by_m) => by_m === 0 || isSound(tried(changeTo(drawn_m + sign * by_m))), most_m, FINE_m, Math.min(STRIDE_m, most_m)) ?? 0));
  return { drawn_m, least_m: drawn_m - kept(-1, most.down_m), greatest_m: drawn_m + kept(1, most.up_m) };
}

const FAR = { up_m: FARTHEST_m, down_m: FARTHEST_m };

/**
 * Heights of an orifice over the place where it hangs; its drop becomes longer or shorter.
 * @param localCeiling  height of the ceiling over it and greatest drop below it, so that nothing is tried beyond either [m]
 */
export function nozzleHeights(plan: Plan, ref: RefOf<'nozzle'>, localCeiling?: { readonly ceiling_m: number; readonly drop_m: number }): HeightRange | undefined {
  const network = plan.networks[ref.network];
  const at = network?.nodes[network.nozzles[ref.id]?.node ?? '']?.at;
  if (!network || !at) return undefined;
  const most = localCeiling ? { up_m: localCeiling.ceiling_m - at.z, down_m: at.z - (localCeiling.ceiling_m - localCeiling.drop_m) } : FAR;
  return rangeOf(aroundLevel(plan, network.level), at.z, (height_m) => setNozzleHeight(ref, height_m), most);
}

/** Heights of the rail behind a cylinder; undefined while it is not entered. */
export function railHeights(plan: Plan, ref: RefOf<'cylinder'>): HeightRange | undefined {
  const network = plan.networks[ref.network];
  const drawn_m = network?.cylinders[ref.id]?.railHeight_m;
  if (!network || drawn_m === undefined || drawn_m === null) return undefined;
  return rangeOf(aroundLevel(plan, network.level), drawn_m, (railHeight_m) => editCylinder(ref, { railHeight_m }), FAR);
}

/** Heights of a level pipe; risers and drops at it become longer or shorter. Undefined for one that is not level. */
export function pipeHeights(plan: Plan, ref: RefOf<'pipe'>): HeightRange | undefined {
  const network = plan.networks[ref.network];
  const pipe = network?.pipes[ref.id];
  const [from, to] = [network?.nodes[pipe?.from ?? '']?.at, network?.nodes[pipe?.to ?? '']?.at];
  if (!network || !from || !to || from.z !== to.z) return undefined;
  return rangeOf(aroundLevel(plan, network.level), from.z, (height_m) => setPipeHeight([ref], height_m), FAR);
}
