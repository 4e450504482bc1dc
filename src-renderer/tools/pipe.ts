import { addPipeRun } from '#shared/commands/add-pipe-run';
import { type PlanPoint, type PlanPoint3, bearing_rad, distance3_m, distance_m } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { commitOr } from './attempt.ts';
import { networksOn } from './level-things.ts';
import { hitForEnd, hitForStart, pipesAt } from './network-hits.ts';
import type { Sketch, Tool, ToolStep, ToolView } from './tool.ts';
import { angleText, lengthText, typedPlace } from './typed-place.ts';

/** A run under way. */
interface Run {
  readonly at: 'drawing';
  readonly places: readonly PlanPoint3[];
  /** Network that it belongs to; null begins a new one. */
  readonly network: string | null;
  /** Height of what is drawn next [m]; where it differs from the last place the run rises or drops there first. */
  readonly height_m: number;
  /** Height that the run had from its start [m]. */
  readonly startHeight_m: number;
  readonly axis_rad: number | null;
  /** Where the pointer last moved to; null since a piece was typed, when it still points at where that piece began. */
  readonly pointer: PlanPoint | null;
}
export type PipeState = { readonly at: 'idle' } | Run;

const start: PipeState = { at: 'idle' };

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

const lengthOf_m = (places: readonly PlanPoint3[]): number => places.reduce((sum, p, i) => sum + (i === 0 ? 0 : distance3_m(places[i - 1] ?? p, p)), 0);

/** The run with a riser or drop at its last place, if the height changes there. Two uprights in a row become one. */
function toHeight(places: readonly PlanPoint3[], height_m: number): readonly PlanPoint3[] {
  const last = places.at(-1);
  if (!last || Math.abs(last.z - height_m) <= SAME_PLACE_m) return places;
  const risen = { x: last.x, y: last.y, z: height_m };
  const before = places.at(-2);
  if (!before || distance_m(before, last) > SAME_PLACE_m) return [...places, risen];
  return Math.abs(before.z - height_m) <= SAME_PLACE_m ? places.slice(0, -1) : [...places.slice(0, -1), risen];
}

const onward = (run: Run, to: PlanPoint): readonly PlanPoint3[] => [...toHeight(run.places, run.height_m), { x: to.x, y: to.y, z: run.height_m }];

const commandOf = (run: Pick<Run, 'places' | 'network'>, view: ToolView) => addPipeRun(run.network, view.session.level, [...run.places], view.session.toolOptions.pipeSize);

/** Goes on with a run that has other places, shown in the plan as far as it goes; refused, it stays as it was. */
function become(run: Run, stay: Run, view: ToolView): ToolStep<PipeState> {
  const next: Run = { ...run, axis_rad: null };
  if (next.places.length < 2) return { state: next, preview: null };
  const command = commandOf(next, view);
  const outcome = command(view.plan);
  return outcome.ok ? { state: next, preview: command } : { state: stay, refusal: outcome.reason };
}

function finish(run: Run, view: ToolView): ToolStep<PipeState> {
  if (run.places.length < 2) return { state: run, refusal: 'A pipe needs two places. Click where it goes, or type a length or a height.' };
  return commitOr(view, commandOf(run, view), { state: start }, run);
}

function begin(view: ToolView, point: PlanPoint): ToolStep<PipeState> {
  const { level, toolOptions } = view.session;
  const hit = hitForStart(view.plan, level, point, toolOptions.pipeHeight_m);
  const bare = networksOn(view.plan, level).filter(({ pipes }) => Object.keys(pipes).length === 0);
  const network = hit?.network.id ?? (bare.length === 1 ? (bare[0]?.id ?? null) : null);
  // From a cylinder the run first rises to the chosen height; from other pipe it goes on level.
  const rises = !hit || hit.kind === 'cylinder' || (hit.kind === 'node' && pipesAt(hit.network, hit.id).length === 0);
  const at = hit?.at ?? { x: point.x, y: point.y, z: toolOptions.pipeHeight_m };
  const height_m = rises ? toolOptions.pipeHeight_m : at.z;
  return { state: { at: 'drawing', places: [at], network, height_m, startHeight_m: height_m, axis_rad: null, pointer: point } };
}

function clickOn(run: Run, point: PlanPoint, view: ToolView): ToolStep<PipeState> {
  const last = run.places.at(-1);
  if (last && distance_m(last, point) <= SAME_PLACE_m) return { state: run };
  const hit = hitForEnd(view.plan, view.session.level, point, run.height_m);
  if (!hit) return become({ ...run, places: onward(run, point) }, run, view);
  if (run.network !== null && hit.network.id !== run.network && view.plan.networks[run.network]) {
    return { state: run, refusal: `This is pipe of another network (${hit.network.name}). Each network is fed by its own cylinders.` };
  }
  const joined: Run = { ...run, network: hit.network.id, places: toHeight(onward(run, hit.at), hit.at.z) };
  return commitOr(view, commandOf(joined, view), { state: start }, run);
}

/** Draws pipe from place to place; typed heights make risers and drops. */
export const pipeTool: Tool<PipeState> = {
  id: 'pipe',
  start,
  anchors(state) {
    const from = state.at === 'drawing' ? state.places.at(-1) : undefined;
    if (state.at !== 'drawing' || !from) return {};
    return { from: { x: from.x, y: from.y }, axis_rad: state.axis_rad ?? undefined, align: state.places.map(({ x, y }) => ({ x, y })) };
  },
  hint(state, view) {
    if (state.at === 'idle') return `Click where the pipe begins: a cylinder, a pipe or a pipe end. It runs at ${lengthText(view, view.session.toolOptions.pipeHeight_m)}; type another height to change that.`;
    if (state.axis_rad !== null) return 'Click or type the length of this piece. Escape frees its direction.';
    return 'Click the next place, or type its length; Tab goes on to direction and height. A height makes a riser or drop here. Enter ends the run.';
  },
  sketch(state, view, pointer): Sketch {
    if (state.at === 'idle') return { asks: ['height'] };
    const last = state.places.at(-1);
    const goes = pointer && state.pointer && last && distance_m(last, pointer) > SAME_PLACE_m;
    const places = goes ? onward(state, pointer) : toHeight(state.places, state.height_m);
    const end = places.at(-1);
    if (!end || !last) return {};
    const soFar = `${lengthText(view, lengthOf_m(places))} so far, ${turnsOf(places)} ${turnsOf(places) === 1 ? 'elbow' : 'elbows'}`;
    const piece = goes ? `${lengthText(view, distance_m(last, pointer))} at ${angleText(view, bearing_rad(last, pointer))}, ` : '';
    return {
      lines: [{ places: places.map(({ x, y }) => ({ x, y })) }],
      labels: [{ at: { x: end.x, y: end.y }, text: `${piece}${lengthText(view, state.height_m)} high. ${soFar}` }],
      asks: ['length', 'angle', 'height'],
    };
  },
  step(state, event, view) {
    if (state.at === 'idle') {
      if (event.kind === 'cancel') return { state, finished: true };
      if (event.kind === 'down') return begin(view, event.point);
      if (event.kind === 'typed') {
        if (event.height_m === null) return { state, refusal: 'Click where the pipe begins, then type lengths and directions.' };
        return { state, session: { toolOptions: { ...view.session.toolOptions, pipeHeight_m: event.height_m } } };
      }
      return { state };
    }
    switch (event.kind) {
      case 'move':
        return { state: { ...state, pointer: event.point } };
      case 'down':
        return clickOn(state, event.point, view);
      case 'double':
      case 'enter':
        return finish(state, view);
      case 'back':
      case 'cancel': {
        if (state.axis_rad !== null) return { state: { ...state, axis_rad: null } };
        const places = state.places.slice(0, -1);
        const last = places.at(-1);
        if (!last) return { state: start, preview: null };
        return become({ ...state, places, height_m: places.length === 1 ? state.startHeight_m : last.z }, state, view);
      }
      case 'typed': {
        const height_m = event.height_m ?? state.height_m;
        const risen: Run = { ...state, height_m, places: event.height_m === null ? state.places : toHeight(state.places, height_m) };
        const last = risen.places.at(-1);
        const to = last && typedPlace({ x: last.x, y: last.y }, event, state.axis_rad, state.pointer);
        if (to) return become({ ...risen, places: onward(risen, to), pointer: null }, state, view);
        if (event.height_m !== null) return become(risen, state, view);
        if (event.angle_rad !== null) return { state: { ...state, axis_rad: event.angle_rad } };
        return { state, refusal: 'Type a length, or point the way it should go.' };
      }
      default:
        return { state };
    }
  },
};
