import type { Design, NetworkDesign } from '../../calculations/design/design.ts';
import type { Derived } from '../../derived/derived.ts';
import type { Release } from '../../model/plan.ts';

/** A network whose releasing circuit is drawn up. */
export interface ReleasingCircuit {
  readonly network: NetworkDesign;
  readonly release: Release;
}

/** Every network whose releasing circuit is drawn up; L1 says where one is missing. */
export const circuitSubjects = (_derived: Derived, { networks }: Design) =>
  networks.flatMap((network) => {
    const { release } = network.network;
    return release ? [{ subject: { network, release } satisfies ReleasingCircuit, ref: network.ref, name: network.name }] : [];
  });

/** Names of a list; like ones are told apart by their place in it, one without a name has only that. */
export const namesApart = (names: readonly string[], word: string): string[] =>
  names.map((name, i) => {
    if (name === '') return `${word} ${i + 1}`;
    return names.indexOf(name) === names.lastIndexOf(name) ? name : `${name} (${word} ${i + 1})`;
  });
