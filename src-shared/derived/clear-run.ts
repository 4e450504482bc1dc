import { distance_m } from '../geometry/point.ts';
import { LENGTH_SLACK_m, SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Network } from '../model/plan.ts';
import { type Contact, LOOK_AROUND_m, type PipeContacts, clearanceOf_m } from './clash-contacts.ts';
import type { ClashPipe } from './clash-pipe.ts';
import { rememberedPart } from './remember.ts';

/** Level pipe that hangs together at one height, and the risers and drops at it. */
export interface LevelRun {
  readonly level: readonly PipeContacts[];
  readonly upright: readonly PipeContacts[];
}

/** So many pipes are shifted together at most. */
const MOST_PIPES = 80;
/** A riser or drop keeps at least this length [m]. */
const LEAST_UPRIGHT_m = 0.05;
const MOST_STEPS = 60;
const LEAST_STEP_m = 1e-4;

const isLevel = ({ from, to }: ClashPipe): boolean => Math.abs(from.z - to.z) <= SAME_PLACE_m;
const isUpright = ({ from, to }: ClashPipe): boolean => distance_m(from, to) <= SAME_PLACE_m;

/** Nodes that stay at their height: where the pipe begins, and nozzles. */
const fixedNodesOf = rememberedPart(({ source, nozzles }: Network): ReadonlySet<string | null> => new Set([source, ...Object.values(nozzles).map(({ node }) => node)]));

/**
 * The level run that a pipe is part of, if it can be brought to another height as a whole: only risers and drops hang
 * between it and other pipe, and neither where the pipe begins nor a nozzle is on it.
 * @param near  what is near each pipe of its network
 */
export function findLevelRun(pipe: ClashPipe, near: ReadonlyMap<ClashPipe, PipeContacts>, network: Network): LevelRun | undefined {
  if (!isLevel(pipe)) return undefined;
  const fixed = fixedNodesOf(network);
  const level = new Set([pipe]);
  const upright = new Set<ClashPipe>();
  for (const each of level) {
    if (fixed.has(each.pipe.from) || fixed.has(each.pipe.to) || level.size > MOST_PIPES) return undefined;
    for (const next of near.get(each)?.joined ?? []) {
      if (isLevel(next)) level.add(next);
      else if (isUpright(next)) upright.add(next);
      else return undefined;
    }
  }
  const found = (pipes: Iterable<ClashPipe>): PipeContacts[] => [...pipes].flatMap((each) => near.get(each) ?? []);
  return { level: found(level), upright: found(upright) };
}

/** A pipe after its run was shifted; undefined when a riser or drop would have no length left. */
function shifted(pipe: ClashPipe, { level }: LevelRun, by_m: number): ClashPipe | undefined {
  const z_m = level[0]?.pipe.from.z ?? 0;
  const moved = (p: ClashPipe['from']): ClashPipe['from'] => (Math.abs(p.z - z_m) <= SAME_PLACE_m ? { ...p, z: p.z + by_m } : p);
  const [from, to] = [moved(pipe.from), moved(pipe.to)];
  const [before_m, after_m] = [pipe.to.z - pipe.from.z, to.z - from.z];
  if (!isLevel(pipe) && (before_m * after_m <= 0 || Math.abs(after_m) < LEAST_UPRIGHT_m)) return undefined;
  return { ...pipe, from, to };
}

/** How much is missing after a shift where it matters: at the clash itself, and wherever less is left than is wanted and than there was [m]; undefined when the run cannot be shifted so far. */
function missing_m(run: LevelRun, clash: Contact, of: ClashPipe, by_m: number): number | undefined {
  const own = new Map<ClashPipe, ClashPipe>();
  for (const { pipe } of [...run.level, ...run.upright]) {
    const moved = shifted(pipe, run, by_m);
    if (!moved) return undefined;
    own.set(pipe, moved);
  }
  let most_m = 0;
  for (const { pipe, contacts, beside } of [...run.level, ...run.upright]) {
    for (const contact of [...contacts, ...beside.filter(({ why }) => why === 'told-by-other')]) {
      const { thing, clearance_m: before_m } = contact;
      const other = thing.kind === 'pipe' ? thing.pipe : undefined;
      const wanted_m = Math.max(pipe.wanted_m, other?.wanted_m ?? 0);
      const after_m = clearanceOf_m(own.get(pipe) ?? pipe, other ? { kind: 'pipe', pipe: own.get(other) ?? other } : thing, wanted_m + LOOK_AROUND_m);
      const isClash = thing === clash.thing || (pipe === of && other !== undefined && clash.thing.kind === 'pipe' && other === clash.thing.pipe);
      if (after_m < wanted_m - LENGTH_SLACK_m && (isClash || after_m < before_m - LENGTH_SLACK_m)) most_m = Math.max(most_m, wanted_m - after_m);
    }
  }
  return most_m;
}

/**
 * The smallest change of height that takes a level run out of a clash and into no other [m], up positive; risers and
 * drops at it become longer or shorter. No shift brings pipe nearer to a thing than the shift is long, so that what is
 * known to be near, to 0.25 m, is all that has to be asked, and no smaller shift is passed over.
 * @param step_m  what the shift is a whole number of
 * @returns undefined when no shift up to 0.25 m does
 */
export function clearingShift_m(run: LevelRun, clash: Contact, of: ClashPipe, step_m: number): number | undefined {
  const rounded = (by_m: number): number => Math.ceil(by_m / step_m - 1e-6) * step_m;
  const least = ([1, -1] as const).flatMap((way) => {
    let by_m = rounded(Math.max(LEAST_STEP_m, Math.max(of.wanted_m, clash.thing.kind === 'pipe' ? clash.thing.pipe.wanted_m : 0) - clash.clearance_m));
    for (let i = 0; i < MOST_STEPS && by_m <= LOOK_AROUND_m; i += 1) {
      const more_m = missing_m(run, clash, of, way * by_m);
      if (more_m === undefined) return [];
      if (more_m === 0) return [way * by_m];
      by_m = rounded(by_m + Math.max(LEAST_STEP_m, more_m));
    }
    return [];
  });
  return least.sort((a, b) => Math.abs(a) - Math.abs(b) || b - a)[0];
}
