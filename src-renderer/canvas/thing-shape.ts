import { type PlanPoint, polar } from '#shared/geometry/point';
import type { Segment } from '#shared/geometry/segment';
import { findThing } from '#shared/model/find-thing';
import { type Network, type Pipe, type Plan, type Ref, ringOf } from '#shared/model/plan';
import { cylinderRadius_m } from '../tools/cylinder-place.ts';
import { dimensionLine, openingSegment, wallsOf } from '../tools/level-things.ts';

/** Where a thing is on the plan, for marking it as a whole. */
export interface ThingShape {
  readonly rings: readonly (readonly PlanPoint[])[];
  readonly lines: readonly (readonly [PlanPoint, PlanPoint])[];
  readonly points: readonly PlanPoint[];
  /** Places that can be dragged to change its shape. */
  readonly handles: readonly PlanPoint[];
}

const NOTHING: ThingShape = { rings: [], lines: [], points: [], handles: [] };

/** A round outline as a ring of short sides. */
const circle = (at: PlanPoint, radius_m: number): PlanPoint[] => Array.from({ length: 32 }, (_, i) => polar(at, (2 * Math.PI * i) / 32, radius_m));

const atNode = (network: Network, node: string): PlanPoint[] => (network.nodes[node] ? [network.nodes[node].at] : []);

function lineOf(network: Network, { from, to }: Pipe): [PlanPoint, PlanPoint][] {
  const [a] = atNode(network, from);
  const [b] = atNode(network, to);
  return a && b ? [[a, b]] : [];
}

const betweenHandles = ({ a, b }: Segment): ThingShape => ({ ...NOTHING, lines: [[a, b]], handles: [a, b] });

/** Shape of a thing of the plan; nothing for a thing that has gone. Floor plans have no shape here. */
export function thingShape(plan: Plan, ref: Ref): ThingShape {
  const found = findThing(plan, ref);
  switch (found?.kind) {
    case 'enclosure': {
      const rings = [found.thing.outline, ...found.thing.holes].map(ringOf);
      return { ...NOTHING, rings, handles: rings.flat() };
    }
    case 'obstruction':
      return { ...NOTHING, rings: [found.thing.footprint], handles: found.thing.footprint };
    case 'adjoining':
    case 'ceiling-zone':
      return { ...NOTHING, rings: [found.thing.outline], handles: found.thing.outline };
    case 'dimension': {
      const { a, b } = dimensionLine(found.thing);
      return { ...NOTHING, lines: [[a, b]], handles: [found.thing.a, found.thing.b] };
    }
    case 'note':
    case 'device':
    case 'support':
      return { ...NOTHING, points: [found.thing.at] };
    case 'opening': {
      const segment = openingSegment(found.level.id, found.enclosure, found.thing);
      return segment ? betweenHandles(segment) : NOTHING;
    }
    case 'corner':
      return { ...NOTHING, points: ringOf([found.thing]), handles: ringOf([found.thing]) };
    case 'wall': {
      const wall = wallsOf(found.level.id, found.enclosure).find(({ ref: each }) => each.id === ref.id);
      return wall ? betweenHandles(wall.segment) : NOTHING;
    }
    case 'network': {
      const { pipes, cylinders } = found.thing;
      return { ...NOTHING, lines: Object.values(pipes).flatMap((pipe) => lineOf(found.network, pipe)), points: Object.values(cylinders).map(({ at }) => at) };
    }
    case 'cylinder':
      return { ...NOTHING, rings: [circle(found.thing.at, cylinderRadius_m(plan.profiles[found.network.profile]))] };
    case 'node':
      return { ...NOTHING, points: [found.thing.at], handles: [found.thing.at] };
    case 'nozzle':
      return { ...NOTHING, points: atNode(found.network, found.thing.node) };
    case 'pipe': {
      const { from, to } = found.thing;
      return { ...NOTHING, lines: lineOf(found.network, found.thing), handles: [...atNode(found.network, from), ...atNode(found.network, to)] };
    }
    default:
      return NOTHING;
  }
}
