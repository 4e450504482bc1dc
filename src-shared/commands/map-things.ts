import type { Draft } from 'immer';
import type { PlanPoint } from '../geometry/point.ts';
import type { Corner, Enclosure, Network, Plan, Ref, RefOf } from '../model/plan.ts';
import { refKey } from '../model/plan.ts';
import { refuse } from './command.ts';
import { adjoiningOf, ceilingZoneOf, cornerAfter, cornerOf, cylinderOf, deviceOf, dimensionOf, enclosureOf, networkOf, nodeIn, nodeOf, noteOf, nozzleOf, obstructionOf, pipeOf, underlayOf } from './lookup.ts';
import { columnOf } from './pipe-columns.ts';
import { refuseShortPipes } from './pipe-joins.ts';
import { reshape, windRings } from './rings.ts';
import { soundAngle_rad, soundFilePoint, soundPoint } from './sound-value.ts';
import { refuseLocked } from './underlay-scale.ts';

/** A way to lay things elsewhere on the plan without changing their shape. */
export interface Mapping {
  point(p: PlanPoint): PlanPoint;
  /** Where a direction goes [rad]. */
  direction(angle_rad: number): number;
  /** Left becomes right. */
  readonly isMirrored: boolean;
  /** Directions stay: a plain shift. */
  readonly isShift: boolean;
}

/** References named once each, without those that go with a whole that is named too. */
export function wholeRefs(refs: readonly Ref[]): Ref[] {
  const once = [...new Map(refs.map((ref) => [refKey(ref), ref])).values()];
  const enclosures = new Set(once.flatMap((ref) => (ref.kind === 'enclosure' ? [`${ref.level}/${ref.id}`] : [])));
  const networks = new Set(once.flatMap((ref) => (ref.kind === 'network' ? [ref.id] : [])));
  return once.filter((ref) => !('enclosure' in ref && enclosures.has(`${ref.level}/${ref.enclosure}`)) && !('network' in ref && networks.has(ref.network)));
}

/** Lays a place elsewhere, in the plan. */
function mapPlace(place: { x: number; y: number }, mapping: Mapping): void {
  const { x, y } = soundPoint(mapping.point({ x: place.x, y: place.y }));
  place.x = x;
  place.y = y;
}

/** Lays a ring elsewhere; a mirrored one keeps its winding. */
export const mappedRing = (ring: readonly PlanPoint[], mapping: Mapping): { x: number; y: number }[] => {
  const mapped = ring.map((p) => soundPoint(mapping.point({ x: p.x, y: p.y })));
  return mapping.isMirrored ? mapped.reverse() : mapped;
};

/** Lays a whole enclosure elsewhere, with its shafts, zones, slope and openings. */
export function mapEnclosure(enclosure: Enclosure, mapping: Mapping): void {
  for (const ring of [enclosure.outline, ...enclosure.holes]) for (const corner of ring) mapPlace(corner, mapping);
  for (const zone of Object.values(enclosure.ceilingZones)) zone.outline = mappedRing(zone.outline, mapping);
  const { slope } = enclosure;
  if (slope) enclosure.slope = { at: soundPoint(mapping.point(slope.at)), direction_rad: soundAngle_rad(mapping.direction(slope.direction_rad)), rise: slope.rise };
  if (mapping.isMirrored) windRings(enclosure);
}

/** Turns a nozzle as the mapping turns directions. Mirrored, its holes and its rotation both go the other way. */
export function mapNozzle(nozzle: Network['nozzles'][string], mapping: Mapping): void {
  if (mapping.isShift) return;
  if (mapping.isMirrored) nozzle.holes_rad = nozzle.holes_rad.map((hole_rad) => soundAngle_rad(-hole_rad));
  nozzle.rotation_rad = soundAngle_rad(mapping.direction(nozzle.rotation_rad));
}

/** Lays a cylinder elsewhere, with the end of its hose, its outlet and its gauge. */
export function mapCylinder(cylinder: Network['cylinders'][string], mapping: Mapping): void {
  mapPlace(cylinder.at, mapping);
  if (cylinder.hoseEnd) mapPlace(cylinder.hoseEnd, mapping);
  cylinder.back_rad = soundAngle_rad(mapping.direction(cylinder.back_rad));
  if (cylinder.outlet_rad !== null) cylinder.outlet_rad = soundAngle_rad(mapping.direction(cylinder.outlet_rad));
  if (cylinder.gauge) cylinder.gauge.facing_rad = soundAngle_rad(mapping.direction(cylinder.gauge.facing_rad));
}

/** Lays the manifold of a network elsewhere. */
export function mapManifold({ manifold }: Network, mapping: Mapping): void {
  if (!manifold) return;
  mapPlace(manifold.from, mapping);
  mapPlace(manifold.to, mapping);
}

/** Lays a thing of a level elsewhere; answers false for a kind that is not one. */
function mapLevelThing(draft: Draft<Plan>, ref: Ref, mapping: Mapping): boolean {
  switch (ref.kind) {
    case 'enclosure':
      mapEnclosure(enclosureOf(draft, ref.level, ref.id), mapping);
      return true;
    case 'obstruction': {
      const thing = obstructionOf(draft, ref);
      thing.footprint = mappedRing(thing.footprint, mapping);
      if (thing.front_rad !== null) thing.front_rad = soundAngle_rad(mapping.direction(thing.front_rad));
      return true;
    }
    case 'device': {
      const device = deviceOf(draft, ref);
      mapPlace(device.at, mapping);
      if (device.facing_rad !== null) device.facing_rad = soundAngle_rad(mapping.direction(device.facing_rad));
      return true;
    }
    case 'adjoining': {
      const space = adjoiningOf(draft, ref);
      space.outline = mappedRing(space.outline, mapping);
      return true;
    }
    case 'ceiling-zone': {
      const zone = ceilingZoneOf(draft, ref);
      zone.outline = mappedRing(zone.outline, mapping);
      return true;
    }
    case 'dimension': {
      const dimension = dimensionOf(draft, ref);
      mapPlace(dimension.a, mapping);
      mapPlace(dimension.b, mapping);
      if (mapping.isMirrored) dimension.offset_m = -dimension.offset_m;
      return true;
    }
    case 'note':
      mapPlace(noteOf(draft, ref).at, mapping);
      return true;
    case 'underlay': {
      const underlay = underlayOf(draft, ref);
      refuseLocked(underlay);
      if (mapping.isMirrored) refuse('A floor plan cannot be mirrored. Take it out of the selection.');
      underlay.at = soundFilePoint(mapping.point(underlay.at));
      underlay.rotation_rad = soundAngle_rad(mapping.direction(underlay.rotation_rad));
      return true;
    }
    case 'cylinder': {
      const cylinder = cylinderOf(draft, ref);
      mapCylinder(cylinder, mapping);
      return true;
    }
    default:
      return false;
  }
}

/** Lays corners and the ends of walls elsewhere, enclosure by enclosure. */
function mapCorners(draft: Draft<Plan>, refs: readonly (RefOf<'corner'> | RefOf<'wall'>)[], mapping: Mapping): void {
  const byEnclosure = new Map<Enclosure, Set<Corner>>();
  for (const ref of refs) {
    const { enclosure, ring, index, corner } = cornerOf(draft, ref);
    const corners = byEnclosure.get(enclosure) ?? new Set<Corner>();
    corners.add(corner);
    if (ref.kind === 'wall') corners.add(cornerAfter(ring, index));
    byEnclosure.set(enclosure, corners);
  }
  for (const [enclosure, corners] of byEnclosure) {
    reshape(enclosure, () => {
      for (const corner of corners) mapPlace(corner, mapping);
    });
    if (mapping.isMirrored) windRings(enclosure);
  }
}

/** The nodes that references to nodes, pipes, nozzles and networks hold, by network. */
export function nodesOfRefs(draft: Draft<Plan>, refs: readonly Ref[]): Map<string, Set<string>> {
  const nodes = new Map<string, Set<string>>();
  const add = (network: string, ...ids: string[]): void => {
    const held = nodes.get(network) ?? new Set<string>();
    for (const id of ids) held.add(id);
    nodes.set(network, held);
  };
  for (const ref of refs) {
    if (ref.kind === 'network') add(ref.id, ...Object.keys(networkOf(draft, ref.id).nodes));
    else if (ref.kind === 'node') add(ref.network, nodeOf(draft, ref).id);
    else if (ref.kind === 'nozzle') add(ref.network, nozzleOf(draft, ref).node);
    else if (ref.kind === 'pipe') {
      const { from, to } = pipeOf(draft, ref);
      add(ref.network, from, to);
    }
  }
  return nodes;
}

/** Turns or mirrors nodes with whatever stands over and under them, and the nozzles at them. */
function mapNodes(draft: Draft<Plan>, refs: readonly Ref[], mapping: Mapping): void {
  for (const [id, chosen] of nodesOfRefs(draft, refs)) {
    const network = networkOf(draft, id);
    const moving = new Set<string>();
    for (const node of chosen) for (const member of columnOf(network, node)) moving.add(member);
    for (const node of moving) mapPlace(nodeIn(network, node).at, mapping);
    for (const nozzle of Object.values(network.nozzles)) if (moving.has(nozzle.node)) mapNozzle(nozzle, mapping);
    refuseShortPipes(network, moving);
  }
}

/**
 * Lays level things, corners and cylinders elsewhere, and hands the network parts to `onNodes`.
 * Refuses a locked floor plan, an opening on its own when directions change, and what would not be sound there.
 */
export function mapThings(draft: Draft<Plan>, refs: readonly Ref[], mapping: Mapping, onNodes = (parts: readonly Ref[]) => mapNodes(draft, parts, mapping)): void {
  const whole = wholeRefs(refs);
  const corners: (RefOf<'corner'> | RefOf<'wall'>)[] = [];
  const parts: Ref[] = [];
  for (const ref of whole) {
    if (ref.kind === 'corner' || ref.kind === 'wall') corners.push(ref);
    else if (ref.kind === 'opening') {
      if (!mapping.isShift) refuse('A door or vent turns with its wall. Choose the enclosure instead.');
    } else if (!mapLevelThing(draft, ref, mapping)) parts.push(ref);
    if (ref.kind === 'network') {
      mapManifold(networkOf(draft, ref.id), mapping);
      for (const { id } of Object.values(networkOf(draft, ref.id).cylinders)) mapLevelThing(draft, { kind: 'cylinder', network: ref.id, id }, mapping);
    }
  }
  mapCorners(draft, corners, mapping);
  onNodes(parts);
}
