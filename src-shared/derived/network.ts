import { type PlanPoint3, distance3_m, distance_m } from '../geometry/point.ts';
import type { Level, Network, Pipe } from '../model/plan.ts';
import { pipeBore_m, pipeOutside_m } from '../profile/pipe-table.ts';
import type { UnitProfile } from '../profile/unit-profile.ts';
import type { DerivedNetwork, DerivedNozzle, DerivedPipe, Fitting, NetworkFault, PipePath } from './derived.ts';
import { fittingsOf } from './fittings.ts';
import { networkFaultsOf } from './network-faults.ts';
import { derivedNozzleOf } from './nozzles.ts';
import { pipePathsOf } from './pipe-paths.ts';
import { pipeTreeOf } from './pipe-tree.ts';
import { rememberedPart } from './remember.ts';
import type { SpaceIndex } from './space-index.ts';

/** What the pipes of a network are by themselves, whatever stands around them. */
interface PipeWork {
  readonly pipes: readonly Omit<DerivedPipe, 'network'>[];
  readonly fittings: readonly Fitting[];
  readonly paths: readonly PipePath[];
  readonly faults: readonly NetworkFault[];
  readonly totalLength_m: number;
  readonly pipeVolume_m3: number;
}

const uprightOf = (from: PlanPoint3, to: PlanPoint3): DerivedPipe['upright'] => {
  const rise_m = to.z - from.z;
  if (Math.abs(rise_m) <= distance_m(from, to)) return null;
  return rise_m > 0 ? 'riser' : 'drop';
};

const pipeWorkOf = rememberedPart((network: Network): PipeWork => {
  const tree = pipeTreeOf(network);
  const pipes = Object.values(network.pipes).flatMap((pipe: Pipe): Omit<DerivedPipe, 'network'>[] => {
    const isBackward = tree.upstream.get(pipe.id) === pipe.to;
    const from = tree.places.get(isBackward ? pipe.to : pipe.from);
    const to = tree.places.get(isBackward ? pipe.from : pipe.to);
    if (!from || !to) return [];
    return [
      {
        ref: { kind: 'pipe', network: network.id, id: pipe.id },
        pipe,
        from,
        to,
        length_m: distance3_m(from, to),
        outside_m: pipeOutside_m(pipe.size),
        bore_m: pipeBore_m(pipe.size, pipe.schedule),
        upright: uprightOf(from, to),
      },
    ];
  });
  const fittings = fittingsOf(network, tree);
  return {
    pipes,
    fittings,
    paths: pipePathsOf(network, tree, fittings, new Map(pipes.map(({ pipe, length_m }) => [pipe.id, length_m]))),
    faults: networkFaultsOf(network, tree, fittings),
    totalLength_m: pipes.reduce((sum, { length_m }) => sum + length_m, 0),
    pipeVolume_m3: pipes.reduce((sum, { length_m, bore_m }) => sum + (Math.PI / 4) * bore_m ** 2 * length_m, 0),
  };
});

/**
 * Derives a network: its pipes in flow order, fittings, paths and faults, and its nozzles in their spaces.
 * A pipe that lost an end is left out and reported as a fault.
 */
export const derivedNetworkOf = rememberedPart((network: Network, level: Level, profile: UnitProfile | undefined, spaces: SpaceIndex): DerivedNetwork => {
  const work = pipeWorkOf(network);
  const pipes: DerivedPipe[] = [];
  const nozzles: DerivedNozzle[] = [];
  const derived: DerivedNetwork = { ...work, ref: { kind: 'network', id: network.id }, network, level, profile, pipes, nozzles };
  // Written out: spread objects are slow to make by the ten thousand.
  for (const { ref, pipe, from, to, length_m, outside_m, bore_m, upright } of work.pipes) pipes.push({ ref, pipe, from, to, length_m, outside_m, bore_m, upright, network: derived });
  for (const nozzle of Object.values(network.nozzles)) nozzles.push(derivedNozzleOf(nozzle, derived, spaces));
  return derived;
});
