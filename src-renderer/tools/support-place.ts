import { supportClear_m } from '#shared/calculations/design/pipe-web';
import { type Command, sequence } from '#shared/commands/command';
import { editSupport } from '#shared/commands/edit-support';
import { type PlanPoint, type PlanPoint3, distance3_m, distance_m } from '#shared/geometry/point';
import { nearestOnSegment } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { heldPipe } from '#shared/model/held-pipe';
import type { Network, Pipe, Plan, RefOf, Support } from '#shared/model/plan';
import { type NetworkHit, pipesUnder } from './network-hits.ts';

/** Where a support stands on a pipe whose end `a` to `b` runs over the plan: nearest to a place, clear of the fittings at both ends. */
export function placeOnPipe(a: PlanPoint3, b: PlanPoint3, to: PlanPoint): PlanPoint3 {
  const length_m = distance3_m(a, b);
  const on = nearestOnSegment(to, { a: { x: a.x, y: a.y }, b: { x: b.x, y: b.y } });
  const clear = supportClear_m(length_m) / length_m;
  const share = Math.min(1 - clear, Math.max(clear, distance_m({ x: a.x, y: a.y }, on) / distance_m(a, b)));
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share, z: a.z + (b.z - a.z) * share };
}

/** The pipe nearest to a place of the level, and where a support would stand on it; undefined with none in reach. */
export function supportPlaceAt(plan: Plan, level: string, at: PlanPoint, reach_m: number): NetworkHit | undefined {
  const [nearest] = pipesUnder(plan, level, at, reach_m).sort((one, other) => distance_m(one.at, at) - distance_m(other.at, at) || other.at.z - one.at.z);
  const pipe = nearest?.network.pipes[nearest.id];
  const [a, b] = [nearest?.network.nodes[pipe?.from ?? '']?.at, nearest?.network.nodes[pipe?.to ?? '']?.at];
  return nearest && a && b ? { ...nearest, at: placeOnPipe(a, b, at) } : undefined;
}

/** Slides supports along their pipes by as much of a shift as lies along them. */
export function slideSupports(plan: Plan, refs: readonly RefOf<'support'>[], dx: number, dy: number): Command {
  return sequence(
    'Move pipe support',
    refs.flatMap((ref) => {
      const network = plan.networks[ref.network];
      const support = network?.supports[ref.id];
      const held = network && support && heldPipe(network, support.at);
      const [a, b] = [network?.nodes[held?.from ?? '']?.at, network?.nodes[held?.to ?? '']?.at];
      if (!support || !a || !b || distance_m(a, b) <= SAME_PLACE_m) return [];
      const at = placeOnPipe(a, b, { x: support.at.x + dx, y: support.at.y + dy });
      return distance3_m(at, support.at) <= SAME_PLACE_m ? [] : [editSupport(ref, { at })];
    }),
  );
}

/** A support with the pipe that it holds, measured from the nearer end of the pipe. */
export interface StandingSupport {
  readonly support: Support;
  readonly pipe: Pipe;
  readonly end: PlanPoint3;
  readonly far: PlanPoint3;
  readonly length_m: number;
  readonly fromEnd_m: number;
}

/** Where a support stands on its pipe; undefined when it holds none. */
export function standingSupport(network: Network, support: Support): StandingSupport | undefined {
  const pipe = heldPipe(network, support.at);
  const [a, b] = [network.nodes[pipe?.from ?? '']?.at, network.nodes[pipe?.to ?? '']?.at];
  if (!pipe || !a || !b) return undefined;
  const isNearA = distance3_m(support.at, a) <= distance3_m(support.at, b);
  const [end, far] = isNearA ? [a, b] : [b, a];
  return { support, pipe, end, far, length_m: distance3_m(a, b), fromEnd_m: distance3_m(support.at, end) };
}

/** The place so far along a pipe from one of its ends [m]. */
export function alongFrom({ end, far, length_m }: StandingSupport, along_m: number): PlanPoint3 {
  const share = along_m / length_m;
  return { x: end.x + (far.x - end.x) * share, y: end.y + (far.y - end.y) * share, z: end.z + (far.z - end.z) * share };
}
