import { addPipeRun } from '#shared/commands/add-pipe-run';
import { offsetBy } from '#shared/geometry/pipe-offset';
import { type PlanPoint, type PlanPoint3, bearing_rad, distance3_m, distance_m } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { type Direction3, direction3 } from '#shared/geometry/vector3';
import { localCeiling_m } from './local-ceiling.ts';
import type { ToolView } from './tool.ts';
import type { TypedOffset } from './typed-words.ts';

/** A run under way. */
export interface Run {
  readonly at: 'drawing';
  readonly places: readonly PlanPoint3[];
  /** Network that it belongs to; null begins a new one. */
  readonly network: string | null;
  /** Height of what is drawn next [m]; where it differs from the last place the run rises or drops there first. */
  readonly height_m: number;
  /** Height that the run had from its start [m]. */
  readonly startHeight_m: number;
  /** New places hang below their own ceiling as far as the tool options say; ends with the first height that is typed. */
  readonly followsCeiling: boolean;
  readonly axis_rad: number | null;
  /** Where the pointer last moved to; null since a piece was typed, when it still points at where that piece began. */
  readonly pointer: PlanPoint | null;
}

/** Turns in a list of places: what will be elbows. */
export function turnsOf(places: readonly PlanPoint3[]): number {
  const straight = (a: PlanPoint3, b: PlanPoint3, c: PlanPoint3): boolean => {
    const before_m = distance3_m(a, b);
    const after_m = distance3_m(b, c);
    if (before_m === 0 || after_m === 0) return true;
    const along = ((b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) + (b.z - a.z) * (c.z - b.z)) / (before_m * after_m);
    return along > 1 - 1e-9;
  };
  return places.filter((b, i) => {
    const a = places[i - 1];
    const c = places[i + 1];
    return a && c && !straight(a, b, c);
  }).length;
}

/** Length of a way through places [m]. */
export const lengthOf_m = (places: readonly PlanPoint3[]): number => places.reduce((sum, p, i) => sum + (i === 0 ? 0 : distance3_m(places[i - 1] ?? p, p)), 0);

/** The run with a riser or drop at its last place, if the height changes there. Two uprights in a row become one. */
export function toHeight(places: readonly PlanPoint3[], height_m: number): readonly PlanPoint3[] {
  const last = places.at(-1);
  if (!last || Math.abs(last.z - height_m) <= SAME_PLACE_m) return places;
  const risen = { x: last.x, y: last.y, z: height_m };
  const before = places.at(-2);
  if (!before || distance_m(before, last) > SAME_PLACE_m) return [...places, risen];
  return Math.abs(before.z - height_m) <= SAME_PLACE_m ? places.slice(0, -1) : [...places.slice(0, -1), risen];
}

/** Places of a piece at which its ceiling is looked at, as shares of its length. */
const LOOKED_AT = [0.25, 0.5, 0.75];

/** Height of a new place of a run that hangs below the ceiling [m]; undefined where the ceiling is unknown. */
export function hangs_m(view: ToolView, at: PlanPoint): number | undefined {
  const drop_m = view.session.toolOptions.pipeDrop_m;
  const ceiling_m = drop_m === null ? undefined : localCeiling_m(view, at);
  return drop_m === null || ceiling_m === undefined ? undefined : ceiling_m - drop_m;
}

/** Whether the ceiling goes evenly from one place to another: a step between them is passed below it. */
function isEven(view: ToolView, a: PlanPoint3, b: PlanPoint3): boolean {
  return LOOKED_AT.every((share) => {
    const here_m = hangs_m(view, { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share });
    return here_m !== undefined && Math.abs(here_m - (a.z + (b.z - a.z) * share)) <= 0.001;
  });
}

/** Whether a run that falls reaches a height at a place by its fall alone, within what fittings take up. */
const REACH_BY_FALL = Math.tan(Math.PI / 180);

/**
 * The run drawn on to a place of the plan: first to its height, then along. It falls as the tool options say, or
 * keeps below the ceiling, where a step is passed at the lower of its two sides.
 */
export function goTo(run: Run, to: PlanPoint, view: ToolView): Run {
  const places = toHeight(run.places, run.height_m);
  const last = places.at(-1);
  if (!last) return run;
  const end_m = run.followsCeiling ? hangs_m(view, to) : undefined;
  if (end_m === undefined) {
    const z = run.height_m - view.session.toolOptions.pipeFall * distance_m(last, to);
    return { ...run, places: [...places, { x: to.x, y: to.y, z }], height_m: z };
  }
  const end = { x: to.x, y: to.y, z: end_m };
  if (Math.abs(end_m - last.z) <= SAME_PLACE_m || isEven(view, last, end)) return { ...run, places: [...places, end], height_m: end_m };
  const low_m = Math.min(end_m, last.z);
  return { ...run, places: toHeight([...toHeight(places, low_m), { x: to.x, y: to.y, z: low_m }], end_m), height_m: end_m };
}

/** The run drawn on to something that is there: straight to it where its fall brings it there, else with a riser or drop. */
export function joinTo(run: Run, at: PlanPoint3, view: ToolView): readonly PlanPoint3[] {
  const places = toHeight(run.places, run.height_m);
  const last = places.at(-1);
  const run_m = last ? distance_m(last, at) : 0;
  const falls = view.session.toolOptions.pipeFall !== 0;
  if (last && falls && run_m > SAME_PLACE_m && Math.abs(at.z - last.z) <= run_m * REACH_BY_FALL) return [...places, at];
  return toHeight(goTo(run, at, view).places, at.z);
}

/** Direction of the last piece of a run; undefined before there is one. */
export function directionOf({ places }: Pick<Run, 'places'>): Direction3 | undefined {
  const [before, last] = [places.at(-2), places.at(-1)];
  return before && last && direction3(before, last, SAME_PLACE_m);
}

/**
 * The run set over to a parallel line by two 45° elbows; it then goes on in its old direction.
 * A sentence where it cannot be: no piece before it, or no side said.
 */
export function setOver(run: Run, offset: TypedOffset): Run | string {
  const places = toHeight(run.places, run.height_m);
  const last = places.at(-1);
  const along = directionOf({ places });
  if (!last || !along) return 'Draw the piece before the offset first: the offset turns out of it.';
  const isUpright = Math.abs(along.z) > Math.hypot(along.x, along.y);
  const { plain_m, left_m, up_m, east_m, north_m } = offset;
  if (isUpright && left_m !== 0) return 'An upright run has no left and right. Say which way it is set over, for example offset 12" north.';
  if (isUpright && up_m !== 0) return 'An upright run is set over sideways. Say which way, for example offset 12" north.';
  const level = Math.hypot(along.x, along.y);
  const left = isUpright ? { x: 0, y: 0 } : { x: -along.y / level, y: along.x / level };
  let plain = { x: 0, y: 0 };
  if (plain_m !== null) {
    const side = run.pointer && (run.pointer.x - last.x) * left.x + (run.pointer.y - last.y) * left.y;
    if (isUpright) return 'Say which way it is set over, for example offset 12" north.';
    if (!side || Math.abs(side) <= SAME_PLACE_m) return 'Say to which side it is set over: left, right, up or down.';
    plain = { x: left.x * plain_m * Math.sign(side), y: left.y * plain_m * Math.sign(side) };
  }
  const { to, set_m } = offsetBy(last, along, { x: left.x * left_m + east_m + plain.x, y: left.y * left_m + north_m + plain.y, z: up_m });
  if (set_m <= SAME_PLACE_m) return 'An offset goes to the side of its run. Say left, right, up or down, and how far.';
  return { ...run, places: [...places, to], height_m: to.z, followsCeiling: false, axis_rad: isUpright ? null : bearing_rad(places.at(-2) ?? last, last), pointer: null };
}

/** The command that draws a run as far as it goes. */
export const commandOf = (run: Pick<Run, 'places' | 'network'>, view: ToolView) => addPipeRun(run.network, view.session.level, [...run.places], view.session.toolOptions.pipeSize);
