import type { Design, NetworkDesign } from '../../calculations/design/design.ts';
import type { Derived, DerivedNetwork } from '../../derived/derived.ts';
import { pipedNetworks } from '../design-subjects.ts';

/** A network with its sums and with what follows from its pipe. */
export interface ShapedNetwork {
  readonly network: NetworkDesign;
  readonly shape: DerivedNetwork;
}

/** Every network with pipe under its own name, with its sums and its shape: so that a check need not look around for either. */
export const shapedNetworkSubjects = ({ networks }: Derived, design: Design) =>
  pipedNetworks(design).flatMap((network) => {
    const shape = networks.find(({ ref }) => ref.id === network.ref.id);
    return shape ? [{ subject: { network, shape } satisfies ShapedNetwork, ref: network.ref, name: network.name }] : [];
  });
