import { type PlanPoint, polar } from '#shared/geometry/point';
import { type Plan, type Ref, ringOf } from '#shared/model/plan';
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

/** Shape of a thing of the plan; nothing for a thing that has gone. Floor plans have no shape here. */
export function thingShape(plan: Plan, ref: Ref): ThingShape {
  if (ref.kind === 'network' || 'network' in ref) return networkShape(plan, ref);
  const level = plan.levels[ref.level];
  switch (ref.kind) {
    case 'enclosure': {
      const enclosure = level?.enclosures[ref.id];
      if (!enclosure) return NOTHING;
      const rings = [enclosure.outline, ...enclosure.holes].map(ringOf);
      return { ...NOTHING, rings, handles: rings.flat() };
    }
    case 'obstruction': {
      const solid = level?.obstructions[ref.id];
      return solid ? { ...NOTHING, rings: [solid.footprint], handles: solid.footprint } : NOTHING;
    }
    case 'dimension': {
      const dimension = level?.dimensions[ref.id];
      if (!dimension) return NOTHING;
      const { a, b } = dimensionLine(dimension);
      return { ...NOTHING, lines: [[a, b]], handles: [dimension.a, dimension.b] };
    }
    case 'note': {
      const note = level?.notes[ref.id];
      return note ? { ...NOTHING, points: [note.at] } : NOTHING;
    }
    case 'device': {
      const device = level?.devices[ref.id];
      return device ? { ...NOTHING, points: [device.at] } : NOTHING;
    }
    case 'adjoining': {
      const space = level?.adjoining[ref.id];
      return space ? { ...NOTHING, rings: [space.outline], handles: space.outline } : NOTHING;
    }
    case 'underlay':
      return NOTHING;
    default: {
      const enclosure = level?.enclosures[ref.enclosure];
      if (!enclosure) return NOTHING;
      if (ref.kind === 'ceiling-zone') {
        const zone = enclosure.ceilingZones[ref.id];
        return zone ? { ...NOTHING, rings: [zone.outline], handles: zone.outline } : NOTHING;
      }
      if (ref.kind === 'opening') {
        const opening = enclosure.openings[ref.id];
        const segment = opening && openingSegment(ref.level, enclosure, opening);
        return segment ? { ...NOTHING, lines: [[segment.a, segment.b]], handles: [segment.a, segment.b] } : NOTHING;
      }
      const wall = wallsOf(ref.level, enclosure).find(({ ref: each }) => each.id === ref.id);
      if (!wall) return NOTHING;
      const { a, b } = wall.segment;
      return ref.kind === 'corner' ? { ...NOTHING, points: [a], handles: [a] } : { ...NOTHING, lines: [[a, b]], handles: [a, b] };
    }
  }
}

/** A round outline as a ring of short sides. */
const circle = (at: PlanPoint, radius_m: number): PlanPoint[] => Array.from({ length: 32 }, (_, i) => polar(at, (2 * Math.PI * i) / 32, radius_m));

function networkShape(plan: Plan, ref: Extract<Ref, { kind: 'network' } | { network: string }>): ThingShape {
  const network = plan.networks[ref.kind === 'network' ? ref.id : ref.network];
  if (!network) return NOTHING;
  const at = (node: string | undefined): PlanPoint[] => (node !== undefined && network.nodes[node] ? [network.nodes[node].at] : []);
  const lineOf = (pipe: { from: string; to: string } | undefined): [PlanPoint, PlanPoint][] => {
    const [a] = at(pipe?.from);
    const [b] = at(pipe?.to);
    return a && b ? [[a, b]] : [];
  };
  switch (ref.kind) {
    case 'network':
      return { ...NOTHING, lines: Object.values(network.pipes).flatMap(lineOf), points: Object.values(network.cylinders).map((cylinder) => cylinder.at) };
    case 'cylinder': {
      const cylinder = network.cylinders[ref.id];
      return cylinder ? { ...NOTHING, rings: [circle(cylinder.at, cylinderRadius_m(plan.profiles[network.profile]))] } : NOTHING;
    }
    case 'node':
      return { ...NOTHING, points: at(ref.id), handles: at(ref.id) };
    case 'nozzle':
      return { ...NOTHING, points: at(network.nozzles[ref.id]?.node) };
    case 'support': {
      const support = network.supports[ref.id];
      return support ? { ...NOTHING, points: [support.at] } : NOTHING;
    }
    case 'pipe': {
      const pipe = network.pipes[ref.id];
      return { ...NOTHING, lines: lineOf(pipe), handles: [...at(pipe?.from), ...at(pipe?.to)] };
    }
  }
}
