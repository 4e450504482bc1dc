import type { NetworkDesign } from '../../calculations/design/design.ts';
import type { Release } from '../../model/plan.ts';
import { perNetworkSums } from '../subjects.ts';

/** A network whose releasing circuit is drawn up. */
export interface ReleasingCircuit {
  readonly network: NetworkDesign;
  readonly release: Release;
}

/** Every network whose releasing circuit is drawn up; L1 says where one is missing. */
export const circuitSubjects = perNetworkSums((network) => {
  const { release } = network.network;
  return release ? [{ subject: { network, release } satisfies ReleasingCircuit, ref: network.ref, name: network.name }] : [];
});

/** Names of a list; like ones are told apart by their place in it, one without a name has only that. */
export const namesApart = (names: readonly string[], word: string): string[] =>
  names.map((name, i) => {
    if (name === '') return `${word} ${i + 1}`;
    return names.indexOf(name) === names.lastIndexOf(name) ? name : `${name} (${word} ${i + 1})`;
  });
