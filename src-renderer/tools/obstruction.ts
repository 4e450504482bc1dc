import { addObstruction } from '#shared/commands/add-obstruction';
import { type PlanPoint, distance_m, midpoint } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { commitOr } from './attempt.ts';
import { leftOf_m } from './level-things.ts';
import type { Tool, ToolStep, ToolView } from './tool.ts';
import { lengthText, placeToward } from './typed-place.ts';

/**
 * One corner, then the opposite one. A typed length fixes the width, in a typed direction if it is turned;
 * a second typed length is the depth.
 */
export type ObstructionState =
  | { readonly at: 'corner' }
  | { readonly at: 'opposite'; readonly a: PlanPoint; readonly axis_rad: number | null; readonly pointer: PlanPoint | null }
  | { readonly at: 'depth'; readonly a: PlanPoint; readonly b: PlanPoint; readonly pointer: PlanPoint | null };

const start: ObstructionState = { at: 'corner' };

/** Rectangle from corner `a` to the opposite corner, its width along a direction. */
function byDiagonal(a: PlanPoint, opposite: PlanPoint, axis_rad: number): PlanPoint[] {
  const width_m = (opposite.x - a.x) * Math.cos(axis_rad) + (opposite.y - a.y) * Math.sin(axis_rad);
  const depth_m = (opposite.y - a.y) * Math.cos(axis_rad) - (opposite.x - a.x) * Math.sin(axis_rad);
  return bySides(a, placeToward(a, axis_rad, width_m), depth_m, axis_rad);
}

const bySides = (a: PlanPoint, b: PlanPoint, depth_m: number, axis_rad: number): PlanPoint[] => {
  const up_rad = axis_rad + Math.PI / 2;
  return [a, b, placeToward(b, up_rad, depth_m), placeToward(a, up_rad, depth_m)];
};
const axisOf = (a: PlanPoint, b: PlanPoint): number => Math.atan2(b.y - a.y, b.x - a.x);

function footprintOf(state: ObstructionState, pointer: PlanPoint | null): PlanPoint[] | null {
  if (state.at === 'corner' || !pointer) return null;
  if (state.at === 'opposite') return byDiagonal(state.a, pointer, state.axis_rad ?? 0);
  return bySides(state.a, state.b, leftOf_m(pointer, state), axisOf(state.a, state.b));
}

function place(state: ObstructionState, footprint: readonly PlanPoint[], view: ToolView): ToolStep<ObstructionState> {
  const [a, b, c] = footprint;
  if (!a || !b || !c || distance_m(a, b) <= SAME_PLACE_m || distance_m(b, c) <= SAME_PLACE_m) {
    return { state, refusal: 'This would have no width or no depth. Point farther away, or type the width and then the depth.' };
  }
  const { obstructionKind, obstructionBottom_m, obstructionTop_m } = view.session.toolOptions;
  return commitOr(view, addObstruction(view.session.level, obstructionKind, [...footprint], obstructionBottom_m, obstructionTop_m), { state: start }, state);
}

/** Draws a beam, rack, duct or other thing as a rectangle seen from above. */
export const obstructionTool: Tool<ObstructionState> = {
  id: 'obstruction',
  start,
  hint(state, view) {
    if (state.at === 'depth') return 'Click on the side it extends to, or type its depth.';
    if (state.at === 'opposite') return 'Click the opposite corner, or type the width and then the depth; a direction turns it.';
    const { obstructionBottom_m, obstructionTop_m } = view.session.toolOptions;
    return `Click one corner. It will reach from ${lengthText(view, obstructionBottom_m)} to ${lengthText(view, obstructionTop_m)} above the floor; a typed height changes its top.`;
  },
  sketch(state, view, pointer) {
    if (state.at === 'corner') return { asks: ['height'] };
    const footprint = footprintOf(state, pointer);
    const [a, b, c] = footprint ?? [];
    if (!footprint || !a || !b || !c) return { asks: ['length', 'angle'] };
    return {
      lines: [{ places: footprint, closed: true }],
      labels: [
        { at: midpoint(a, b), text: lengthText(view, distance_m(a, b)) },
        { at: midpoint(b, c), text: lengthText(view, distance_m(b, c)) },
      ],
      asks: state.at === 'opposite' ? ['length', 'angle'] : ['length'],
    };
  },
  step(state, event, view) {
    switch (event.kind) {
      case 'cancel':
      case 'back':
        if (state.at === 'depth') return { state: { at: 'opposite', a: state.a, axis_rad: null, pointer: state.pointer } };
        if (state.at === 'opposite' && state.axis_rad !== null) return { state: { ...state, axis_rad: null } };
        return { state: start, finished: event.kind === 'cancel' && state.at === 'corner' };
      case 'move':
        return { state: state.at === 'corner' ? state : { ...state, pointer: event.point } };
      case 'down': {
        if (state.at === 'corner') return { state: { at: 'opposite', a: event.point, axis_rad: null, pointer: event.point } };
        return place(state, footprintOf(state, event.point) ?? [], view);
      }
      case 'enter': {
        const footprint = state.at === 'corner' ? null : footprintOf(state, state.pointer);
        return footprint ? place(state, footprint, view) : { state };
      }
      case 'typed': {
        if (state.at === 'corner') {
          const { toolOptions } = view.session;
          if (event.height_m === null) return { state, refusal: 'Click one corner first; then the width and depth can be typed.' };
          if (event.height_m <= toolOptions.obstructionBottom_m) return { state, refusal: `The top must lie above the bottom (${lengthText(view, toolOptions.obstructionBottom_m)}).` };
          return { state, session: { toolOptions: { ...toolOptions, obstructionTop_m: event.height_m } } };
        }
        if (state.at === 'opposite') {
          const axis_rad = event.angle_rad ?? state.axis_rad ?? 0;
          if (event.length_m === null) return event.angle_rad === null ? { state, refusal: 'Type the width.' } : { state: { ...state, axis_rad } };
          // Without a typed direction a plain width goes to the side where the pointer is.
          const west = event.angle_rad === null && state.axis_rad === null && state.pointer !== null && state.pointer.x < state.a.x;
          return { state: { at: 'depth', a: state.a, b: placeToward(state.a, axis_rad, west ? -event.length_m : event.length_m), pointer: state.pointer } };
        }
        if (event.length_m === null) return { state, refusal: 'Type the depth.' };
        const side = state.pointer ? leftOf_m(state.pointer, state) : 1;
        return place(state, bySides(state.a, state.b, side < 0 ? -event.length_m : event.length_m, axisOf(state.a, state.b)), view);
      }
      default:
        return { state };
    }
  },
};
