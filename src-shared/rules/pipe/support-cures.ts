import { suggestedSupports } from '../../calculations/design/suggested-supports.ts';
import type { DerivedNetwork } from '../../derived/derived.ts';
import { remembered } from '../../derived/remember.ts';
import { type PlanPoint3, distance3_m } from '../../geometry/point.ts';
import { along3 } from '../../geometry/segment3.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import { stockJointsOf } from '../../take-off/stock-joints.ts';
import type { Cure } from '../finding.ts';

const suggested = remembered((shape: DerivedNetwork, basis: BasisOfDesign) => suggestedSupports(shape, basis, stockJointsOf(shape)));
/** Kept back from a limit, so that rounding cannot break it [m]. */
const MARGIN_m = 0.001;

/** Puts the supports of the table in place of all that a network has; undefined while no pipe leads to a nozzle. */
export function supportsByTable(shape: DerivedNetwork, basis: BasisOfDesign): Cure | undefined {
  if (shape.paths.length === 0) return undefined;
  const places = suggested(shape, basis);
  return places.length === 0 ? undefined : { kind: 'place-supports', text: 'Place all supports anew, by the table', network: shape.ref.id, places };
}

/** Where a support is missing: on a pipe, near one of its ends. */
export interface BareSpot {
  readonly pipe: string;
  readonly node: string;
  /** Within this of the node [m]. */
  readonly within_m: number;
}

/** Puts a rigid support at each spot, on the middle of its pipe or nearer to the node; undefined when a pipe is lost. */
export function supportsBeside(shape: DerivedNetwork, spots: readonly BareSpot[], text: string): Cure | undefined {
  const places = spots.flatMap(({ pipe: id, node, within_m }): PlanPoint3[] => {
    const pipe = shape.pipes.find(({ ref }) => ref.id === id);
    const at = shape.network.nodes[node]?.at;
    if (!pipe || !at || pipe.length_m === 0) return [];
    const isStart = distance3_m(pipe.from, at) <= distance3_m(pipe.to, at);
    const away_m = Math.min(pipe.length_m / 2, within_m - MARGIN_m);
    return [along3(isStart ? { a: pipe.from, b: pipe.to } : { a: pipe.to, b: pipe.from }, away_m / pipe.length_m)];
  });
  const apart = places.filter((at, i) => places.findIndex((other) => distance3_m(at, other) <= MARGIN_m) === i);
  return apart.length === 0 ? undefined : { kind: 'add-supports', text, network: shape.ref.id, places: apart };
}
