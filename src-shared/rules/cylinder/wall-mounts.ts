import type { MountSums } from '../../calculations/design/design.ts';
import { worked } from '../../calculations/design/worked.ts';
import { type Member, memberSubjects } from '../design-subjects.ts';
import { perNetworkSums } from '../subjects.ts';

/** Every cylinder that hangs on a wall; its network alone while its load is not known. One that stands on the floor loads no wall. */
export const wallMountSubjects = perNetworkSums((network) => {
  const { cylinders } = network.network;
  const isHung = (id: string): boolean => cylinders[id]?.mounting === 'wall';
  if (!Object.keys(cylinders).some(isHung)) return [];
  const { mounts } = network;
  return memberSubjects(network, mounts.isKnown ? worked(mounts.sums.filter(({ ref }) => isHung(ref.id))) : mounts, ({ ref, name }) => ({ ref, name }));
});

/** Where a cylinder stands. */
export const cylinderAt = ({ network, member }: Member<MountSums>) => {
  const at = member.isKnown ? network.network.cylinders[member.sums.ref.id]?.at : undefined;
  return at ? [at] : [];
};
