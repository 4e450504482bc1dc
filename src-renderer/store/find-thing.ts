import type {
  Adjoining,
  CeilingZone,
  Corner,
  Cylinder,
  Device,
  Dimension,
  Enclosure,
  Level,
  Network,
  Note,
  Nozzle,
  Obstruction,
  Opening,
  Pipe,
  PipeNode,
  Plan,
  Ref,
  RefKind,
  RefOf,
  Support,
  Underlay,
} from '#shared/model/plan';

interface Things {
  underlay: { level: Level; thing: Underlay };
  enclosure: { level: Level; thing: Enclosure };
  obstruction: { level: Level; thing: Obstruction };
  dimension: { level: Level; thing: Dimension };
  device: { level: Level; thing: Device };
  adjoining: { level: Level; thing: Adjoining };
  note: { level: Level; thing: Note };
  /** The corner, and for a wall the corner that it starts at. */
  corner: { level: Level; enclosure: Enclosure; thing: Corner };
  wall: { level: Level; enclosure: Enclosure; thing: Corner };
  opening: { level: Level; enclosure: Enclosure; thing: Opening };
  'ceiling-zone': { level: Level; enclosure: Enclosure; thing: CeilingZone };
  network: { network: Network; thing: Network };
  cylinder: { network: Network; thing: Cylinder };
  node: { network: Network; thing: PipeNode };
  pipe: { network: Network; thing: Pipe };
  nozzle: { network: Network; thing: Nozzle };
  support: { network: Network; thing: Support };
}

/** A thing of the plan with its reference and its owners. */
export type FoundThing = { [K in RefKind]: { readonly kind: K; readonly ref: RefOf<K> } & Readonly<Things[K]> }[RefKind];

/** Corner of an enclosure or of one of its holes. */
export const findCorner = (enclosure: Enclosure, id: string): Corner | undefined =>
  [enclosure.outline, ...enclosure.holes].flat().find((corner) => corner.id === id);

/** The thing that a reference names, or undefined when it has gone. */
export function findThing(plan: Plan, ref: Ref): FoundThing | undefined {
  if (ref.kind === 'network') {
    const network = plan.networks[ref.id];
    return network && { kind: 'network', ref: { kind: 'network', id: ref.id }, network, thing: network };
  }
  if ('network' in ref) {
    const network = plan.networks[ref.network];
    if (!network) return undefined;
    const { kind, id } = ref;
    if (kind === 'cylinder') {
      const thing = network.cylinders[id];
      return thing && { kind, ref: { ...ref, kind }, network, thing };
    }
    if (kind === 'node') {
      const thing = network.nodes[id];
      return thing && { kind, ref: { ...ref, kind }, network, thing };
    }
    if (kind === 'pipe') {
      const thing = network.pipes[id];
      return thing && { kind, ref: { ...ref, kind }, network, thing };
    }
    if (kind === 'support') {
      const thing = network.supports[id];
      return thing && { kind, ref: { ...ref, kind }, network, thing };
    }
    const thing = network.nozzles[id];
    return thing && { kind, ref: { ...ref, kind }, network, thing };
  }
  const level = plan.levels[ref.level];
  if (!level) return undefined;
  if ('enclosure' in ref) {
    const enclosure = level.enclosures[ref.enclosure];
    if (!enclosure) return undefined;
    if (ref.kind === 'opening') {
      const thing = enclosure.openings[ref.id];
      return thing && { kind: 'opening', ref: { ...ref, kind: 'opening' }, level, enclosure, thing };
    }
    if (ref.kind === 'ceiling-zone') {
      const thing = enclosure.ceilingZones[ref.id];
      return thing && { kind: 'ceiling-zone', ref: { ...ref, kind: 'ceiling-zone' }, level, enclosure, thing };
    }
    const thing = findCorner(enclosure, ref.id);
    if (ref.kind === 'corner') return thing && { kind: 'corner', ref, level, enclosure, thing };
    return thing && { kind: 'wall', ref, level, enclosure, thing };
  }
  const { kind, id } = ref;
  if (kind === 'underlay') {
    const thing = level.underlays[id];
    return thing && { kind, ref: { ...ref, kind }, level, thing };
  }
  if (kind === 'enclosure') {
    const thing = level.enclosures[id];
    return thing && { kind, ref: { ...ref, kind }, level, thing };
  }
  if (kind === 'obstruction') {
    const thing = level.obstructions[id];
    return thing && { kind, ref: { ...ref, kind }, level, thing };
  }
  if (kind === 'dimension') {
    const thing = level.dimensions[id];
    return thing && { kind, ref: { ...ref, kind }, level, thing };
  }
  if (kind === 'device') {
    const thing = level.devices[id];
    return thing && { kind, ref: { ...ref, kind }, level, thing };
  }
  if (kind === 'adjoining') {
    const thing = level.adjoining[id];
    return thing && { kind, ref: { ...ref, kind }, level, thing };
  }
  const thing = level.notes[id];
  return thing && { kind, ref: { ...ref, kind }, level, thing };
}
