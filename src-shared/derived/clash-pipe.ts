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
  readonly level: string;
  readonly networkName: string;
  readonly profile: UnitProfile | undefined;
  /** Clearance that the unit's manual wants around it [m]; 0 while it is blank. */
  readonly wanted_m: number;
}

/** Pipe that is not frozen could be changed in place: it is never kept. */
const isKeepable = ({ pipe, from, to }: ClashPipe): boolean => Object.isFrozen(pipe) && Object.isFrozen(from) && Object.isFrozen(to);

/** The pipes of a network as they were last asked for, and what each of them was made of. */
interface LastPipes {
  readonly around: Pick<ClashPipe, 'level' | 'networkName' | 'profile'>;
  readonly made: readonly ClashPipe[];
  readonly pipes: Pipe[];
  readonly from: ClashPipe['from'][];
  readonly to: ClashPipe['to'][];
}

/** By network id, as it was last when all of its pipe could be kept. */
const lastOf = new Map<string, LastPipes>();

/** The pipes of a network as clash sees them, their insulation part of their outside: the very same list while none of them changes. */
export const clashPipesOf = remembered(({ pipes, level, network, profile }: DerivedNetwork): readonly ClashPipe[] => {
  const wanted_m = Math.max(0, profile?.limits.pipeClearance_m?.value ?? 0);
  const around = { level: level.id, networkName: network.name, profile };
  let areKept = true;
  let byPart: ReadonlyMap<Pipe, ClashPipe> | undefined;
  const clashPipe = ({ ref, pipe, from, to, length_m, outside_m }: DerivedPipe): ClashPipe => {
    // Where pipe has come or gone, what is behind it has moved up or down the list.
    if (last && last.made.length !== pipes.length) {
      byPart ??= new Map(last.made.map((before) => [before.pipe, before]));
      const before = byPart.get(pipe);
      if (before?.from === from && before.to === to) return before;
    }
    const made: ClashPipe = { ref, pipe, from, to, length_m, outside_m: outside_m + 2 * pipe.insulation_m, level: level.id, networkName: network.name, profile, wanted_m };
    areKept &&= isKeepable(made);
    return made;
  };
  const known = lastOf.get(network.id);
  const last = known && known.around.level === level.id && known.around.networkName === network.name && known.around.profile === profile ? known : undefined;
  if (last && last.made.length === pipes.length) {
    // Nearly always a pipe stands where it stood, which is faster to see than to look it up.
    let made: ClashPipe[] | undefined;
    for (let i = 0; i < pipes.length; i += 1) {
      const each = pipes[i];
      if (!each || (each.pipe === last.pipes[i] && each.from === last.from[i] && each.to === last.to[i])) continue;
      made ??= last.made.slice();
      made[i] = clashPipe(each);
      last.pipes[i] = each.pipe;
      last.from[i] = each.from;
      last.to[i] = each.to;
    }
    if (!made) return last.made;
    // What was last put together is written over: it goes with the new list, or is forgotten.
    if (areKept) lastOf.set(network.id, { ...last, made });
    else lastOf.delete(network.id);
    return made;
  }
  const made = pipes.map(clashPipe);
  if (areKept) lastOf.set(network.id, { around, made, pipes: pipes.map(({ pipe }) => pipe), from: pipes.map(({ from }) => from), to: pipes.map(({ to }) => to) });
  return made;
});
