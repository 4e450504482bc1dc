import RBush from 'rbush';
import { type Box, boundsOf, sidesOf } from '#shared/geometry/outline';
import type { PlanPoint } from '#shared/geometry/point';
import type { Segment } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { type Plan, type Ref, refKey } from '#shared/model/plan';
import type { LayerName, Session } from '../store/state.ts';
import { networksOn, openingSegment, wallsOf } from './level-things.ts';
import type { UnderlayIndex } from './underlay-index.ts';

/** A place that can be caught. */
export interface SnapPlace {
  readonly at: PlanPoint;
  readonly kind: 'end' | 'node' | 'midpoint';
}
/** A line that can be caught. */
export interface SnapLine {
  readonly segment: Segment;
  readonly isUnderlay: boolean;
}

/** What can be caught around a place. */
export interface SnapSources {
  placesNear(at: PlanPoint, reach_m: number): SnapPlace[];
  linesNear(at: PlanPoint, reach_m: number): SnapLine[];
  underlayEndNear(at: PlanPoint, reach_m: number): PlanPoint | undefined;
}

interface Entry extends Box {
  readonly layer: LayerName;
  /** Things that own it: it is left out while one of them is moved. */
  readonly owners: readonly string[];
  readonly shape: { readonly place: SnapPlace } | { readonly segment: Segment };
}

const placeEntry = (layer: LayerName, at: PlanPoint, kind: SnapPlace['kind'], ...owners: Ref[]): Entry => ({
  ...boundsOf([at]),
  layer,
  owners: owners.map(refKey),
  shape: { place: { at: { x: at.x, y: at.y }, kind } },
});
const lineEntry = (layer: LayerName, segment: Segment, ...owners: Ref[]): Entry => ({
  ...boundsOf([segment.a, segment.b]),
  layer,
  owners: owners.map(refKey),
  shape: { segment },
});

function* entriesOf(plan: Plan, levelId: string): Generator<Entry> {
  const level = plan.levels[levelId];
  if (!level) return;
  for (const enclosure of Object.values(level.enclosures)) {
    const whole: Ref = { kind: 'enclosure', level: levelId, id: enclosure.id };
    for (const { ref, segment, before, after } of wallsOf(levelId, enclosure)) {
      const corner: Ref = { ...ref, kind: 'corner' };
      yield placeEntry('enclosures', segment.a, 'end', corner, ref, { ...ref, id: before }, whole);
      yield lineEntry('enclosures', segment, ref, corner, { ...corner, id: after }, whole);
    }
    for (const zone of Object.values(enclosure.ceilingZones)) {
      const ref: Ref = { kind: 'ceiling-zone', level: levelId, enclosure: enclosure.id, id: zone.id };
      for (const side of sidesOf(zone.outline)) {
        yield placeEntry('enclosures', side.a, 'end', ref, whole);
        yield lineEntry('enclosures', side, ref, whole);
      }
    }
    for (const opening of Object.values(enclosure.openings)) {
      const ref: Ref = { kind: 'opening', level: levelId, enclosure: enclosure.id, id: opening.id };
      const jambs = openingSegment(levelId, enclosure, opening);
      if (!jambs) continue;
      yield placeEntry('enclosures', jambs.a, 'end', ref, whole);
      yield placeEntry('enclosures', jambs.b, 'end', ref, whole);
      yield placeEntry('enclosures', { x: (jambs.a.x + jambs.b.x) / 2, y: (jambs.a.y + jambs.b.y) / 2 }, 'midpoint', ref, whole);
    }
  }
  for (const { id, footprint } of Object.values(level.obstructions)) {
    const ref: Ref = { kind: 'obstruction', level: levelId, id };
    for (const side of sidesOf(footprint)) {
      yield placeEntry('obstructions', side.a, 'end', ref);
      yield lineEntry('obstructions', side, ref);
    }
  }
  for (const { id, at } of Object.values(level.devices)) yield placeEntry('devices', at, 'node', { kind: 'device', level: levelId, id });
  for (const { id, outline } of Object.values(level.adjoining)) {
    const ref: Ref = { kind: 'adjoining', level: levelId, id };
    for (const side of sidesOf(outline)) {
      yield placeEntry('adjoining', side.a, 'end', ref);
      yield lineEntry('adjoining', side, ref);
    }
  }
  for (const { id, a, b } of Object.values(level.dimensions)) {
    const ref: Ref = { kind: 'dimension', level: levelId, id };
    yield placeEntry('dimensions', a, 'end', ref);
    yield placeEntry('dimensions', b, 'end', ref);
  }
  for (const network of networksOn(plan, levelId)) {
    const nodeRef = (id: string): Ref => ({ kind: 'node', network: network.id, id });
    const nozzleAt = new Map(Object.values(network.nozzles).map(({ id, node }) => [node, id]));
    for (const { id, at } of Object.values(network.nodes)) {
      const nozzle = nozzleAt.get(id);
      if (nozzle === undefined) yield placeEntry('pipes', at, 'node', nodeRef(id));
      else yield placeEntry('nozzles', at, 'node', nodeRef(id), { kind: 'nozzle', network: network.id, id: nozzle });
    }
    for (const { id, from, to } of Object.values(network.pipes)) {
      const a = network.nodes[from]?.at;
      const b = network.nodes[to]?.at;
      if (!a || !b || Math.hypot(b.x - a.x, b.y - a.y) < SAME_PLACE_m) continue;
      const segment = { a: { x: a.x, y: a.y }, b: { x: b.x, y: b.y } };
      yield lineEntry('pipes', segment, { kind: 'pipe', network: network.id, id }, nodeRef(from), nodeRef(to));
    }
    for (const { id, at } of Object.values(network.cylinders)) {
      yield placeEntry('pipes', at, 'node', { kind: 'cylinder', network: network.id, id });
    }
  }
}

const treesByPlan = new WeakMap<Plan, Map<string, RBush<Entry>>>();

/** Search tree over what a level offers; made once for a plan as it stands. */
function treeOf(plan: Plan, level: string): RBush<Entry> {
  const trees = treesByPlan.get(plan) ?? new Map<string, RBush<Entry>>();
  treesByPlan.set(plan, trees);
  const known = trees.get(level);
  if (known) return known;
  const made = new RBush<Entry>().load([...entriesOf(plan, level)]);
  trees.set(level, made);
  return made;
}

/**
 * Gathers what the visible layers of the session's level offer. A locked layer cannot be changed but is
 * still good to measure and draw against, so it catches.
 * @param without  things that are being moved, with all that hangs on them
 */
export function snapSources(plan: Plan, session: Session, underlays: readonly UnderlayIndex[], without: readonly Ref[] = []): SnapSources {
  const { level, layers, toolOptions } = session;
  const left = new Set(without.map(refKey));
  const near = ({ x, y }: PlanPoint, reach_m: number): Entry[] =>
    toolOptions.snapPlan
      ? treeOf(plan, level)
          .search({ minX: x - reach_m, minY: y - reach_m, maxX: x + reach_m, maxY: y + reach_m })
          .filter((entry) => layers[entry.layer].visible && !entry.owners.some((owner) => left.has(owner)))
      : [];
  const shown =
    toolOptions.snapUnderlay && layers.underlays.visible
      ? underlays.filter(({ underlay }) => underlay.visible && !left.has(refKey({ kind: 'underlay', level, id: underlay.id })))
      : [];
  return {
    placesNear: (at, reach_m) => near(at, reach_m).flatMap(({ shape }) => ('place' in shape ? [shape.place] : [])),
    linesNear: (at, reach_m) => [
      ...near(at, reach_m).flatMap(({ shape }) => ('segment' in shape ? [{ segment: shape.segment, isUnderlay: false }] : [])),
      ...shown.flatMap((index) => index.nearestSegments(at, reach_m).map((segment) => ({ segment, isUnderlay: true }))),
    ],
    underlayEndNear(at, reach_m) {
      const ends = shown.flatMap((index) => index.endpointNear(at, reach_m) ?? []);
      return ends.sort((a, b) => Math.hypot(a.x - at.x, a.y - at.y) - Math.hypot(b.x - at.x, b.y - at.y))[0];
    },
  };
}
