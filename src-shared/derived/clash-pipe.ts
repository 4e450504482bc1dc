import type { Pipe, RefOf } from '../model/plan.ts';
import type { UnitProfile } from '../profile/unit-profile.ts';
import type { Capsule } from './clash.ts';
import type { DerivedNetwork, DerivedPipe } from './derived.ts';
import { remembered } from './remember.ts';

/**
 * A pipe as clash sees it, with nothing of the network around it: it stays the very same object for as long as it, its
 * ends and its unit profile do, whatever else of its network changes.
 */
export interface ClashPipe extends Capsule {
  readonly ref: RefOf<'pipe'>;
  readonly pipe: Pipe;
  readonly length_m: number;
  readonly upright: DerivedPipe['upright'];
  readonly level: string;
  readonly networkName: string;
  readonly profile: UnitProfile | undefined;
  /** Clearance that the unit's manual wants around it [m]; 0 while it is blank. */
  readonly wanted_m: number;
}

const kept = new WeakMap<Pipe, ClashPipe>();

function clashPipeOf({ ref, pipe, from, to, length_m, outside_m, upright }: DerivedPipe, level: string, networkName: string, profile: UnitProfile | undefined): ClashPipe {
  const last = kept.get(pipe);
  if (last && last.from === from && last.to === to && last.profile === profile && last.networkName === networkName && last.level === level && last.ref.network === ref.network) return last;
  const wanted_m = Math.max(0, profile?.limits.pipeClearance_m?.value ?? 0);
  const made: ClashPipe = { ref, pipe, from, to, length_m, upright, outside_m: outside_m + 2 * pipe.insulation_m, level, networkName, profile, wanted_m };
  // What is not frozen could be changed in place.
  if (Object.isFrozen(pipe) && Object.isFrozen(from) && Object.isFrozen(to)) kept.set(pipe, made);
  return made;
}

/** The pipes of a network as clash sees them, their insulation part of their outside. */
export const clashPipesOf = remembered(({ pipes, level, network, profile }: DerivedNetwork): readonly ClashPipe[] =>
  pipes.map((pipe) => clashPipeOf(pipe, level.id, network.name, profile)),
);
