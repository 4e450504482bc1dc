import type { PipeContacts } from '../../derived/clash-contacts.ts';
import { clashPass } from '../../derived/clash-pass.ts';
import type { Derived, DerivedNetwork } from '../../derived/derived.ts';
import { remembered } from '../../derived/remember.ts';
import type { Asked } from '../rule.ts';
import { type SubjectsOf, per } from '../subjects.ts';

/** A network with what each of its pipes is near to. */
interface AmongThings {
  readonly network: DerivedNetwork;
  readonly near: readonly PipeContacts[];
}

const NOTHING: readonly PipeContacts[] = [];
const amongThings = remembered((network: DerivedNetwork, near: readonly PipeContacts[]): AmongThings => ({ network, near }));
let last: readonly AmongThings[] = [];
const networksAmongThings = remembered((derived: Derived): readonly AmongThings[] => {
  const pass = clashPass(derived);
  last = derived.networks.map((network, i) => {
    const [before, near] = [last[i], pass[i] ?? NOTHING];
    return before?.network === network && before.near === near ? before : amongThings(network, near);
  });
  return last;
});

/** Each network with what its pipes are near to: solids, walls, floors, ceilings and other pipe. */
export const perNetworkAmongThings = <S>(of: (network: DerivedNetwork, near: readonly PipeContacts[]) => readonly Asked<S>[]): SubjectsOf<S> =>
  per(networksAmongThings, ({ network }: AmongThings) => network.ref.id)(({ network, near }) => of(network, near));
