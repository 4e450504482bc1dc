import { addOpening } from '#shared/commands/add-opening';
import { type PlanPoint, bearing_rad, distance_m, midpoint } from '#shared/geometry/point';
import { distanceToSegment_m } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import type { Opening } from '#shared/model/plan';
import { inches_m } from '#shared/units/convert';
import type { ToolOptions } from '../store/state.ts';
import { commitOr } from './attempt.ts';
import { type PlacedWall, wallsOn } from './level-things.ts';
import type { Tool, ToolStep, ToolView } from './tool.ts';
import { lengthText, placeToward } from './typed-place.ts';

/** Widths that openings start from [m]. Source: common practice; a door of 36 in. */
export const USUAL_WIDTHS_m: Readonly<Record<Opening['kind'], number>> = {
  door: inches_m(36),
  'relief-vent': inches_m(12),
  damper: inches_m(12),
  grille: inches_m(12),
  penetration: inches_m(4),
  window: inches_m(36),
};

/** Width of the next opening [m]. */
export const openingWidth_m = ({ openingWidth_m: chosen, openingKind }: ToolOptions): number => chosen ?? USUAL_WIDTHS_m[openingKind];

/** Where the next opening would go. */
export interface OpeningState {
  readonly spot: { readonly wall: PlacedWall; readonly along_m: number } | null;
}

const start: OpeningState = { spot: null };

/** Distance along a wall of the place on it nearest to another [m], not limited to the wall. */
export function alongWall_m({ segment: { a, b } }: PlacedWall, at: PlanPoint): number {
  const length_m = distance_m(a, b);
  return length_m === 0 ? 0 : ((at.x - a.x) * (b.x - a.x) + (at.y - a.y) * (b.y - a.y)) / length_m;
}

/** Keeps the middle of an opening so that both jambs are in the wall. */
export const withinWall_m = ({ segment: { a, b } }: PlacedWall, along_m: number, width_m: number): number =>
  Math.max(width_m / 2, Math.min(distance_m(a, b) - width_m / 2, along_m));

/** The wall nearest to a place, within reach, with the place along it. */
function wallNear(view: ToolView, at: PlanPoint, reach_m: number): { wall: PlacedWall; along_m: number } | null {
  const level = view.plan.levels[view.session.level];
  let nearest: PlacedWall | null = null;
  let least = reach_m;
  for (const wall of level ? wallsOn(level) : []) {
    const away = distanceToSegment_m(at, wall.segment);
    if (away > least) continue;
    least = away;
    nearest = wall;
  }
  return nearest && { wall: nearest, along_m: alongWall_m(nearest, at) };
}

function place(state: OpeningState, view: ToolView, along_m: number): ToolStep<OpeningState> {
  const { openingKind } = view.session.toolOptions;
  const width_m = openingWidth_m(view.session.toolOptions);
  if (!state.spot) return { state, refusal: 'Point at the wall that the opening is in.' };
  const { wall } = state.spot;
  if (distance_m(wall.segment.a, wall.segment.b) < width_m) return { state, refusal: `This wall is shorter than the opening (${lengthText(view, width_m)}). Make the opening narrower first.` };
  return commitOr(view, addOpening(wall.ref, openingKind, withinWall_m(wall, along_m, width_m), width_m), { state }, state);
}

/** Sets doors, vents and other openings into walls. */
export const openingTool: Tool<OpeningState> = {
  id: 'opening',
  start,
  hint: ({ spot }) =>
    spot ? 'Click to set the opening, or type the distance from the start of the wall to its nearer side.' : 'Point at the wall that the opening is in.',
  sketch({ spot }, view) {
    if (!spot) return {};
    const { a, b } = spot.wall.segment;
    const width_m = openingWidth_m(view.session.toolOptions);
    const direction_rad = bearing_rad(a, b);
    const along_m = withinWall_m(spot.wall, spot.along_m, width_m);
    const near = placeToward(a, direction_rad, along_m - width_m / 2);
    const far = placeToward(a, direction_rad, along_m + width_m / 2);
    return {
      lines: [{ places: [near, far] }, { places: [a, near], dashed: true }, { places: [far, b], dashed: true }],
      labels: [
        { at: midpoint(a, near), text: `${lengthText(view, distance_m(a, near))} from start` },
        { at: midpoint(near, far), text: lengthText(view, width_m) },
        { at: midpoint(far, b), text: lengthText(view, distance_m(far, b)) },
      ],
      asks: ['length'],
    };
  },
  step(state, event, view) {
    switch (event.kind) {
      case 'cancel':
        return { state: start, finished: true };
      case 'move':
        return { state: { spot: wallNear(view, event.point, event.reach_m) ?? wallNear(view, event.raw, 3 * event.reach_m) } };
      case 'down': {
        const spot = wallNear(view, event.point, event.reach_m) ?? wallNear(view, event.raw, 3 * event.reach_m);
        return place({ spot }, view, spot?.along_m ?? 0);
      }
      case 'typed': {
        if (event.length_m === null) return { state, refusal: 'Type the distance from the start of the wall.' };
        const along_m = event.length_m + openingWidth_m(view.session.toolOptions) / 2;
        if (state.spot && Math.abs(withinWall_m(state.spot.wall, along_m, openingWidth_m(view.session.toolOptions)) - along_m) > SAME_PLACE_m) {
          const { a, b } = state.spot.wall.segment;
          return { state, refusal: `The opening would reach beyond the end of this wall, which is ${lengthText(view, distance_m(a, b))} long.` };
        }
        return place(state, view, along_m);
      }
      case 'enter':
        return state.spot ? place(state, view, state.spot.along_m) : { state };
      default:
        return { state };
    }
  },
};
