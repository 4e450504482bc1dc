import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { PlanPoint3 } from '../geometry/point.ts';
import type { DerivedNetwork, DerivedPipe, Fitting } from './derived.ts';
import { pipeTreeOf } from './pipe-tree.ts';
import { remembered } from './remember.ts';

/** A pipe and the one that feeds it. */
export interface Feed {
  readonly inlet: DerivedPipe;
  readonly pipe: DerivedPipe;
  /** Where they meet. */
  readonly at: PlanPoint3;
}

/** A tee with the straight pipe that leads to it. */
export interface TeeRun {
  readonly tee: Fitting;
  /** From the last fitting before the tee, or from the source [m]; 0 for a tee at the source. */
  readonly straight_m: number;
  /** Bore of the pipe at the tee [m]. */
  readonly bore_m: number;
}

/** What follows from the order in which the agent passes the pipes of a network. */
export interface FlowOrder {
  /** Every pipe that another feeds; what the source does not reach is left out. */
  readonly feeds: readonly Feed[];
  /** Every tee and cross that the agent reaches. */
  readonly teeRuns: readonly TeeRun[];
  /** Falling pipes, those that fall on from each other without a fitting between them together. */
  readonly drops: readonly (readonly DerivedPipe[])[];
}

/** Follows the agent through the pipes of a network. */
export const flowOrderOf = remembered(({ network, pipes, fittings }: DerivedNetwork): FlowOrder => {
  const tree = pipeTreeOf(network);
  const byId = new Map(pipes.map((pipe) => [pipe.pipe.id, pipe]));
  const fitted = new Set(fittings.map(({ node }) => node));
  const inletOf = (node: string): DerivedPipe | undefined => byId.get(tree.inlets.get(node)?.pipe.id ?? '');
  const outletsOf = (node: string): DerivedPipe[] => {
    const outlets: DerivedPipe[] = [];
    for (const { pipe } of tree.legs.get(node) ?? []) {
      const outlet = tree.upstream.get(pipe.id) === node ? byId.get(pipe.id) : undefined;
      if (outlet) outlets.push(outlet);
    }
    return outlets;
  };

  const feeds: Feed[] = [];
  for (const node of tree.reached) {
    const inlet = inletOf(node);
    const at = tree.places.get(node);
    if (inlet && at) for (const pipe of outletsOf(node)) feeds.push({ inlet, pipe, at });
  }

  const teeRuns = fittings.flatMap((tee): TeeRun[] => {
    if ((tee.kind !== 'tee' && tee.kind !== 'cross') || !tree.reached.has(tee.node)) return [];
    let straight_m = 0;
    for (let inlet = tree.inlets.get(tee.node); inlet; inlet = tree.inlets.get(inlet.other)) {
      straight_m += byId.get(inlet.pipe.id)?.length_m ?? 0;
      if (fitted.has(inlet.other)) break;
    }
    const first = byId.get(tee.pipes[0] ?? '');
    return first ? [{ tee, straight_m, bore_m: first.bore_m }] : [];
  });

  const goesOn = new Map<DerivedPipe, DerivedPipe>();
  const fallsFrom = ({ from, to, upright }: DerivedPipe): boolean => upright === 'drop' && from.z - to.z > SAME_PLACE_m;
  for (const node of tree.order) {
    const inlet = fitted.has(node) ? undefined : inletOf(node);
    if (!inlet || !fallsFrom(inlet)) continue;
    const [outlet, ...others] = outletsOf(node);
    if (outlet && others.length === 0 && fallsFrom(outlet)) goesOn.set(inlet, outlet);
  }
  const continued = new Set(goesOn.values());
  const drops = pipes
    .filter((pipe) => fallsFrom(pipe) && !continued.has(pipe))
    .map((first) => {
      const drop = [first];
      for (let next = goesOn.get(first); next; next = goesOn.get(next)) drop.push(next);
      return drop;
    });
  return { feeds, teeRuns, drops };
});
