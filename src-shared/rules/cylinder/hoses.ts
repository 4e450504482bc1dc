import { assemblyRunOf } from '../../derived/assembly-run.ts';
import type { Hose } from '../../derived/hose-of.ts';
import { type NetworkCylinder, cylinderSubjects } from './cylinders.ts';

/** A cylinder with its hose, which is missing while an end of it is not known. */
export interface CylinderHose extends NetworkCylinder {
  readonly hose: Hose | undefined;
  readonly listsHose: boolean;
  /** Why the hose is not known: a sentence about this cylinder, or about its network. */
  readonly lacks: string;
}

/** Every cylinder with its hose. */
export const hoseSubjects = cylinderSubjects((network, cylinder): Pick<CylinderHose, 'hose' | 'listsHose' | 'lacks'> => {
  const { hoses } = assemblyRunOf(network);
  const { assembly, manifold, source } = network.network;
  const lacks =
    cylinder.outlet_rad === null
      ? 'which way its outlet points is not known.'
      : cylinder.hoseEnd === null
        ? 'where its hose ends is not known.'
        : assembly.some(({ kind }) => kind === 'manifold')
          ? manifold
            ? 'in which direction its hose ends is not known: enter the lengths of the parts before the manifold.'
            : 'where the manifold runs is not known.'
          : source === null
            ? 'where the pipe begins is not chosen.'
            : 'in which direction its hose ends is not known.';
  return { hose: hoses.get(cylinder.id), listsHose: assembly[0]?.kind === 'hose', lacks };
});
