import type { Draft } from 'immer';
import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import type { Network, Plan, Ref } from '../model/plan.ts';
import type { PipeSize } from '../profile/pipe-table.ts';
import { command, refuse } from './command.ts';
import { networkOnLevel, networksOn, newNetwork } from './new-network.ts';
import { type PipeMake, addPipe, findNode, findPipeThrough, joinAt, shareOnPipe } from './pipe-joins.ts';
import { networkOf, nodeIn } from './lookup.ts';
import { JOIN_m, soundPoint3 } from './sound-value.ts';

/** Network that a run belongs to when none is named: the one it touches, else the only one of the level without pipe, else a new one. */
function networkFor(draft: Draft<Plan>, levelId: string, places: readonly PlanPoint3[]): Network {
  const onLevel = networksOn(draft, levelId);
  const touched = onLevel.find((network) => places.some((at) => findNode(network, at) ?? findPipeThrough(network, at)));
  const bare = onLevel.filter(({ pipes }) => Object.keys(pipes).length === 0);
  const found = touched ?? (bare.length === 1 ? bare[0] : undefined);
  return found ? networkOf(draft, found.id) : newNetwork(draft, levelId);
}

/** Nodes that lie on the straight way between two others, in order. */
function nodesBetween(network: Network, from: string, to: string): string[] {
  const [a, b] = [nodeIn(network, from).at, nodeIn(network, to).at];
  return Object.values(network.nodes)
    .flatMap(({ id, at }) => {
      const share = id === from || id === to ? undefined : shareOnPipe(a, b, at);
      return share === undefined ? [] : [{ id, share }];
    })
    .sort((first, second) => first.share - second.share)
    .map(({ id }) => id);
}

/**
 * Draws a run of straight pipes. It joins what it touches: ends and nozzles at its places or on its way, and pipes
 * that one of its places lies on, which are cut there.
 * @param networkId network it belongs to; null for the one it touches, else the one that waits for pipe, else a new one
 * @param places    places in order [m], z above the finished floor; the first is the source of a network that has none
 * Refuses fewer than two places apart, a network on another level, and a run where pipe lies already.
 */
export const addPipeRun = command('Draw pipe', (draft, networkId: string | null, levelId: string, places: readonly PlanPoint3[], size: PipeSize): readonly Ref[] => {
  const apart = places.map(soundPoint3).filter((at, i, all) => i === 0 || distance3_m(at, all[i - 1] ?? at) >= JOIN_m);
  const first = apart[0];
  if (!first || apart.length < 2) return refuse('A pipe needs two places apart.');
  const network = networkId === null ? networkFor(draft, levelId, apart) : networkOnLevel(draft, networkId, levelId);
  const make: PipeMake = { size, schedule: draft.profiles[network.profile]?.schedule ?? '40', material: 'black-steel', joint: 'threaded', insulation_m: 0 };
  const laid = new Set<string>();
  const onSplit = (whole: string, half: string): void => {
    if (laid.has(whole)) laid.add(half);
  };
  let from = joinAt(draft, network, first, onSplit);
  network.source ??= from;
  for (const place of apart.slice(1)) {
    const to = joinAt(draft, network, place, onSplit);
    const stops = [from, ...nodesBetween(network, from, to), to];
    for (const [i, stop] of stops.slice(1).entries()) {
      const id = addPipe(draft, network, stops[i] ?? from, stop, make);
      if (id) laid.add(id);
    }
    from = to;
  }
  if (laid.size === 0) refuse('There is pipe here already.');
  return [...laid].map((id) => ({ kind: 'pipe', network: network.id, id }));
});
