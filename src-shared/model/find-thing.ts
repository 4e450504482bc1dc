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
} from './plan.ts';

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
export type FoundThing<K extends RefKind = RefKind> = { [E in K]: { readonly kind: E; readonly ref: RefOf<E> } & Readonly<Things[E]> }[K];

type Owners = Pick<Plan, 'levels' | 'networks'>;

/** The entry of a record, never one that every object has. */
export const entryOf = <T>(record: Readonly<Record<string, T>>, id: string): T | undefined => (Object.hasOwn(record, id) ? record[id] : undefined);

const onLevel =
  <T>(of: (level: Level) => Readonly<Record<string, T>>) =>
  ({ levels }: Owners, ref: { readonly level: string; readonly id: string }): { level: Level; thing: T } | undefined => {
    const level = entryOf(levels, ref.level);
    const thing = level && entryOf(of(level), ref.id);
    return level && thing && { level, thing };
  };

const inEnclosure =
  <T>(find: (enclosure: Enclosure, id: string) => T | undefined) =>
  ({ levels }: Owners, ref: { readonly level: string; readonly enclosure: string; readonly id: string }): { level: Level; enclosure: Enclosure; thing: T } | undefined => {
    const level = entryOf(levels, ref.level);
    const enclosure = level && entryOf(level.enclosures, ref.enclosure);
    const thing = enclosure && find(enclosure, ref.id);
    return level && enclosure && thing && { level, enclosure, thing };
  };

const inNetwork =
  <T>(of: (network: Network) => Readonly<Record<string, T>>) =>
  ({ networks }: Owners, ref: { readonly network: string; readonly id: string }): { network: Network; thing: T } | undefined => {
    const network = entryOf(networks, ref.network);
    const thing = network && entryOf(of(network), ref.id);
    return network && thing && { network, thing };
  };

/** A corner in its ring. */
export interface PlacedCorner {
  readonly corner: Corner;
  /** The corner after it, where its wall ends. */
  readonly next: Corner;
  /** The outline or a hole, as it stands in the plan. */
  readonly ring: Corner[];
  readonly index: number;
}

/** The corner of that id, of the enclosure's outline or of one of its holes. */
export function findCorner(enclosure: Enclosure, id: string): PlacedCorner | undefined {
  for (const ring of [enclosure.outline, ...enclosure.holes]) {
    const index = ring.findIndex((corner) => corner.id === id);
    const corner = ring[index];
    const next = ring[(index + 1) % ring.length];
    if (corner && next) return { corner, next, ring, index };
  }
  return undefined;
}

const cornerOf = (enclosure: Enclosure, id: string): Corner | undefined => findCorner(enclosure, id)?.corner;

type Find<K extends RefKind> = (plan: Owners, ref: RefOf<K>) => Things[K] | undefined;
const FIND: { readonly [K in RefKind]: Find<K> } = {
  underlay: onLevel(({ underlays }) => underlays),
  enclosure: onLevel(({ enclosures }) => enclosures),
  obstruction: onLevel(({ obstructions }) => obstructions),
  device: onLevel(({ devices }) => devices),
  adjoining: onLevel(({ adjoining }) => adjoining),
  dimension: onLevel(({ dimensions }) => dimensions),
  note: onLevel(({ notes }) => notes),
  corner: inEnclosure(cornerOf),
  wall: inEnclosure(cornerOf),
  opening: inEnclosure(({ openings }, id) => entryOf(openings, id)),
  'ceiling-zone': inEnclosure(({ ceilingZones }, id) => entryOf(ceilingZones, id)),
  network({ networks }, { id }) {
    const network = entryOf(networks, id);
    return network && { network, thing: network };
  },
  cylinder: inNetwork(({ cylinders }) => cylinders),
  node: inNetwork(({ nodes }) => nodes),
  pipe: inNetwork(({ pipes }) => pipes),
  nozzle: inNetwork(({ nozzles }) => nozzles),
  support: inNetwork(({ supports }) => supports),
};

/** The thing that a reference names, with its owners; undefined when it or one of them has gone. */
export function findThing<R extends Ref>(plan: Owners, ref: R): FoundThing<R['kind']> | undefined {
  const find = FIND[ref.kind] as (plan: Owners, ref: Ref) => Things[R['kind']] | undefined;
  const found = find(plan, ref);
  // The table gives each kind its own owners and thing.
  return found && ({ kind: ref.kind, ref, ...found } as unknown as FoundThing<R['kind']>);
}
