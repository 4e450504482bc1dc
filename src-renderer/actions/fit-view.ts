import { type Box, boundsOf } from '#shared/geometry/outline';
import type { PlanPoint } from '#shared/geometry/point';
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
  if (ref.kind === 'network') {
    const network = plan.networks[ref.id];
    return network ? [...Object.values(network.nodes).map((node) => node.at), ...Object.values(network.cylinders).map((cylinder) => cylinder.at)] : [];
  }
  if ('network' in ref) {
    const network = plan.networks[ref.network];
    const nodeIds =
      ref.kind === 'pipe' ? [network?.pipes[ref.id]?.from, network?.pipes[ref.id]?.to] : ref.kind === 'nozzle' ? [network?.nozzles[ref.id]?.node] : ref.kind === 'node' ? [ref.id] : [];
    const places = nodeIds.flatMap((id) => (id && network?.nodes[id] ? [network.nodes[id].at] : []));
    const standing = ref.kind === 'cylinder' ? network?.cylinders[ref.id] : ref.kind === 'support' ? network?.supports[ref.id] : undefined;
    return standing ? [standing.at] : places;
  }
  const level = plan.levels[ref.level];
  if (!level) return [];
  switch (ref.kind) {
    case 'enclosure':
      return level.enclosures[ref.id]?.outline ?? [];
    case 'obstruction':
      return level.obstructions[ref.id]?.footprint ?? [];
    case 'adjoining':
      return level.adjoining[ref.id]?.outline ?? [];
    case 'device': {
      const device = level.devices[ref.id];
      return device ? [device.at] : [];
    }
    case 'note': {
      const note = level.notes[ref.id];
      return note ? [note.at] : [];
    }
    case 'dimension': {
      const dimension = level.dimensions[ref.id];
      return dimension ? [dimension.a, dimension.b] : [];
    }
    case 'ceiling-zone':
      return level.enclosures[ref.enclosure]?.ceilingZones[ref.id]?.outline ?? [];
    case 'corner':
    case 'wall':
    case 'opening': {
      const enclosure = level.enclosures[ref.enclosure];
      const cornerId = ref.kind === 'opening' ? enclosure?.openings[ref.id]?.wall : ref.id;
      for (const ring of enclosure ? [enclosure.outline, ...enclosure.holes] : []) {
        const at = ring.findIndex((corner) => corner.id === cornerId);
        const a = ring[at];
        const b = ring[(at + 1) % ring.length];
        if (a && b) return ref.kind === 'corner' ? [a] : [a, b];
      }
      return [];
    }
    case 'underlay':
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
