import type { DerivedNetwork } from '../derived/derived.ts';
import { type PipeTree, pipeTreeOf } from '../derived/pipe-tree.ts';
import { rememberedPart } from '../derived/remember.ts';
import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { ANGLE_SLACK_rad, LENGTH_SLACK_m, SAME_PLACE_m } from '../geometry/tolerance.ts';
import { type Direction3, angleBetween3_rad, direction3 } from '../geometry/vector3.ts';
import type { Network } from '../model/plan.ts';

/** What the length of a pipe rests on: the drawing, its own measurement, or that it takes up what another measured otherwise. */
export type LengthBasis = 'drawn' | 'measured' | 'follows';

/** A nozzle that is not where it is drawn, since no pipe before it takes up what was measured. */
export interface MovedNozzle {
  /** Nozzle id. */
  readonly nozzle: string;
  readonly from: PlanPoint3;
  readonly to: PlanPoint3;
  readonly by_m: number;
}

/** A network laid out with the pipes that were measured on site. */
export interface AsBuilt {
  /** Place of every node, by id. */
  readonly places: ReadonlyMap<string, PlanPoint3>;
  /** Centre to centre by pipe id [m]; pipes that are broken are left out. */
  readonly lengths_m: ReadonlyMap<string, number>;
  readonly bases: ReadonlyMap<string, LengthBasis>;
  readonly moved: readonly MovedNozzle[];
  /** Measured pipes that could not be laid out, as the network has a ring or the pipe no drawn length: by id. */
  readonly unused: readonly string[];
}

const shifted = (at: PlanPoint3, way: Direction3, by_m: number): PlanPoint3 => ({ x: at.x + way.x * by_m, y: at.y + way.y * by_m, z: at.z + way.z * by_m });

/** 1 for two pipes that run the same way, −1 for opposite ways, 0 for any other. */
function parallel(a: Direction3, b: Direction3): -1 | 0 | 1 {
  const turn_rad = angleBetween3_rad(a, b);
  if (turn_rad <= ANGLE_SLACK_rad * 10) return 1;
  return Math.PI - turn_rad <= ANGLE_SLACK_rad * 10 ? -1 : 0;
}

/** Direction of every pipe along the flow, as drawn. */
function waysOf(tree: PipeTree): ReadonlyMap<string, Direction3> {
  const ways = new Map<string, Direction3>();
  for (const [node, legs] of tree.legs) {
    for (const { pipe, other } of legs) {
      const [a, b] = [tree.places.get(node), tree.places.get(other)];
      const way = tree.upstream.get(pipe.id) === node && a && b ? direction3(a, b, SAME_PLACE_m) : undefined;
      if (way) ways.set(pipe.id, way);
    }
  }
  return ways;
}

const NO_WAYS: ReadonlyMap<string, Direction3> = new Map();

/**
 * Lays a network out as it was measured. A measured pipe keeps its end toward the source; what hangs on its other end
 * shifts along it. On every way on from there the next pipe that runs parallel to it, is not measured itself and is long
 * enough takes the difference up, so that what follows stays where it is drawn. Where none does, the nozzles at the end of
 * that way move. Only lengths change, never a direction.
 */
export const asBuiltOf = ({ network }: Pick<DerivedNetwork, 'network'>): AsBuilt => builtOf(network);

const builtOf = rememberedPart((network: Network): AsBuilt => {
  const tree = pipeTreeOf(network);
  const isMeasured = Object.values(network.pipes).some(({ measured_m }) => measured_m !== null);
  const ways = isMeasured ? waysOf(tree) : NO_WAYS;
  const places = new Map(tree.places);
  const lengths = new Map<string, number>();
  const bases = new Map<string, LengthBasis>();
  const isBroken = new Set(tree.broken.map(({ id }) => id));
  for (const { id, from, to } of Object.values(network.pipes)) {
    const [a, b] = [tree.places.get(from), tree.places.get(to)];
    if (!a || !b || isBroken.has(id)) continue;
    lengths.set(id, distance3_m(a, b));
    bases.set(id, 'drawn');
  }
  const leaving = (node: string) => (tree.legs.get(node) ?? []).filter(({ pipe }) => tree.upstream.get(pipe.id) === node);

  const unused: string[] = [];
  for (const node of isMeasured ? tree.order : []) {
    for (const { pipe, other } of leaving(node)) {
      const way = ways.get(pipe.id);
      if (pipe.measured_m === null) continue;
      if (!way || tree.closing.length > 0) {
        unused.push(pipe.id);
        continue;
      }
      const by_m = pipe.measured_m - (lengths.get(pipe.id) ?? 0);
      bases.set(pipe.id, 'measured');
      lengths.set(pipe.id, pipe.measured_m);
      if (by_m === 0) continue;
      const shifting = [other];
      for (let at = shifting.pop(); at !== undefined; at = shifting.pop()) {
        const here = places.get(at);
        if (here) places.set(at, shifted(here, way, by_m));
        for (const leg of leaving(at)) {
          const onward = ways.get(leg.pipe.id);
          const along = leg.pipe.measured_m === null && onward ? parallel(way, onward) : 0;
          const left_m = (lengths.get(leg.pipe.id) ?? 0) - along * by_m;
          if (along === 0 || left_m <= SAME_PLACE_m) shifting.push(leg.other);
          else {
            lengths.set(leg.pipe.id, left_m);
            bases.set(leg.pipe.id, 'follows');
          }
        }
      }
    }
  }

  const moved = Object.values(network.nozzles).flatMap(({ id, node }): MovedNozzle[] => {
    const [from, to] = [tree.places.get(node), places.get(node)];
    const by_m = from && to ? distance3_m(from, to) : 0;
    return from && to && by_m > LENGTH_SLACK_m ? [{ nozzle: id, from, to, by_m }] : [];
  });
  return { places, lengths_m: lengths, bases, moved, unused };
});
