import type { PlaceOnPipe } from '../calculations/design/pipe-web.ts';
import type { DerivedNetwork } from '../derived/derived.ts';
import type { Pipe } from '../model/plan.ts';
import { asBuiltOf } from './as-built.ts';
import { type Piece, type TakeOffOptions, USUAL_TAKE_OFF, piecesOf } from './pieces-of.ts';

/** The place so far down a straight run that begins at a node, as a share of the drawn pipe that it comes to lie on. */
function placeOn(run: readonly Pipe[], start: string, down_m: number, lengths_m: ReadonlyMap<string, number>, drawn_m: ReadonlyMap<string, number>): PlaceOnPipe | undefined {
  let [node, passed_m] = [start, 0];
  for (const { id, from, to } of run) {
    const length_m = lengths_m.get(id) ?? 0;
    if (length_m > 0 && down_m <= passed_m + length_m) {
      const along_m = ((down_m - passed_m) / length_m) * (drawn_m.get(id) ?? 0);
      return { pipe: id, along_m: from === node ? along_m : (drawn_m.get(id) ?? 0) - along_m };
    }
    passed_m += length_m;
    node = from === node ? to : from;
  }
  return undefined;
}

/**
 * Where couplings or joints stand that the plan does not draw: the stock length puts them in the middle of a long run.
 * Measured along the drawn pipe from its `from` end.
 */
export function stockJointsOf(derived: DerivedNetwork, options: TakeOffOptions = USUAL_TAKE_OFF): PlaceOnPipe[] {
  const drawn_m = new Map(derived.pipes.map(({ ref, length_m }) => [ref.id, length_m]));
  const asBuilt = asBuiltOf(derived);
  let [start, down_m] = ['', 0];
  return piecesOf(derived, options, asBuilt).flatMap(({ from, to, pipes, centreToCentre_m }: Piece) => {
    if (from.node !== null) [start, down_m] = [from.node, 0];
    down_m += centreToCentre_m;
    if (to.node !== null) return [];
    const run = pipes.flatMap((id) => derived.network.pipes[id] ?? []);
    return placeOn(run, start, down_m, asBuilt.lengths_m, drawn_m) ?? [];
  });
}
