import { addKnownLength } from '#shared/commands/add-known-length';
import { calibrateUnderlay } from '#shared/commands/calibrate-underlay';
import { type PlanPoint, distance_m, midpoint } from '#shared/geometry/point';
import type { RefOf, Underlay } from '#shared/model/plan';
import { toFile } from '#shared/underlay/placement';
import { commitOr } from './attempt.ts';
import type { Camera } from '../store/state.ts';
import type { Tool, ToolStep, ToolView } from './tool.ts';
import { NO_PLACES, type TwoPlaces, stepTwoPlaces, twoPlacesAnchors } from './two-places.ts';
import { lengthText } from './typed-place.ts';

/** Two places of the floor plan, then their true distance. */
export type CalibrateState = { readonly at: 'places'; readonly places: TwoPlaces } | { readonly at: 'distance'; readonly a: PlanPoint; readonly b: PlanPoint };

const start: CalibrateState = { at: 'places', places: NO_PLACES };
const NO_UNDERLAY = 'There is no floor plan on this level. Import one first.';
const WHICH_UNDERLAY = 'There are several floor plans on this level. Select the one to scale first.';

/** The floor plan to scale: the selected one, else the only visible one. A sentence when there is none. */
function underlayOf(view: ToolView): { underlay: Underlay; ref: RefOf<'underlay'> } | string {
  const { level, selection } = view.session;
  const underlays = Object.values(view.plan.levels[level]?.underlays ?? {});
  const chosen = underlays.find(({ id }) => selection.some((ref) => ref.kind === 'underlay' && ref.id === id));
  const visible = underlays.filter((underlay) => underlay.visible);
  const underlay = chosen ?? (visible.length === 1 ? visible[0] : undefined);
  if (underlay) return { underlay, ref: { kind: 'underlay', level, id: underlay.id } };
  return visible.length === 0 ? NO_UNDERLAY : WHICH_UNDERLAY;
}

/** Whether the next known length sets the scale; otherwise it checks the scale that the plan has. */
const setsScale = ({ calibration }: Underlay): boolean => calibration === 'none';

/** Camera that shows a floor plan as large as before when it has grown by a factor about a place of the plan. */
const cameraAfter = ({ session: { camera } }: ToolView, fixed: PlanPoint, factor: number): Camera => ({
  scale_px_m: camera.scale_px_m / factor,
  at: { x: fixed.x + (camera.at.x - fixed.x) * factor, y: fixed.y + (camera.at.y - fixed.y) * factor },
});

/**
 * Scales a floor plan by two places and their true distance. The first such length sets the scale; where the
 * plan has a scale already, further ones check it.
 */
export const calibrateTool: Tool<CalibrateState> = {
  id: 'calibrate',
  start,
  anchors: (state) => (state.at === 'places' ? { ...twoPlacesAnchors(state.places), isFree: true } : {}),
  hint(state, view) {
    const found = underlayOf(view);
    if (typeof found === 'string') return found;
    if (state.at === 'distance') return 'Type the true distance between the two places, as it was measured on site.';
    if (state.places.a) return 'Click the second place.';
    return setsScale(found.underlay)
      ? `Click the first of two places of the floor plan “${found.underlay.name}” whose true distance you know.`
      : `The floor plan “${found.underlay.name}” has a scale. Click two places whose true distance you know to check it.`;
  },
  sketch(state, view, pointer) {
    const a = state.at === 'distance' ? state.a : state.places.a;
    const b = state.at === 'distance' ? state.b : pointer;
    if (!a || !b) return {};
    const text = state.at === 'distance' ? 'True distance?' : `${lengthText(view, distance_m(a, b))} as drawn`;
    return { lines: [{ places: [a, b] }], labels: [{ at: midpoint(a, b), text }], asks: state.at === 'distance' ? ['length'] : [] };
  },
  step(state, event, view) {
    const found = underlayOf(view);
    if (state.at === 'distance') {
      if (event.kind === 'cancel' || event.kind === 'back') return { state: { at: 'places', places: { ...NO_PLACES, a: state.a } } };
      if (event.kind === 'typed') {
        if (typeof found === 'string') return { state, refusal: found };
        if (event.length_m === null || event.length_m <= 0) return { state, refusal: 'Type the true distance between the two places.' };
        const a = toFile(found.underlay, state.a);
        const b = toFile(found.underlay, state.b);
        const known = { a: { x: a.x, y: a.y }, b: { x: b.x, y: b.y }, distance_m: event.length_m };
        const done: ToolStep<CalibrateState> = { state: start, finished: true };
        if (!setsScale(found.underlay)) return commitOr(view, addKnownLength(found.ref, known), done, state);
        const camera = cameraAfter(view, state.a, event.length_m / distance_m(state.a, state.b));
        return commitOr(view, calibrateUnderlay(found.ref, known), { ...done, session: { camera } }, state);
      }
      return event.kind === 'enter' ? { state, refusal: 'Type the true distance between the two places.' } : { state };
    }
    if (event.kind === 'down' && typeof found === 'string') return { state, refusal: found };
    if (event.kind === 'typed') return { state, refusal: 'Click both places first, then type their true distance.' };
    const next = stepTwoPlaces(state.places, event);
    if (next.both) return { state: { at: 'distance', ...next.both } };
    return { state: { at: 'places', places: next.state }, refusal: next.refusal, finished: next.isLeft };
  },
};
