import type { NetworkDesign } from '../../calculations/design/design.ts';
import type { DerivedNetwork } from '../../derived/derived.ts';
import type { Asked } from '../rule.ts';
import { type SubjectsOf, perNetworkWithSums } from '../subjects.ts';

/** A network with its sums and with what follows from its pipe. */
export interface ShapedNetwork {
  readonly network: NetworkDesign;
  readonly shape: DerivedNetwork;
}

/** What is asked of every network with pipe, from its sums and its shape: so that a check need not look around for either. */
export const perShapedNetwork = <S>(of: (shaped: ShapedNetwork) => readonly Asked<S>[]): SubjectsOf<S> =>
  perNetworkWithSums((shape, network) => (Object.keys(shape.network.pipes).length > 0 ? of({ network, shape }) : []));

/** Every network with pipe under its own name, with its sums and its shape. */
export const shapedNetworkSubjects = perShapedNetwork((shaped) => [{ subject: shaped, ref: shaped.network.ref, name: shaped.network.name }]);
