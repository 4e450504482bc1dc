import { insertCorner } from '#shared/commands/insert-corner';
import { insertNode } from '#shared/commands/insert-node';
import { distanceToOutline_m } from '#shared/geometry/outline';
import { type PlanPoint, distance_m, midpoint } from '#shared/geometry/point';
import { nearestOnSegment } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { type Ref, isSameRef, refKey, ringOf } from '#shared/model/plan';
import type { PipeMove } from '../store/state.ts';
import { commitOr } from './attempt.ts';
import { type Drag, dragOf, reachedBy } from './drag.ts';
import { layerOf, wallsOf } from './level-things.ts';
import { hasNozzle, pipesUnder } from './network-hits.ts';
import { handleAt, reshapeOf } from './reshape.ts';
import type { Sketch, Tool, ToolEvent, ToolStep, ToolView } from './tool.ts';
import { lengthText, lineLabel, typedPlace } from './typed-place.ts';

interface Held {
  readonly hit: Ref;
  /** Handle of the thing that is held, to change its shape; undefined moves it. */
  readonly handle?: number | undefined;
  readonly pressed: PlanPoint;
  readonly reach_m: number;
  /** Ctrl is held: of a place where pipes meet, the other way of moving is taken. */
  readonly other?: boolean;
  /** What a click takes in its place: the next thing below the selected one. */
  readonly below?: Ref | undefined;
}
export type SelectState =
  /** `presses` counts clicks that began here: a double click that began in another tool means nothing. */
  | { readonly at: 'idle'; readonly presses: number }
  | ({ readonly at: 'pressed'; readonly adds: boolean; readonly presses: number } & Held)
  | { readonly at: 'boxing'; readonly pressed: PlanPoint; readonly to: PlanPoint; readonly reach_m: number; readonly hit: Ref | undefined; readonly adds: boolean; readonly presses: number }
  | ({ readonly at: 'dragging'; readonly to: PlanPoint } & Held);

/** Things that are set at a distance from a wall. */
const SET_BY_WALL: readonly Ref['kind'][] = ['nozzle', 'cylinder', 'obstruction', 'node', 'pipe', 'device', 'note'];
const start: SelectState = { at: 'idle', presses: 0 };
/** How near the pointer must be to things over each other to be told of them [px]. */
const HINT_REACH_px = 6;
/** Share of the reach that the pointer must move before a press becomes a drag. */
const DRAG_SHARE = 0.5;

const holds = (selection: readonly Ref[], ref: Ref): boolean => selection.some((each) => isSameRef(each, ref));
const toggled = (selection: readonly Ref[], ref: Ref): readonly Ref[] => (holds(selection, ref) ? selection.filter((each) => !isSameRef(each, ref)) : [...selection, ref]);
const joined = (selection: readonly Ref[], more: readonly Ref[]): readonly Ref[] => [...new Map([...selection, ...more].map((ref) => [refKey(ref), ref])).values()];

/** The selection as a group that moves together when the thing pressed is part of it; else the thing alone. */
function groupOf({ session }: ToolView, hit: Ref): readonly Ref[] {
  const free = session.selection.filter((ref) => !session.layers[layerOf(ref)].locked);
  const owner: Ref | null = 'enclosure' in hit ? { kind: 'enclosure', level: hit.level, id: hit.enclosure } : null;
  return free.length > 1 && (holds(free, hit) || (owner && holds(free, owner))) ? free : [hit];
}

/** Whether a drag would take a nozzle along though nozzles are locked. */
function takesLockedNozzle({ plan, session }: ToolView, { without }: Drag): boolean {
  if (!session.layers.nozzles.locked) return false;
  return without.some((ref) => {
    const network = ref.kind === 'node' ? plan.networks[ref.network] : undefined;
    return network !== undefined && hasNozzle(network, ref.id);
  });
}

/** What goes along with a place where pipes meet: as the tool options say, with Ctrl the other. */
function howOf(view: ToolView, { other }: Pick<Held, 'other'>): PipeMove {
  const { pipeMove } = view.session.toolOptions;
  if (!other) return pipeMove;
  return pipeMove === 'move' ? 'stretch' : 'move';
}

const HOW_HINTS: Readonly<Record<PipeMove, string>> = {
  stretch: 'Its pipes stretch and stay square; hold Ctrl to take along all that follows.',
  move: 'All that follows goes along; hold Ctrl to stretch its pipes instead.',
  alone: 'This place moves alone; hold Ctrl to take along all that follows.',
};

const dragNow = (view: ToolView, { hit, handle, pressed, reach_m, other }: Held): Drag | undefined =>
  handle === undefined ? dragOf(view, hit, groupOf(view, hit), pressed, reach_m, howOf(view, { other })) : reshapeOf(view, hit, handle);

/**
 * Whether a press begins a box there: inside an enclosure it is on the floor, and on a floor plan that is not
 * selected it is on paper that must not shift under the drawing.
 */
function isFloor(view: ToolView, hit: Ref, at: PlanPoint, reach_m: number): boolean {
  if (hit.kind === 'underlay') return !holds(view.session.selection, hit);
  if (hit.kind !== 'enclosure') return false;
  const enclosure = view.plan.levels[hit.level]?.enclosures[hit.id];
  return enclosure !== undefined && [enclosure.outline, ...enclosure.holes].every((ring) => distanceToOutline_m(at, ringOf(ring)) > reach_m);
}

/** Things over each other at a place, from the one that is selected on: the next click takes the one below it. Nothing when none is. */
function stackUnder(view: ToolView, at: PlanPoint, reach_m: number): readonly Ref[] {
  const { selection } = view.session;
  const [only] = selection;
  const stack = only && selection.length === 1 ? view.pickStack(at, reach_m) : [];
  const index = only ? stack.findIndex((ref) => isSameRef(ref, only)) : -1;
  return index < 0 || stack.length < 2 ? [] : [...stack.slice(index), ...stack.slice(0, index)];
}

/** With things selected, Shift on the edge of an enclosure adds the wall there: they can then be set at a distance from it. */
function wallBeside({ plan, session }: ToolView, picked: Ref, at: PlanPoint, reach_m: number): Ref | undefined {
  const enclosure = picked.kind === 'enclosure' ? plan.levels[picked.level]?.enclosures[picked.id] : undefined;
  if (!enclosure || !session.selection.some(({ kind }) => SET_BY_WALL.includes(kind))) return undefined;
  const walls = wallsOf(session.level, enclosure).map(({ ref, segment }) => ({ ref, away_m: distance_m(at, nearestOnSegment(at, segment)) }));
  return walls.filter(({ away_m }) => away_m <= reach_m).sort((a, b) => a.away_m - b.away_m)[0]?.ref;
}

function press(event: Extract<ToolEvent, { kind: 'down' | 'move' | 'up' | 'double' }>, view: ToolView, presses: number): ToolStep<SelectState> {
  const { raw, reach_m } = event;
  const adds = event.shift || event.mod === true;
  const counted = presses + 1;
  const handle = adds ? undefined : handleAt(view, raw, reach_m);
  if (handle) return { state: { at: 'pressed', hit: handle.ref, handle: handle.index, pressed: raw, reach_m, adds, presses: counted } };
  const stack = adds ? [] : stackUnder(view, raw, reach_m);
  const picked = stack[0] ?? view.pick(raw, reach_m);
  const hit = (adds && picked && wallBeside(view, picked, raw, reach_m)) || picked;
  if (!hit || isFloor(view, hit, raw, reach_m)) return { state: { at: 'boxing', pressed: raw, to: raw, reach_m, hit, adds, presses: counted } };
  const inGroup = groupOf(view, hit).length > 1;
  return { state: { at: 'pressed', hit, pressed: raw, reach_m, adds, presses: counted, below: stack[1] }, select: adds || inGroup ? undefined : [hit] };
}

function twice(at: PlanPoint, reach_m: number, view: ToolView, state: SelectState): ToolStep<SelectState> {
  const hit = view.pick(at, reach_m);
  if (hit?.kind === 'wall') {
    const enclosure = view.plan.levels[hit.level]?.enclosures[hit.enclosure];
    const wall = enclosure && wallsOf(hit.level, enclosure).find(({ ref }) => ref.id === hit.id);
    if (wall) return commitOr(view, insertCorner(hit, nearestOnSegment(at, wall.segment)), { state: start }, state);
  }
  if (hit?.kind === 'pipe') {
    const on = pipesUnder(view.plan, view.session.level, at, reach_m).find(({ id, network }) => id === hit.id && network.id === hit.network);
    if (on) return commitOr(view, insertNode(hit, on.at), { state: start }, state);
  }
  return { state };
}

function dragTo(held: Held, to: PlanPoint, view: ToolView, other: boolean): ToolStep<SelectState> {
  const state: Held = { ...held, other };
  const drag = dragNow(view, state);
  if (drag && takesLockedNozzle(view, drag)) return { state: start, preview: null, refusal: 'A nozzle hangs on it, and nozzles are locked. Free them in the layers first (L).' };
  return { state: { at: 'dragging', hit: state.hit, handle: state.handle, pressed: state.pressed, reach_m: state.reach_m, other, to }, preview: drag ? drag.commandTo(to) : null };
}

function drop(state: Held, to: PlanPoint, view: ToolView): ToolStep<SelectState> {
  const drag = dragNow(view, state);
  if (!drag || distance_m(drag.grab, to) <= SAME_PLACE_m) return { state: start, preview: null };
  const outcome = drag.commandTo(to)(view.plan);
  return outcome.ok ? { state: start, commit: drag.commandTo(to), select: view.session.selection } : { state: start, preview: null, refusal: outcome.reason };
}

/**
 * Picks, moves and reshapes. A click selects, with Shift or Ctrl it adds or takes off; a press on empty ground or
 * on a floor or an unselected floor plan draws a box; a press on a thing drags it, Shift keeps it square; a double click adds a corner.
 */
export const selectTool: Tool<SelectState> = {
  id: 'select',
  start,
  anchors(state, view) {
    if (state.at !== 'pressed' && state.at !== 'dragging') return {};
    const drag = dragNow(view, state);
    if (!drag) return {};
    const { grab, without } = drag;
    return { from: grab, isFree: true, without, carry: { x: grab.x - state.pressed.x, y: grab.y - state.pressed.y } };
  },
  hint(state, view) {
    if (state.at === 'dragging' && dragNow(view, state)?.along_rad !== undefined) return 'Let go to place it, or type how far it moves. Alt catches nothing, Escape puts it back.';
    if (state.at === 'dragging' && state.hit.kind === 'node' && groupOf(view, state.hit).length === 1) return `${HOW_HINTS[howOf(view, state)]} Let go to place it, or type how far and in which direction. Escape puts it back.`;
    if (state.at === 'dragging') return 'Let go to place it, or type how far and in which direction. Shift keeps it square, Alt catches nothing, Escape puts it back.';
    if (state.at === 'boxing' && distance_m(state.pressed, state.to) > state.reach_m) return 'Everything inside the box will be selected.';
    const [only] = view.session.selection;
    const { pointer, camera } = view.session;
    if (pointer && stackUnder(view, pointer, HINT_REACH_px / camera.scale_px_m).length > 1) return 'Another one lies below it: click again to take that. Drag to move.';
    if (view.session.selection.length === 1 && (only?.kind === 'enclosure' || only?.kind === 'wall' || only?.kind === 'corner')) {
      return 'Drag a corner or a wall to reshape the enclosure; double-click a wall to add a corner.';
    }
    if (view.session.selection.length === 1 && (only?.kind === 'obstruction' || only?.kind === 'ceiling-zone' || only?.kind === 'adjoining')) return 'Drag to move, drag a corner to reshape. Shift or Ctrl with a click selects more. Escape selects nothing.';
    if (view.session.selection.length === 1 && (only?.kind === 'opening' || only?.kind === 'dimension')) return 'Drag to move, drag an end to reshape. Shift or Ctrl with a click selects more. Escape selects nothing.';
    if (only) return 'Drag to move. Shift or Ctrl with a click selects more. Escape selects nothing.';
    return 'Click a thing to select it, or drag a box around several.';
  },
  sketch(state, view) {
    if (state.at === 'boxing' && distance_m(state.pressed, state.to) > state.reach_m * DRAG_SHARE) {
      const { pressed: a, to: b } = state;
      return { lines: [{ places: [a, { x: b.x, y: a.y }, b, { x: a.x, y: b.y }], closed: true, dashed: true }] };
    }
    if (state.at !== 'dragging') return {};
    const drag = dragNow(view, state);
    const asks: Sketch['asks'] = drag?.along_rad === undefined ? ['length', 'angle'] : ['length'];
    const to = drag && reachedBy(drag, state.to);
    if (!to || distance_m(drag.grab, to) <= SAME_PLACE_m) return { asks };
    const text = state.hit.kind === 'corner' || state.handle !== undefined ? lineLabel(view, drag.grab, to).text : lengthText(view, distance_m(drag.grab, to));
    return { lines: [{ places: [drag.grab, to], dashed: true }], labels: [{ at: midpoint(drag.grab, to), text }], asks };
  },
  step(state, event, view) {
    if (event.kind === 'cancel') {
      if (state.at === 'idle') return { state: start, select: [] };
      return { state: start, preview: state.at === 'dragging' ? null : undefined };
    }
    switch (state.at) {
      case 'idle':
        if (event.kind === 'down') return press(event, view, state.presses);
        if (event.kind === 'double' && state.presses >= 2) return twice(event.raw, event.reach_m, view, state);
        return { state };
      case 'pressed': {
        if (event.kind === 'move' && distance_m(event.raw, state.pressed) > state.reach_m * DRAG_SHARE) return dragTo(state, event.point, view, event.mod === true);
        if (event.kind !== 'up') return { state };
        const { selection } = view.session;
        return { state: { at: 'idle', presses: state.presses }, select: state.adds ? toggled(selection, state.hit) : [state.below ?? state.hit] };
      }
      case 'boxing': {
        if (event.kind === 'move') return { state: { ...state, to: event.raw } };
        if (event.kind !== 'up') return { state };
        const { selection } = view.session;
        const idle: SelectState = { at: 'idle', presses: state.presses };
        if (distance_m(state.pressed, event.raw) > state.reach_m * DRAG_SHARE) {
          const inside = view.pickBox(state.pressed, event.raw);
          return { state: idle, select: state.adds ? joined(selection, inside) : inside };
        }
        if (state.hit) return { state: idle, select: state.adds ? toggled(selection, state.hit) : [state.hit] };
        return { state: idle, select: state.adds ? selection : [] };
      }
      case 'dragging': {
        if (event.kind === 'move') return dragTo(state, event.point, view, event.mod === true);
        if (event.kind === 'up' || event.kind === 'enter') return drop(state, event.kind === 'up' ? event.point : state.to, view);
        if (event.kind !== 'typed') return { state };
        const drag = dragNow(view, state);
        const to = drag && typedPlace(drag.grab, event, drag.along_rad ?? null, state.to);
        return to ? drop(state, to, view) : { state, refusal: 'Type how far it moves.' };
      }
    }
  },
};
