import { addCylinder } from '#shared/commands/add-cylinder';
import { type PlanPoint, distance_m, midpoint, polar } from '#shared/geometry/point';
import { commitOr } from './attempt.ts';
import { type CylinderPlace, againstWall, bankOf, cylinderPlace, cylinderRadius_m } from './cylinder-place.ts';
import { alongWall_m } from './opening.ts';
import type { Tool, ToolStep, ToolView } from './tool.ts';
import { lengthText, placeToward } from './typed-place.ts';

/** Where the next cylinder would stand. */
export interface CylinderState {
  readonly place: CylinderPlace | null;
  readonly pointer: PlanPoint | null;
}

const start: CylinderState = { place: null, pointer: null };

const chosenNetwork = (view: ToolView): string | undefined =>
  view.session.selection.flatMap((ref) => (ref.kind === 'network' ? [ref.id] : 'network' in ref ? [ref.network] : []))[0];

const bankAt = (view: ToolView, at: PlanPoint) => bankOf(view.plan, view.session.level, at, chosenNetwork(view));

function placeAt(view: ToolView, raw: PlanPoint, point: PlanPoint): CylinderPlace {
  const level = view.plan.levels[view.session.level];
  const profileAt = bankAt(view, raw)?.profile ?? Object.keys(view.plan.profiles)[0] ?? '';
  const radius_m = cylinderRadius_m(view.plan.profiles[profileAt]);
  const leaning = cylinderPlace(level, raw, radius_m);
  // The wall is the one pointed at; along it the cylinder stands level with the caught place.
  return leaning.wall ? againstWall(leaning.wall, alongWall_m(leaning.wall, point), raw, radius_m) : { ...leaning, at: { x: point.x, y: point.y } };
}

function stand(state: CylinderState, view: ToolView, place: CylinderPlace): ToolStep<CylinderState> {
  const bank = bankAt(view, place.at);
  return commitOr(view, addCylinder(view.session.level, bank?.id ?? null, place.at, place.back_rad), { state }, state);
}

/** Stands cylinders with their backs against walls; beside another one they join its network. */
export const cylinderTool: Tool<CylinderState> = {
  id: 'cylinder',
  start,
  hint({ place }, view) {
    if (!place) return 'Point at the wall that the cylinder stands against.';
    const bank = bankAt(view, place.at);
    const joins = bank ? `It joins ${bank.name || 'the cylinders beside it'}.` : 'It begins a new pipe network.';
    return place.wall ? `Click to stand the cylinder here, or type its distance from the start of the wall. ${joins}` : `Click to stand the cylinder here, away from walls. ${joins}`;
  },
  sketch({ place }, view) {
    if (!place) return {};
    const ring = Array.from({ length: 24 }, (_, i) => polar(place.at, (i * Math.PI) / 12, place.radius_m));
    if (!place.wall) return { lines: [{ places: ring, closed: true }] };
    const { a } = place.wall.segment;
    const foot = placeToward(place.at, place.back_rad, place.radius_m);
    return {
      lines: [
        { places: ring, closed: true },
        { places: [a, foot], dashed: true },
      ],
      labels: [{ at: midpoint(a, foot), text: `${lengthText(view, place.along_m)} from start` }],
      asks: ['length'],
    };
  },
  step(state, event, view) {
    switch (event.kind) {
      case 'cancel':
        return { state: start, finished: true };
      case 'move':
        return { state: { place: placeAt(view, event.raw, event.point), pointer: event.raw } };
      case 'down':
        return stand({ ...state, pointer: event.raw }, view, placeAt(view, event.raw, event.point));
      case 'enter':
        return state.place ? stand(state, view, state.place) : { state };
      case 'typed': {
        const { place, pointer } = state;
        if (event.length_m === null || !place?.wall || !pointer) return { state, refusal: 'Point at a wall, then type the distance from its start.' };
        const { a, b } = place.wall.segment;
        if (event.length_m < place.radius_m || event.length_m > distance_m(a, b) - place.radius_m) {
          return { state, refusal: `The cylinder would stand beyond the end of this wall, which is ${lengthText(view, distance_m(a, b))} long.` };
        }
        return stand(state, view, againstWall(place.wall, event.length_m, pointer, place.radius_m));
      }
      default:
        return { state };
    }
  },
};
