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
  /** How high its top lies: of several things of one kind over each other the topmost is picked first [m]. */
  readonly top_m: number;
}

/** What is picked first where things lie on each other; a support is as small as a pipe end. */
const ORDER: readonly RefKind[] = ['nozzle', 'cylinder', 'node', 'pipe', 'device', 'opening', 'corner', 'wall', 'obstruction', 'dimension', 'note', 'ceiling-zone', 'enclosure', 'adjoining', 'underlay'];

const rankOf = ({ kind }: Ref): number => ORDER.indexOf(kind === 'support' ? 'node' : kind);

const disc = (ref: Ref, { x, y }: PlanPoint, radius_m: number, top_m = 0, layer = layerOf(ref)): Pickable => ({
  minX: x - radius_m,
  minY: y - radius_m,
  maxX: x + radius_m,
  maxY: y + radius_m,
  ref,
  layer,
  shape: { at: { x, y }, radius_m },
  top_m,
});
const piece = (ref: Ref, segment: Segment, top_m = 0): Pickable => ({ ...boundsOf([segment.a, segment.b]), ref, layer: layerOf(ref), shape: { segment }, top_m });
const area = (ref: Ref, ring: Outline, holes: readonly Outline[] = [], top_m = 0): Pickable => ({ ...boundsOf(ring), ref, layer: layerOf(ref), shape: { ring, holes }, top_m });

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
  for (const { id, footprint, top_m } of Object.values(level.obstructions)) yield area({ kind: 'obstruction', level: levelId, id }, footprint, [], top_m);
  for (const { id, at, height_m } of Object.values(level.devices)) yield disc({ kind: 'device', level: levelId, id }, at, 0, height_m ?? 0);
  for (const { id, outline, floor_m } of Object.values(level.adjoining)) yield area({ kind: 'adjoining', level: levelId, id }, outline, [], floor_m);
  for (const dimension of Object.values(level.dimensions)) yield piece({ kind: 'dimension', level: levelId, id: dimension.id }, dimensionLine(dimension));
  for (const { id, at } of Object.values(level.notes)) yield disc({ kind: 'note', level: levelId, id }, at, 0);
  for (const network of networksOn(plan, levelId)) {
    const radius_m = cylinderRadius_m(plan.profiles[network.profile]);
    for (const { id, at } of Object.values(network.cylinders)) yield disc({ kind: 'cylinder', network: network.id, id }, at, radius_m);
    // The node at an orifice is moved with its nozzle, so it is locked with it.
    const orifices = new Set(Object.values(network.nozzles).map(({ node }) => node));
    for (const { id, at } of Object.values(network.nodes)) yield disc({ kind: 'node', network: network.id, id }, at, 0, at.z, orifices.has(id) ? 'nozzles' : 'pipes');
    for (const { id, from, to } of Object.values(network.pipes)) {
      const a = network.nodes[from]?.at;
      const b = network.nodes[to]?.at;
      if (a && b) yield piece({ kind: 'pipe', network: network.id, id }, { a: { x: a.x, y: a.y }, b: { x: b.x, y: b.y } }, Math.max(a.z, b.z));
    }
    for (const { id, at } of Object.values(network.supports)) yield disc({ kind: 'support', network: network.id, id }, at, 0, at.z);
    for (const { id, node } of Object.values(network.nozzles)) {
      const at = network.nodes[node]?.at;
      if (at) yield disc({ kind: 'nozzle', network: network.id, id }, at, 0, at.z);
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

/** A thing within reach, and what decides which of several is picked. */
interface Within {
  readonly ref: Ref;
  readonly rank: number;
  readonly distance_m: number;
  readonly size_m2: number;
  readonly top_m: number;
}

/** Things as near as this to a place lie over each other there [m]. */
const STACKED_m = 1e-6;

/** Gravest first: the smaller kind, the nearer, the higher, the smaller. */
function order(a: Within, b: Within): number {
  if (a.rank !== b.rank) return a.rank - b.rank;
  const nearer_m = a.distance_m - b.distance_m;
  return Math.abs(nearer_m) > STACKED_m ? nearer_m : b.top_m - a.top_m || a.size_m2 - b.size_m2;
}

function within(plan: Plan, session: Session, at: PlanPoint, reach_m: number): Within[] {
  const open = openEnclosures(session.selection);
  const box = { minX: at.x - reach_m, minY: at.y - reach_m, maxX: at.x + reach_m, maxY: at.y + reach_m };
  return treeOf(plan, session.level)
    .search(box)
    .filter(({ ref, layer }) => canPick(session, layer) && ((ref.kind !== 'corner' && ref.kind !== 'wall') || open.has(ref.enclosure)))
    .map(({ ref, shape, top_m }) => ({
      ref,
      rank: rankOf(ref),
      distance_m: distanceTo_m(at, shape, ref.kind !== 'ceiling-zone' || open.has(ref.enclosure)),
      size_m2: 'ring' in shape ? area_m2(shape.ring) : 0,
      top_m,
    }))
    .filter((thing) => thing.distance_m <= reach_m)
    .sort(order);
}

/**
 * Finds the thing that a click means, on the session's level and on visible, unlocked layers.
 * Small things go before large ones (see `ORDER`); of one kind the nearest, then the topmost, then the smallest, wins.
 * Corners and walls can be picked once their enclosure, or a part of it, is selected.
 */
export const pickAt = (plan: Plan, session: Session, underlays: readonly UnderlayIndex[], at: PlanPoint, reach_m: number): Ref | undefined =>
  within(plan, session, at, reach_m)[0]?.ref ?? pickUnderlay(session, underlays, at, reach_m);

/** Things of the picked kind that lie over each other at a place, the topmost first: pipe over pipe, rack under rack. Supports of the drop belong to a nozzle's stack. */
export function pickStack(plan: Plan, session: Session, at: PlanPoint, reach_m: number): Ref[] {
  const [best, ...others] = within(plan, session, at, reach_m);
  return best ? [best, ...others.filter(({ ref, rank, distance_m: away_m }) => (rank === best.rank || ref.kind === 'support') && away_m - best.distance_m <= STACKED_m)].map(({ ref }) => ref) : [];
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
    .sort((one, other) => rankOf(one) - rankOf(other) || (isSameRef(one, other) ? 0 : refKey(one) < refKey(other) ? -1 : 1));
}

const isWithin = (inner: Box, outer: Box): boolean =>
  inner.minX >= outer.minX && inner.maxX <= outer.maxX && inner.minY >= outer.minY && inner.maxY <= outer.maxY;
