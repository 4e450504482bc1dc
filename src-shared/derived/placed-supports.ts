import { heldPipe } from '../model/held-pipe.ts';
import type { RefOf, Support } from '../model/plan.ts';
import type { DerivedNetwork, DerivedPipe } from './derived.ts';
import { remembered } from './remember.ts';

/** A support of the plan with the pipe that it holds. */
export interface PlacedSupport {
  readonly ref: RefOf<'support'>;
  readonly support: Support;
  /** undefined: no pipe runs there. */
  readonly pipe: DerivedPipe | undefined;
}

/** The supports of a network, each on its pipe. */
export const placedSupportsOf = remembered(({ ref, network, pipes }: DerivedNetwork): readonly PlacedSupport[] => {
  const byId = new Map(pipes.map((pipe) => [pipe.pipe.id, pipe]));
  return Object.values(network.supports).map((support) => ({
    ref: { kind: 'support', network: ref.id, id: support.id },
    support,
    pipe: byId.get(heldPipe(network, support.at)?.id ?? ''),
  }));
});
