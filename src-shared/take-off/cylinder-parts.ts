import type { DerivedNetwork } from '../derived/derived.ts';
import type { AssemblyPart, Cylinder } from '../model/plan.ts';

/** What holds cylinders besides their anchors. */
export type MountKind = 'rail' | 'clamp' | 'restraint';

export interface CountedPart {
  readonly kind: AssemblyPart['kind'];
  readonly name: string;
  readonly length_m: number;
}

/**
 * Parts of the discharge assembly as they are bought: what stands before a manifold once for each cylinder, what follows
 * once for all. Without a manifold every cylinder has all of them. A network whose cylinders are not drawn yet counts as one.
 */
export function assemblyPartsOf({ network }: Pick<DerivedNetwork, 'network'>): CountedPart[] {
  const cylinders = Math.max(1, Object.keys(network.cylinders).length);
  const split = network.assembly.findIndex(({ kind }) => kind === 'manifold');
  return network.assembly.flatMap(({ kind, name, length_m }, i) => {
    const times = split < 0 || i < split ? cylinders : 1;
    return Array.from({ length: times }, () => ({ kind, name, length_m }));
  });
}

/** One rail with one clamp behind a cylinder, and every further strap that is drawn (common practice; the manual decides). */
export const mountsOf = ({ restraints_m }: Cylinder): MountKind[] => ['rail', 'clamp', ...restraints_m.map((): MountKind => 'restraint')];
