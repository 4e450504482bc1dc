import { type FoundThing, type PlacedCorner, entryOf, findCorner, findThing } from '../model/find-thing.ts';
import type { Corner, Enclosure, Level, Network, PipeNode, Plan, Ref, RefOf } from '../model/plan.ts';
import { kindWord } from '../model/thing-name.ts';
import { refuse } from './command.ts';

const gone = (what: string): never => refuse(`This ${what} is no longer in the plan.`);

/** A level of the plan; refuses when it has gone. Like all that follow. */
export const levelOf = (plan: Plan, id: string): Level => entryOf(plan.levels, id) ?? gone('level');
/** A network of the plan. */
export const networkOf = (plan: Plan, id: string): Network => entryOf(plan.networks, id) ?? gone('network');
/** An enclosure of a level. */
export const enclosureOf = (plan: Plan, level: string, id: string): Enclosure => entryOf(levelOf(plan, level).enclosures, id) ?? gone('enclosure');

/** The thing that a reference names. */
export function thingOf<R extends Ref>(plan: Plan, ref: R): FoundThing<R['kind']>['thing'] {
  if ('network' in ref) networkOf(plan, ref.network);
  else if ('enclosure' in ref) enclosureOf(plan, ref.level, ref.enclosure);
  else if ('level' in ref) levelOf(plan, ref.level);
  return findThing(plan, ref)?.thing ?? gone(kindWord(ref).toLowerCase());
}
/** An underlay by its reference. */
export const underlayOf = thingOf<RefOf<'underlay'>>;
/** An obstruction by its reference. */
export const obstructionOf = thingOf<RefOf<'obstruction'>>;
/** A detector, sign, switch or other device by its reference. */
export const deviceOf = thingOf<RefOf<'device'>>;
/** An adjoining space by its reference. */
export const adjoiningOf = thingOf<RefOf<'adjoining'>>;
/** A dimension by its reference. */
export const dimensionOf = thingOf<RefOf<'dimension'>>;
/** A note by its reference. */
export const noteOf = thingOf<RefOf<'note'>>;
/** An opening by its reference. */
export const openingOf = thingOf<RefOf<'opening'>>;
/** A ceiling zone by its reference. */
export const ceilingZoneOf = thingOf<RefOf<'ceiling-zone'>>;
/** A cylinder by its reference. */
export const cylinderOf = thingOf<RefOf<'cylinder'>>;
/** A node by its reference. */
export const nodeOf = thingOf<RefOf<'node'>>;
/** A pipe by its reference. */
export const pipeOf = thingOf<RefOf<'pipe'>>;
/** A support by its reference. */
export const supportOf = thingOf<RefOf<'support'>>;
/** A nozzle by its reference. */
export const nozzleOf = thingOf<RefOf<'nozzle'>>;

/** A node of a network by its id; refuses when what names it has lost it. */
export const nodeIn = (network: Network, id: string): PipeNode => entryOf(network.nodes, id) ?? refuse('A pipe or nozzle here has lost its place. Delete it and draw it again.');

/** A corner with the ring it belongs to. */
export interface Cornered extends PlacedCorner {
  readonly enclosure: Enclosure;
  readonly isHole: boolean;
}

/** The corner that a corner or wall reference names, with its ring. */
export function cornerOf(plan: Plan, ref: RefOf<'corner'> | RefOf<'wall'>): Cornered {
  const enclosure = enclosureOf(plan, ref.level, ref.enclosure);
  const found = findCorner(enclosure, ref.id) ?? gone(ref.kind);
  return { enclosure, ...found, isHole: found.ring !== enclosure.outline };
}

/** The corner `steps` further along a ring. */
export const cornerAfter = (ring: readonly Corner[], index: number, steps = 1): Corner =>
  ring[(index + steps + ring.length) % ring.length] ?? refuse('This outline has no corners left.');
