import { type Box, boundsOf } from '#shared/geometry/outline';
import type { PlanPoint } from '#shared/geometry/point';
import { findCorner, findThing } from '#shared/model/find-thing';
import type { Plan, Ref, Underlay } from '#shared/model/plan';
import { toPlan } from '#shared/underlay/placement';
import { fittedCamera } from '../canvas/viewport.ts';
import type { Store } from '../store/state.ts';
import type { UnderlayDrawings } from '../store/underlay-drawings.ts';
import { shownPlan } from '../store/selectors.ts';

/** Every place of a level that a view of the whole level must show. */
export function placesOfLevel(plan: Plan, levelId: string): PlanPoint[] {
  const level = plan.levels[levelId];
  if (!level) return [];
  return [
    ...Object.values(level.enclosures).flatMap((enclosure) => enclosure.outline),
    ...Object.values(level.obstructions).flatMap((solid) => solid.footprint),
    ...Object.values(level.devices).map((device) => device.at),
    ...Object.values(level.adjoining).flatMap((space) => space.outline),
    ...Object.values(level.notes).map((note) => note.at),
    ...Object.values(level.dimensions).flatMap(({ a, b }) => [a, b]),
    ...Object.values(plan.networks)
      .filter((network) => network.level === levelId)
      .flatMap((network) => [...Object.values(network.nodes).map((node) => node.at), ...Object.values(network.cylinders).map((cylinder) => cylinder.at)]),
  ];
}

/** Places of one thing, for looking at it. */
export function placesOfThing(plan: Plan, ref: Ref): PlanPoint[] {
  const found = findThing(plan, ref);
  const nodes = (...ids: readonly string[]): PlanPoint[] => (found && 'network' in found ? ids.flatMap((id) => found.network.nodes[id]?.at ?? []) : []);
  switch (found?.kind) {
    case 'network':
      return [...Object.values(found.thing.nodes), ...Object.values(found.thing.cylinders)].map(({ at }) => at);
    case 'pipe':
      return nodes(found.thing.from, found.thing.to);
    case 'nozzle':
      return nodes(found.thing.node);
    case 'node':
    case 'cylinder':
    case 'support':
    case 'device':
    case 'note':
      return [found.thing.at];
    case 'enclosure':
    case 'adjoining':
    case 'ceiling-zone':
      return found.thing.outline;
    case 'obstruction':
      return found.thing.footprint;
    case 'dimension':
      return [found.thing.a, found.thing.b];
    case 'corner':
      return [found.thing];
    case 'wall':
    case 'opening': {
      const wall = findCorner(found.enclosure, found.kind === 'opening' ? found.thing.wall : found.thing.id);
      return wall ? [wall.corner, wall.next] : [];
    }
    default:
      return [];
  }
}

/** Bare edge of the board around a view of everything [px]. */
const FIT_MARGIN_px = 16;
/** What an empty board shows [m]: a room's worth of paper, the origin at its lower left. */
const EMPTY_BOARD: Box = { minX: -1, minY: -1, maxX: 9, maxY: 7 };
/** Room around the finished faces for wall thickness, door leaves and labels [m]. */
const AROUND_m = 1.1;

const joined = (a: Box, b: Box): Box => ({ minX: Math.min(a.minX, b.minX), minY: Math.min(a.minY, b.minY), maxX: Math.max(a.maxX, b.maxX), maxY: Math.max(a.maxY, b.maxY) });

/** Box on the plan around a placed floor plan; undefined while it is not read. */
function placedBoundsOf(drawings: UnderlayDrawings, plan: Plan, underlay: Underlay): Box | undefined {
  const extents = drawings.find(plan, underlay)?.extents;
  if (!extents) return undefined;
  const corners: readonly [number, number][] = [
    [extents.minX, extents.minY],
    [extents.maxX, extents.minY],
    [extents.maxX, extents.maxY],
    [extents.minX, extents.maxY],
  ];
  return boundsOf(corners.map(([x, y]) => toPlan(underlay, x, y)));
}

/** Shows the whole of the present level: what is drawn, or the floor plan while nothing is. */
export function fitLevel({ store, drawings }: { readonly store: Store; readonly drawings: UnderlayDrawings }): void {
  const state = store.get();
  const plan = shownPlan(state);
  const drawn = boundsOf(placesOfLevel(plan, state.session.level));
  const isDrawn = drawn.minX <= drawn.maxX;
  const underlays = Object.values(plan.levels[state.session.level]?.underlays ?? {}).filter((underlay) => underlay.visible);
  const boxes = isDrawn && drawn.maxX - drawn.minX > 0.5 ? [] : underlays.flatMap((underlay) => placedBoundsOf(drawings, plan, underlay) ?? []);
  const found = boxes.reduce(joined, drawn);
  const all = found.minX <= found.maxX ? found : EMPTY_BOARD;
  const around_m = isDrawn ? AROUND_m : 0;
  const grown = { minX: all.minX - around_m, minY: all.minY - around_m, maxX: all.maxX + around_m, maxY: all.maxY + around_m };
  store.session({ camera: fittedCamera(grown, state.session.board, FIT_MARGIN_px) });
}

/** Shows some places with room around them: at least `span_m` across. */
export function fitPlaces(store: Store, places: readonly PlanPoint[], span_m = 4): void {
  if (places.length === 0) return;
  const box = boundsOf(places);
  const growX = Math.max(0, span_m - (box.maxX - box.minX)) / 2;
  const growY = Math.max(0, span_m - (box.maxY - box.minY)) / 2;
  const grown = { minX: box.minX - growX, minY: box.minY - growY, maxX: box.maxX + growX, maxY: box.maxY + growY };
  store.session((session) => ({ camera: fittedCamera(grown, session.board) }));
}
