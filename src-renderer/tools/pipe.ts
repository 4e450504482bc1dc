import { type PlanPoint, bearing_rad, distance_m } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { commitOr } from './attempt.ts';
import { startBeside, wayBeside } from './follow-wall.ts';
import { networksOn } from './level-things.ts';
import { hitForEnd, hitForStart, pipesAt } from './network-hits.ts';
import { type Run, commandOf, directionOf, goTo, hangs_m, joinTo, lengthOf_m, setOver, toHeight, turnsOf } from './pipe-run.ts';
import type { Sketch, Tool, ToolEvent, ToolStep, ToolView } from './tool.ts';
import { angleText, lengthText, typedPlace } from './typed-place.ts';

export type PipeState = { readonly at: 'idle' } | Run;

const start: PipeState = { at: 'idle' };

/** Goes on with a run that has other places, shown in the plan as far as it goes; refused, it stays as it was. */
function become(next: Run, stay: Run, view: ToolView): ToolStep<PipeState> {
  if (next.places.length < 2) return { state: next, preview: null };
  const command = commandOf(next, view);
  const outcome = command(view.plan);
  return outcome.ok ? { state: next, preview: command } : { state: stay, refusal: outcome.reason };
}

function finish(run: Run, view: ToolView): ToolStep<PipeState> {
  if (run.places.length < 2) return { state: run, refusal: 'A pipe needs two places. Click where it goes, or type a length or a height.' };
  return commitOr(view, commandOf(run, view), { state: start }, run);
}

/** Where the run goes on to from its last place: straight there, or along the walls. A sentence where there is no way. */
function wayTo(run: Run, point: PlanPoint, view: ToolView, length_m: number | null = null): readonly PlanPoint[] | string {
  const away_m = view.session.toolOptions.pipeFollow_m;
  const last = run.places.at(-1);
  return away_m === null || !last ? [point] : wayBeside(view, { x: last.x, y: last.y }, point, away_m, length_m);
}

const along = (run: Run, way: readonly PlanPoint[], view: ToolView): Run => way.reduce((drawn, to) => goTo(drawn, to, view), run);

function begin(view: ToolView, pointed: PlanPoint, state: PipeState): ToolStep<PipeState> {
  const { level, toolOptions } = view.session;
  const beside = hitForStart(view.plan, level, pointed, toolOptions.pipeHeight_m) || toolOptions.pipeFollow_m === null ? pointed : startBeside(view, pointed, toolOptions.pipeFollow_m);
  if (typeof beside === 'string') return { state, refusal: beside };
  const point = beside;
  const hit = hitForStart(view.plan, level, point, toolOptions.pipeHeight_m);
  const bare = networksOn(view.plan, level).filter(({ pipes }) => Object.keys(pipes).length === 0);
  const network = hit?.network.id ?? (bare.length === 1 ? (bare[0]?.id ?? null) : null);
  // From a cylinder the run first rises to the chosen height; from other pipe it goes on level.
  const rises = !hit || hit.kind === 'cylinder' || (hit.kind === 'node' && pipesAt(hit.network, hit.id).length === 0);
  const wanted_m = hangs_m(view, hit?.at ?? point) ?? toolOptions.pipeHeight_m;
  const at = hit?.at ?? { x: point.x, y: point.y, z: wanted_m };
  const height_m = rises ? wanted_m : at.z;
  return { state: { at: 'drawing', places: [at], network, height_m, startHeight_m: height_m, followsCeiling: toolOptions.pipeDrop_m !== null, axis_rad: null, pointer: point } };
}

function clickOn(run: Run, point: PlanPoint, view: ToolView): ToolStep<PipeState> {
  const last = run.places.at(-1);
  if (last && distance_m(last, point) <= SAME_PLACE_m) return { state: run };
  const hit = hitForEnd(view.plan, view.session.level, point, run.height_m);
  const way = wayTo(run, point, view);
  if (typeof way === 'string') return { state: run, refusal: way };
  if (!hit) return become({ ...along(run, way, view), axis_rad: null }, run, view);
  if (run.network !== null && hit.network.id !== run.network && view.plan.networks[run.network]) {
    return { state: run, refusal: `This is pipe of another network (${hit.network.name}). Each network is fed by its own cylinders.` };
  }
  const before = view.session.toolOptions.pipeFollow_m === null ? run : along(run, way, view);
  const joined: Run = { ...run, network: hit.network.id, places: joinTo(before, hit.at, view) };
  return commitOr(view, commandOf(joined, view), { state: start }, run);
}

/** What was typed, done in the order in which a fitter says it: up or down, then the offset, then along. */
function takeTyped(state: Run, event: Extract<ToolEvent, { kind: 'typed' }>, view: ToolView): ToolStep<PipeState> {
  const { run: said } = event;
  const last = state.places.at(-1);
  if (!last) return { state };
  const rise_m = said?.rise_m ?? null;
  const height_m = event.height_m ?? (rise_m === null ? null : last.z + rise_m);
  let drawn: Run = height_m === null ? state : { ...state, height_m, followsCeiling: false, places: toHeight(state.places, height_m) };
  const direction = directionOf(drawn);
  if (said?.offset) {
    const over = setOver(drawn, said.offset);
    if (typeof over === 'string') return { state, refusal: over };
    drawn = over;
  }
  const turned = said?.turn_rad ?? null;
  if (turned !== null && (!direction || Math.hypot(direction.x, direction.y) <= SAME_PLACE_m)) {
    return { state, refusal: 'Left and right count from a piece that runs along. Say north, south, east or west instead.' };
  }
  const angle_rad = event.angle_rad ?? (turned !== null && direction ? Math.atan2(direction.y, direction.x) + turned : null);
  const from = drawn.places.at(-1) ?? last;
  if (said && (said.x_m !== null || said.y_m !== null)) {
    const to = { x: said.x_m ?? from.x, y: said.y_m ?? from.y };
    if (distance_m(from, to) > SAME_PLACE_m) return become({ ...goTo(drawn, to, view), axis_rad: null, pointer: null }, state, view);
  }
  if (event.length_m !== null && angle_rad === null && state.pointer && drawn.axis_rad === null && view.session.toolOptions.pipeFollow_m !== null) {
    const way = wayTo(drawn, state.pointer, view, event.length_m);
    return typeof way === 'string' ? { state, refusal: way } : become({ ...along(drawn, way, view), pointer: null }, state, view);
  }
  const to = typedPlace({ x: from.x, y: from.y }, { ...event, angle_rad }, drawn.axis_rad, drawn.pointer);
  if (to) return become({ ...goTo(drawn, to, view), axis_rad: null, pointer: null }, state, view);
  if (drawn !== state) return become(said?.offset ? drawn : { ...drawn, axis_rad: null }, state, view);
  if (angle_rad !== null) return { state: { ...state, axis_rad: angle_rad } };
  return { state, refusal: 'Type a length, or point the way it should go.' };
}

/** Where a run begins whose start is typed: east and north of the plan's origin. */
function typedStart(event: Extract<ToolEvent, { kind: 'typed' }>, view: ToolView, state: PipeState): ToolStep<PipeState> {
  const { run } = event;
  const height_m = event.height_m;
  const toolOptions = height_m === null ? view.session.toolOptions : { ...view.session.toolOptions, pipeHeight_m: height_m };
  if (run?.x_m != null && run.y_m != null) {
    const begun = begin({ ...view, derived: view.derived, session: { ...view.session, toolOptions } }, { x: run.x_m, y: run.y_m }, state);
    const { state: drawn } = begun;
    return { ...begun, state: drawn.at === 'drawing' ? { ...drawn, pointer: null } : drawn, session: { toolOptions } };
  }
  if (height_m === null) return { state, refusal: 'Click where the pipe begins, or type its place: x 30-9 y 10-0.' };
  return { state, session: { toolOptions } };
}

const ASKS = ['length', 'angle', 'height', 'words'] as const;

/** How high a new run lies. */
function heightWords(view: ToolView): string {
  const { pipeDrop_m, pipeHeight_m } = view.session.toolOptions;
  return pipeDrop_m === null ? `at ${lengthText(view, pipeHeight_m)}` : `${lengthText(view, pipeDrop_m)} below the ceiling`;
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
    if (state.at === 'idle') return `Click where the pipe begins: a cylinder, a pipe or a pipe end. It runs ${heightWords(view)}; type another height to change that, or its place: Tab, then x 30-9 y 10-0.`;
    if (state.axis_rad !== null) return 'Click or type the length of this piece. Escape frees its direction.';
    return `Click the next place, or type: Tab opens the field, which takes words too (up 1-6, down 3", offset 12" left). ${view.session.toolOptions.pipeFollow_m === null ? '' : 'It follows the walls. '}Enter ends the run.`;
  },
  sketch(state, view, pointer): Sketch {
    if (state.at === 'idle') return { asks: ['height', 'words'] };
    const last = state.places.at(-1);
    const goes = pointer && state.pointer && last && distance_m(last, pointer) > SAME_PLACE_m;
    const way = goes ? wayTo(state, pointer, view) : null;
    if (typeof way === 'string') return { lines: [{ places: state.places.map(({ x, y }) => ({ x, y })) }], labels: [{ at: pointer ?? last ?? { x: 0, y: 0 }, text: way }], asks: ASKS };
    const drawn: Run = way ? along(state, way, view) : { ...state, places: toHeight(state.places, state.height_m) };
    const { places } = drawn;
    const end = places.at(-1);
    if (!end || !last) return {};
    const ceiling = state.followsCeiling && hangs_m(view, end) === undefined ? ' Ceiling not known here.' : '';
    const soFar = `${lengthText(view, lengthOf_m(places))} so far, ${turnsOf(places)} ${turnsOf(places) === 1 ? 'elbow' : 'elbows'}`;
    const piece = way?.length === 1 && goes ? `${lengthText(view, distance_m(last, pointer))} at ${angleText(view, bearing_rad(last, pointer))}, ` : '';
    return {
      lines: [{ places: places.map(({ x, y }) => ({ x, y })) }],
      labels: [{ at: { x: end.x, y: end.y }, text: `${piece}${lengthText(view, drawn.height_m)} high.${ceiling} ${soFar}` }],
      asks: ASKS,
    };
  },
  step(state, event, view) {
    if (state.at === 'idle') {
      if (event.kind === 'cancel') return { state, finished: true };
      if (event.kind === 'down') return begin(view, event.point, state);
      if (event.kind === 'typed') return typedStart(event, view, state);
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
        return become({ ...state, axis_rad: null, places, height_m: places.length === 1 ? state.startHeight_m : last.z }, state, view);
      }
      case 'typed':
        return takeTyped(state, event, view);
      default:
        return { state };
    }
  },
};
