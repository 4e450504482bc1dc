import RBush from 'rbush';
import { type Box, type Outline, area_m2, boundsOf, distanceToOutline_m, isInside } from '#shared/geometry/outline';
import { type PlanPoint, distance_m } from '#shared/geometry/point';
import { type Segment, distanceToSegment_m } from '#shared/geometry/segment';
import { type Plan, type Ref, type RefKind, isSameRef, refKey, ringOf } from '#shared/model/plan';
import type { LayerName, Session } from '../store/state.ts';
import { cylinderRadius_m } from './cylinder-place.ts';
import { dimensionLine, layerOf, networksOn, openingSegment, wallsOf } from './level-things.ts';
import type { UnderlayIndex } from './underlay-index.ts';

/** Where a thing lies on the plan. */
type Shape = { readonly at: PlanPoint; readonly radius_m: number } | { readonly segment: Segment } | { readonly ring: Outline; readonly holes: readonly Outline[] };

interface Pickable extends Box {
  readonly ref: Ref;
  /** What it is locked and hidden with. */
  readonly layer: LayerName;
  readonly shape: Shape;
}

/** What is picked first where things lie on each other. */
const ORDER: readonly RefKind[] = ['nozzle', 'cylinder', 'node', 'pipe', 'opening', 'corner', 'wall', 'obstruction', 'dimension', 'note', 'ceiling-zone', 'enclosure', 'underlay'];

const disc = (ref: Ref, { x, y }: PlanPoint, radius_m: number, layer = layerOf(ref)): Pickable => ({
  minX: x - radius_m,
  minY: y - radius_m,
  maxX: x + radius_m,
  maxY: y + radius_m,
  ref,
  layer,
  shape: { at: { x, y }, radius_m },
});
const piece = (ref: Ref, segment: Segment): Pickable => ({ ...boundsOf([segment.a, segment.b]), ref, layer: layerOf(ref), shape: { segment } });
const area = (ref: Ref, ring: Outline, holes: readonly Outline[] = []): Pickable => ({ ...boundsOf(ring), ref, layer: layerOf(ref), shape: { ring, holes } });

function* pickablesOf(plan: Plan, levelId: string): Generator<Pickable> {
  const level = plan.levels[levelId];
  if (!level) return;
  for (const enclosure of Object.values(level.enclosures)) {
    yield area({ kind: 'enclosure', level: levelId, id: enclosure.id }, ringOf(enclosure.outline), enclosure.holes.map(ringOf));
    for (const { ref, segment } of wallsOf(levelId, enclosure)) {
      yield disc({ ...ref, kind: 'corner' }, segment.a, 0);
      yield piece(ref, segment);
    }
    for (const { id, outline } of Object.values(enclosure.ceilingZones)) {
      yield area({ kind: 'ceiling-zone', level: levelId, enclosure: enclosure.id, id }, outline);
    }
    for (const opening of Object.values(enclosure.openings)) {
      const segment = openingSegment(levelId, enclosure, opening);
      if (segment) yield piece({ kind: 'opening', level: levelId, enclosure: enclosure.id, id: opening.id }, segment);
    }
  }
  for (const { id, footprint } of Object.values(level.obstructions)) yield area({ kind: 'obstruction', level: levelId, id }, footprint);
  for (const dimension of Object.values(level.dimensions)) yield piece({ kind: 'dimension', level: levelId, id: dimension.id }, dimensionLine(dimension));
  for (const { id, at } of Object.values(level.notes)) yield disc({ kind: 'note', level: levelId, id }, at, 0);
  for (const network of networksOn(plan, levelId)) {
    const radius_m = cylinderRadius_m(plan.profiles[network.profile]);
    for (const { id, at } of Object.values(network.cylinders)) yield disc({ kind: 'cylinder', network: network.id, id }, at, radius_m);
    // The node at an orifice is moved with its nozzle, so it is locked with it.
    const orifices = new Set(Object.values(network.nozzles).map(({ node }) => node));
    for (const { id, at } of Object.values(network.nodes)) yield disc({ kind: 'node', network: network.id, id }, at, 0, orifices.has(id) ? 'nozzles' : 'pipes');
    for (const { id, from, to } of Object.values(network.pipes)) {
      const a = network.nodes[from]?.at;
      const b = network.nodes[to]?.at;
      if (a && b) yield piece({ kind: 'pipe', network: network.id, id }, { a: { x: a.x, y: a.y }, b: { x: b.x, y: b.y } });
    }
    for (const { id, node } of Object.values(network.nozzles)) {
      const at = network.nodes[node]?.at;
      if (at) yield disc({ kind: 'nozzle', network: network.id, id }, at, 0);
    }
  }
}

const treesByPlan = new WeakMap<Plan, Map<string, RBush<Pickable>>>();

function treeOf(plan: Plan, level: string): RBush<Pickable> {
  const trees = treesByPlan.get(plan) ?? new Map<string, RBush<Pickable>>();
  treesByPlan.set(plan, trees);
  const known = trees.get(level);
  if (known) return known;
  const made = new RBush<Pickable>().load([...pickablesOf(plan, level)]);
  trees.set(level, made);
  return made;
}

/** Distance from a place to what is drawn of a thing [m]; 0 on or in it. */
function distanceTo_m(at: PlanPoint, shape: Shape, countsInside: boolean): number {
  if ('radius_m' in shape) return Math.max(0, distance_m(at, shape.at) - shape.radius_m);
  if ('segment' in shape) return distanceToSegment_m(at, shape.segment);
  if (countsInside && isInside(at, shape.ring) && !shape.holes.some((hole) => isInside(at, hole))) return 0;
  return Math.min(distanceToOutline_m(at, shape.ring), ...shape.holes.map((hole) => distanceToOutline_m(at, hole)));
}

/** Enclosures that are worked on: selected as a whole, or by a corner, wall, opening or ceiling zone. */
const openEnclosures = (selection: readonly Ref[]): Set<string> =>
  new Set(selection.flatMap((ref) => (ref.kind === 'enclosure' ? [ref.id] : 'enclosure' in ref ? [ref.enclosure] : [])));

const canPick = ({ layers }: Session, layer: LayerName): boolean => layers[layer].visible && !layers[layer].locked;

/**
 * Finds the thing that a click means, on the session's level and on visible, unlocked layers.
 * Small things go before large ones (see `ORDER`); of one kind the nearest, then the smallest, wins.
 * Corners and walls can be picked once their enclosure, or a part of it, is selected.
 */
export function pickAt(plan: Plan, session: Session, underlays: readonly UnderlayIndex[], at: PlanPoint, reach_m: number): Ref | undefined {
  const open = openEnclosures(session.selection);
  let best: { ref: Ref; rank: number; distance: number; size: number } | undefined;
  const box = { minX: at.x - reach_m, minY: at.y - reach_m, maxX: at.x + reach_m, maxY: at.y + reach_m };
  for (const { ref, layer, shape } of treeOf(plan, session.level).search(box)) {
    if (!canPick(session, layer)) continue;
    if ((ref.kind === 'corner' || ref.kind === 'wall') && !open.has(ref.enclosure)) continue;
    const isZone = ref.kind === 'ceiling-zone';
    const distance = distanceTo_m(at, shape, !isZone || open.has(ref.enclosure));
    if (distance > reach_m) continue;
    const rank = ORDER.indexOf(ref.kind);
    const size = 'ring' in shape ? area_m2(shape.ring) : 0;
    const isBetter = !best || rank < best.rank || (rank === best.rank && (distance < best.distance || (distance === best.distance && size < best.size)));
    if (isBetter) best = { ref, rank, distance, size };
  }
  return best?.ref ?? pickUnderlay(session, underlays, at, reach_m);
}

function pickUnderlay(session: Session, underlays: readonly UnderlayIndex[], at: PlanPoint, reach_m: number): Ref | undefined {
  if (!canPick(session, 'underlays')) return undefined;
  const hit = underlays
    .filter(({ underlay }) => underlay.visible && !underlay.locked)
    .find((index) => index.nearestSegments(at, reach_m, 1).length > 0 || index.isOnPicture(at));
  return hit && { kind: 'underlay', level: session.level, id: hit.underlay.id };
}

/**
 * Finds everything that lies wholly inside a box. Pipe nodes are named only where no pipe or nozzle of theirs
 * is inside as well, corners and walls never, openings only without their enclosure: what is named moves once.
 */
export function pickInBox(plan: Plan, session: Session, a: PlanPoint, b: PlanPoint): Ref[] {
  const box = boundsOf([a, b]);
  const inside = treeOf(plan, session.level)
    .search(box)
    .filter(({ ref, layer, ...bounds }) => canPick(session, layer) && ref.kind !== 'corner' && ref.kind !== 'wall' && isWithin(bounds, box));
  const named = new Set(inside.map(({ ref }) => refKey(ref)));
  const carried = new Set<string>();
  for (const { ref } of inside) {
    if (ref.kind !== 'pipe' && ref.kind !== 'nozzle') continue;
    const network = plan.networks[ref.network];
    const pipe = ref.kind === 'pipe' ? network?.pipes[ref.id] : undefined;
    const nozzle = ref.kind === 'nozzle' ? network?.nozzles[ref.id] : undefined;
    for (const id of [pipe?.from, pipe?.to, nozzle?.node]) if (id) carried.add(refKey({ kind: 'node', network: ref.network, id }));
  }
  return inside
    .map(({ ref }) => ref)
    .filter((ref) => !carried.has(refKey(ref)))
    .filter((ref) => !((ref.kind === 'opening' || ref.kind === 'ceiling-zone') && named.has(refKey({ kind: 'enclosure', level: ref.level, id: ref.enclosure }))))
    .sort((one, other) => ORDER.indexOf(one.kind) - ORDER.indexOf(other.kind) || (isSameRef(one, other) ? 0 : refKey(one) < refKey(other) ? -1 : 1));
}

const isWithin = (inner: Box, outer: Box): boolean =>
  inner.minX >= outer.minX && inner.maxX <= outer.maxX && inner.minY >= outer.minY && inner.maxY <= outer.maxY;
