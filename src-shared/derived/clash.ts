import RBush from 'rbush';
import { type Box, boundsOf, isInside, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint3, planPoint } from '../geometry/point.ts';
import { type Segment3, along3, distanceBetween3_m } from '../geometry/segment3.ts';
import type { Derived, DerivedNetwork, DerivedPipe, Solid } from './derived.ts';
import { remembered } from './remember.ts';
import { solidsByLevel } from './solids.ts';

type Capsule = Pick<DerivedPipe, 'from' | 'to' | 'outside_m'>;
type Prism = Pick<Solid, 'footprint' | 'bottom_m' | 'top_m'>;

/**
 * Clearance between the outside of a pipe and a solid [m]. The pipe is taken with round ends, half its thickness
 * beyond its nodes; the solid is upright from `bottom_m` to `top_m` on its footprint, which may be of any shape.
 * @returns ≥ 0 when apart; negative by as much as the outside reaches in, down to minus half the thickness, which means
 * that the pipe's very axis touches or enters the solid
 */
export const pipeToSolid_m = ({ from, to, outside_m }: Capsule, solid: Prism): number =>
  axisToPrism_m({ a: from, b: to }, solid) - outside_m / 2;

/** Clearance between the outsides of two pipes with round ends [m]; negative by as much as they run into each other. */
export const pipeToPipe_m = (one: Capsule, other: Capsule): number =>
  distanceBetween3_m({ a: one.from, b: one.to }, { a: other.from, b: other.to }) - (one.outside_m + other.outside_m) / 2;

/** Least distance between a straight axis and an upright prism [m]; 0 when they touch or the axis runs inside. */
function axisToPrism_m(axis: Segment3, { footprint, bottom_m, top_m }: Prism): number {
  // Where the axis changes from below the prism to beside it and to above it, as shares of its way.
  const rise = axis.b.z - axis.a.z;
  const shares = [0, 1];
  for (const level_m of [bottom_m, top_m]) {
    const share = rise === 0 ? -1 : (level_m - axis.a.z) / rise;
    if (share > 0 && share < 1) shares.push(share);
  }
  shares.sort((a, b) => a - b);
  let least_m = Infinity;
  for (const [i, from] of shares.slice(0, -1).entries()) {
    const piece = { a: along3(axis, from), b: along3(axis, shares[i + 1] ?? 1) };
    const middle_m = (piece.a.z + piece.b.z) / 2;
    const lift = middle_m < bottom_m ? bottom_m : middle_m > top_m ? top_m : undefined;
    least_m = Math.min(least_m, pieceToPrism_m(piece, footprint, lift));
  }
  return least_m;
}

/**
 * Distance from a piece of an axis that lies wholly below, beside or above a prism.
 * @param lift_m height of the edges it faces [m]; undefined beside the prism, where heights do not count
 */
function pieceToPrism_m(piece: Segment3, footprint: Prism['footprint'], lift_m: number | undefined): number {
  const onto = (p: PlanPoint3, z: number): PlanPoint3 => ({ x: p.x, y: p.y, z });
  const axis: Segment3 = lift_m === undefined ? { a: onto(piece.a, 0), b: onto(piece.b, 0) } : piece;
  const edge_m = lift_m ?? 0;
  let least_m = Infinity;
  for (const { a, b } of sidesOf(footprint)) {
    least_m = Math.min(least_m, distanceBetween3_m(axis, { a: { x: a.x, y: a.y, z: edge_m }, b: { x: b.x, y: b.y, z: edge_m } }));
  }
  // Over or under the footprint only the height counts: least at one end of the part over it. Its other ends lie on the sides.
  for (const p of [axis.a, axis.b]) if (isInside(p, footprint)) least_m = Math.min(least_m, Math.abs(p.z - edge_m));
  return least_m;
}

/** Box around a pipe's axis, wider by a margin on every side. */
const boxOf = ({ from, to }: Capsule, margin_m: number): Box => ({
  minX: Math.min(from.x, to.x) - margin_m,
  minY: Math.min(from.y, to.y) - margin_m,
  maxX: Math.max(from.x, to.x) + margin_m,
  maxY: Math.max(from.y, to.y) + margin_m,
});

/** A solid with its clearance to a pipe. */
export interface NearSolid {
  readonly solid: Solid;
  /** As `pipeToSolid_m` measures it [m]. */
  readonly clearance_m: number;
}

/** Solids of the pipe's level no farther from it than `within_m`, nearest first. */
export function solidsNear({ solids }: Derived, pipe: DerivedPipe, within_m: number): NearSolid[] {
  const near = solidsByLevel(solids).get(pipe.network.level.id)?.near(boxOf(pipe, within_m + pipe.outside_m / 2)) ?? [];
  return near
    .map((solid) => ({ solid, clearance_m: pipeToSolid_m(pipe, solid) }))
    .filter(({ clearance_m }) => clearance_m <= within_m)
    .sort((a, b) => a.clearance_m - b.clearance_m);
}

/** The solid of the pipe's level nearest to it, when it is no farther than `within_m`. */
export const nearestSolid = (derived: Derived, pipe: DerivedPipe, within_m: number): NearSolid | undefined => solidsNear(derived, pipe, within_m)[0];

interface PipeBox extends Box {
  readonly pipe: DerivedPipe;
  readonly order: number;
}

const pipeIndexOf = remembered(({ pipes }: DerivedNetwork): RBush<PipeBox> => {
  const index = new RBush<PipeBox>();
  index.load(pipes.map((pipe, order) => ({ ...boxOf(pipe, pipe.outside_m / 2), pipe, order })));
  return index;
});

interface NetworkBox extends Box {
  readonly network: DerivedNetwork;
  readonly order: number;
}

const networkIndexOf = remembered((networks: Derived['networks']): RBush<NetworkBox> => {
  const index = new RBush<NetworkBox>();
  index.load(
    networks.flatMap((network, order) => {
      if (network.pipes.length === 0) return [];
      const boxes = pipeIndexOf(network).all();
      const corners = boxes.flatMap(({ minX, minY, maxX, maxY }) => [planPoint(minX, minY), planPoint(maxX, maxY)]);
      return [{ ...boundsOf(corners), network, order }];
    }),
  );
  return index;
});

/** A pipe with its clearance to another. */
export interface NearPipe {
  readonly pipe: DerivedPipe;
  /** As `pipeToPipe_m` measures it [m]. */
  readonly clearance_m: number;
}

/**
 * Pipes of the same level, of any network, no farther from a pipe than `within_m`, nearest first. Left out are pipes that
 * share a node with it, and those that a single piece joins to it which is so short that they cannot be farther apart.
 */
export function pipesNear({ networks }: Derived, pipe: DerivedPipe, within_m: number): NearPipe[] {
  const box = boxOf(pipe, within_m + pipe.outside_m / 2);
  const near = networkIndexOf(networks)
    .search(box)
    .filter(({ network }) => network.level.id === pipe.network.level.id)
    .sort((a, b) => a.order - b.order);
  return near
    .flatMap(({ network }) => {
      const joined = network.ref.id === pipe.ref.network ? joinedTo(pipe, within_m) : new Set<string>();
      return pipeIndexOf(network)
        .search(box)
        .sort((a, b) => a.order - b.order)
        .filter((other) => !joined.has(other.pipe.ref.id))
        .map((other) => ({ pipe: other.pipe, clearance_m: pipeToPipe_m(pipe, other.pipe) }));
    })
    .filter(({ clearance_m }) => clearance_m <= within_m)
    .sort((a, b) => a.clearance_m - b.clearance_m);
}

/** Ids of a pipe itself, the pipes that share a node with it, and those that are joined to it by one piece no longer than what must lie between them. */
function joinedTo(pipe: DerivedPipe, within_m: number): Set<string> {
  const atNode = pipesByNode(pipe.network);
  const joined = new Set([pipe.ref.id]);
  for (const node of [pipe.pipe.from, pipe.pipe.to]) {
    for (const beside of atNode.get(node) ?? []) {
      joined.add(beside.pipe.id);
      const far = beside.pipe.from === node ? beside.pipe.to : beside.pipe.from;
      for (const next of atNode.get(far) ?? []) {
        if (beside.length_m <= within_m + (pipe.outside_m + next.outside_m) / 2) joined.add(next.pipe.id);
      }
    }
  }
  return joined;
}

const pipesByNode = remembered(({ pipes }: DerivedNetwork): ReadonlyMap<string, readonly DerivedPipe[]> => {
  const byNode = new Map<string, DerivedPipe[]>();
  for (const pipe of pipes) {
    for (const node of [pipe.pipe.from, pipe.pipe.to]) {
      const others = byNode.get(node);
      if (others) others.push(pipe);
      else byNode.set(node, [pipe]);
    }
  }
  return byNode;
});
