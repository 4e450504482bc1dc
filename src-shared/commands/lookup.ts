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
  RefOf,
  Support,
  Underlay,
} from '../model/plan.ts';
import { refuse } from './command.ts';

/** The entry of a record, never one that every object has. */
export const entryOf = <T>(record: Readonly<Record<string, T>>, id: string): T | undefined => (Object.hasOwn(record, id) ? record[id] : undefined);

const gone = (what: string): never => refuse(`This ${what} is no longer in the plan.`);

/** A level of the plan; refuses when it has gone. Like all that follow. */
export const levelOf = (plan: Plan, id: string): Level => entryOf(plan.levels, id) ?? gone('level');
/** A network of the plan. */
export const networkOf = (plan: Plan, id: string): Network => entryOf(plan.networks, id) ?? gone('network');
/** An enclosure of a level. */
export const enclosureOf = (plan: Plan, level: string, id: string): Enclosure => entryOf(levelOf(plan, level).enclosures, id) ?? gone('enclosure');
/** An underlay by its reference. */
export const underlayOf = (plan: Plan, ref: RefOf<'underlay'>): Underlay => entryOf(levelOf(plan, ref.level).underlays, ref.id) ?? gone('floor plan');
/** An obstruction by its reference. */
export const obstructionOf = (plan: Plan, ref: RefOf<'obstruction'>): Obstruction => entryOf(levelOf(plan, ref.level).obstructions, ref.id) ?? gone('obstacle');
/** A detector, sign, switch or other device by its reference. */
export const deviceOf = (plan: Plan, ref: RefOf<'device'>): Device => entryOf(levelOf(plan, ref.level).devices, ref.id) ?? gone('device');
/** An adjoining space by its reference. */
export const adjoiningOf = (plan: Plan, ref: RefOf<'adjoining'>): Adjoining => entryOf(levelOf(plan, ref.level).adjoining, ref.id) ?? gone('adjoining space');
/** A dimension by its reference. */
export const dimensionOf = (plan: Plan, ref: RefOf<'dimension'>): Dimension => entryOf(levelOf(plan, ref.level).dimensions, ref.id) ?? gone('dimension');
/** A note by its reference. */
export const noteOf = (plan: Plan, ref: RefOf<'note'>): Note => entryOf(levelOf(plan, ref.level).notes, ref.id) ?? gone('note');
/** An opening by its reference. */
export const openingOf = (plan: Plan, ref: RefOf<'opening'>): Opening => entryOf(enclosureOf(plan, ref.level, ref.enclosure).openings, ref.id) ?? gone('opening');
/** A ceiling zone by its reference. */
export const ceilingZoneOf = (plan: Plan, ref: RefOf<'ceiling-zone'>): CeilingZone =>
  entryOf(enclosureOf(plan, ref.level, ref.enclosure).ceilingZones, ref.id) ?? gone('ceiling zone');
/** A cylinder by its reference. */
export const cylinderOf = (plan: Plan, ref: RefOf<'cylinder'>): Cylinder => entryOf(networkOf(plan, ref.network).cylinders, ref.id) ?? gone('cylinder');
/** A node by its reference. */
export const nodeOf = (plan: Plan, ref: RefOf<'node'>): PipeNode => entryOf(networkOf(plan, ref.network).nodes, ref.id) ?? gone('pipe end');
/** A pipe by its reference. */
export const pipeOf = (plan: Plan, ref: RefOf<'pipe'>): Pipe => entryOf(networkOf(plan, ref.network).pipes, ref.id) ?? gone('pipe');
/** A support by its reference. */
export const supportOf = (plan: Plan, ref: RefOf<'support'>): Support => entryOf(networkOf(plan, ref.network).supports, ref.id) ?? gone('support');
/** A nozzle by its reference. */
export const nozzleOf = (plan: Plan, ref: RefOf<'nozzle'>): Nozzle => entryOf(networkOf(plan, ref.network).nozzles, ref.id) ?? gone('nozzle');

/** A node of a network by its id; refuses when what names it has lost it. */
export const nodeIn = (network: Network, id: string): PipeNode => entryOf(network.nodes, id) ?? refuse('A pipe or nozzle here has lost its place. Delete it and draw it again.');

/** A corner with the ring it belongs to. */
export interface Cornered {
  readonly enclosure: Enclosure;
  /** The outline or a hole, as it stands in the plan. */
  readonly ring: Corner[];
  readonly index: number;
  readonly corner: Corner;
  readonly isHole: boolean;
}

/** The corner that a corner or wall reference names, with its ring. */
export function cornerOf(plan: Plan, ref: RefOf<'corner'> | RefOf<'wall'>): Cornered {
  const enclosure = enclosureOf(plan, ref.level, ref.enclosure);
  for (const ring of [enclosure.outline, ...enclosure.holes]) {
    const index = ring.findIndex(({ id }) => id === ref.id);
    const corner = ring[index];
    if (corner) return { enclosure, ring, index, corner, isHole: ring !== enclosure.outline };
  }
  return gone(ref.kind);
}

/** The corner `steps` further along a ring. */
export const cornerAfter = (ring: readonly Corner[], index: number, steps = 1): Corner =>
  ring[(index + steps + ring.length) % ring.length] ?? refuse('This outline has no corners left.');
