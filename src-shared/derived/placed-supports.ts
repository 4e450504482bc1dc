import { shareAlong } from '../model/held-pipe.ts';
import type { Pipe, RefOf, Support } from '../model/plan.ts';
import type { DerivedNetwork, DerivedPipe } from './derived.ts';
import { remembered } from './remember.ts';

/** A support of the plan with the pipe that it holds. */
export interface PlacedSupport {
  readonly ref: RefOf<'support'>;
  readonly support: Support;
  /** undefined: no pipe runs there. */
  readonly pipe: DerivedPipe | undefined;}

/** Every pipe that each support of a network touches, in the order of the plan: at a joint it holds all that meet there. */
export const pipesAtSupports = remembered(({ network }: DerivedNetwork): ReadonlyMap<Support, readonly Pipe[]> => {
  const pipes = Object.values(network.pipes);
  return new Map(Object.values(network.supports).map((support) => [support, pipes.filter((pipe) => shareAlong(network, pipe, support.at) !== undefined)]));
});

/** The supports of a network, each on its pipe. */
export const placedSupportsOf = remembered((derived: DerivedNetwork): readonly PlacedSupport[] => {
  const { ref, network, pipes } = derived;
  const byId = new Map(pipes.map((pipe) => [pipe.pipe.id, pipe]));
  const held = pipesAtSupports(derived);
  return Object.values(network.supports).map((support) => ({ ref: { kind: 'support', network: ref.id, id: support.id }, support, pipe: byId.get(held.get(support)?.[0]?.id ?? '') }));
});
