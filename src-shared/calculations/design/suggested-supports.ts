import type { DerivedNetwork } from '../../derived/derived.ts';
import { pipeTreeOf } from '../../derived/pipe-tree.ts';
import { type PlanPoint3, distance3_m } from '../../geometry/point.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { Support } from '../../model/plan.ts';
import { type PlaceOnPipe, pipeWebOf } from './pipe-web.ts';
import { SupportWalk } from './support-walk.ts';
import { supportsSuffice } from './supports-suffice.ts';

/** A support that a network should have. */
export type SuggestedSupport = Readonly<Pick<Support, 'kind' | 'capacity_N'>> & { readonly at: PlanPoint3 };

/** A support stands where another stood [m]. */
const SAME_SUPPORT_m = 0.01;

/**
 * Rigid supports for the whole pipe of a network: no free stretch longer than the span of the chosen table, one within
 * 0.305 m of each turn and one near each nozzle on its own pipe, clear of fittings where the pipe is long enough, and of couplings on the way. None of them can be
 * left out. What they bear is not known, but for one that stands where a rigid one stood.
 * Where pipe is too short for any of this the supports come as near as they can.
 * @param joints  couplings that the stock length puts where the plan draws no fitting
 */
export function suggestedSupports(derived: DerivedNetwork, basis: BasisOfDesign, joints: readonly PlaceOnPipe[]): SuggestedSupport[] {
  const web = pipeWebOf(derived, basis, joints);
  const tree = pipeTreeOf(derived.network);
  const walk = new SupportWalk(web, tree);
  for (const node of tree.order) if (!tree.inlets.has(node)) walk.belowNode(node);

  let places: readonly PlaceOnPipe[] = walk.places;
  if (supportsSuffice(web, tree, places)) {
    for (const each of walk.places) {
      const fewer = places.filter((other) => other !== each);
      if (supportsSuffice(web, tree, fewer)) places = fewer;
    }
  }
  const stood = Object.values(derived.network.supports);
  return places.flatMap(({ pipe, along_m }): SuggestedSupport[] => {
    const on = web.pipes.get(pipe);
    if (!on) return [];
    const share = along_m / on.length_m;
    const between = (a: number, b: number): number => a + (b - a) * share;
    const at = { x: between(on.a.x, on.b.x), y: between(on.a.y, on.b.y), z: between(on.a.z, on.b.z) };
    const same = stood.find((support) => support.kind === 'rigid' && distance3_m(support.at, at) <= SAME_SUPPORT_m);
    return [{ at, kind: 'rigid', capacity_N: same?.capacity_N ?? null }];
  });
}
