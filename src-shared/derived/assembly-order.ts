import type { AssemblyPart, Network } from '../model/plan.ts';
import { PART_WORDS } from './part-words.ts';

type Kind = AssemblyPart['kind'];

/** A part that is not as the manual orders it, with the sentence that says so. */
export interface OrderFault {
  readonly part: AssemblyPart | undefined;
  readonly text: string;
}

const article = (kind: Kind): string => `${kind === 'adapter' ? 'an' : 'a'} ${PART_WORDS[kind]}`;

/** Parts that are turned against the flow. */
export const reversedParts = (assembly: readonly AssemblyPart[]): AssemblyPart[] => assembly.filter(({ arrowDownstream }) => !arrowDownstream);

/** Several cylinders meet in a manifold; without one each would need its own way into the pipe. */
export const lacksManifold = ({ cylinders, assembly }: Pick<Network, 'cylinders' | 'assembly'>): boolean => Object.keys(cylinders).length > 1 && assembly.length > 0 && !assembly.some(({ kind }) => kind === 'manifold');

/**
 * The parts that a network must have: those of the manual, in its order. One cylinder needs no manifold; it may have
 * one, since the agent passes it all the same and a second cylinder may be meant to come.
 */
export const wantedParts = (order: readonly Kind[], { cylinders, assembly }: Pick<Network, 'cylinders' | 'assembly'>): Kind[] =>
  order.filter((kind) => kind !== 'manifold' || Object.keys(cylinders).length > 1 || assembly.some((part) => part.kind === 'manifold'));

/** What of a discharge assembly is not in the order of the manual: parts that lack, that it does not list, and the first one out of place. */
export function orderFaults(order: readonly Kind[], network: Pick<Network, 'cylinders' | 'assembly'>): OrderFault[] {
  const wanted = wantedParts(order, network);
  const { assembly } = network;
  const count = (kinds: readonly Kind[], kind: Kind): number => kinds.filter((each) => each === kind).length;
  const listed = assembly.map(({ kind }) => kind);
  const lacking = [...new Set(wanted)].filter((kind) => count(listed, kind) < count(wanted, kind)).map((kind): OrderFault => ({ part: undefined, text: `It lacks ${article(kind)}, which the manual lists.` }));
  const extra = [...new Set(listed)]
    .filter((kind) => count(listed, kind) > count(wanted, kind))
    .map((kind): OrderFault => ({ part: assembly.findLast((part) => part.kind === kind), text: count(wanted, kind) === 0 ? `It has ${article(kind)}, which the manual does not list.` : `It has more than one ${PART_WORDS[kind]}, where the manual lists ${count(wanted, kind)}.` }));
  if (lacking.length + extra.length > 0) return [...lacking, ...extra];
  const i = listed.findIndex((kind, k) => kind !== wanted[k]);
  const [part, kind, before] = [assembly[i], wanted[i], wanted[i - 1]];
  if (!part || !kind) return [];
  return [{ part, text: `${before ? `After the ${PART_WORDS[before]}` : 'First of all'} the manual has the ${PART_WORDS[kind]}; here it is the ${PART_WORDS[part.kind]}.` }];
}
