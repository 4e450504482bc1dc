import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { type Direction3, direction3 } from '../geometry/vector3.ts';
import type { Network, Pipe } from '../model/plan.ts';
import { fittingsOf } from './fittings.ts';
import { pipeTreeOf } from './pipe-tree.ts';

/** The smallest move of a place that leaves no turn there, nor at its neighbours, that cannot be built. */
export interface OddAngleCure {
  readonly to: PlanPoint3;
  /** What the turn becomes. */
  readonly becomes: 'elbow-90' | 'elbow-45' | 'straight' | 'tee';
}

const minus = (a: PlanPoint3, b: PlanPoint3): Direction3 => ({ x: a.x - b.x, y: a.y - b.y, z: a.z - b.z });
const dot = (u: Direction3, v: Direction3): number => u.x * v.x + u.y * v.y + u.z * v.z;
const along = (from: PlanPoint3, u: Direction3, length_m: number): PlanPoint3 => ({ x: from.x + u.x * length_m, y: from.y + u.y * length_m, z: from.z + u.z * length_m });

/** A neighbour that a place is moved toward or away from must stay this far off [m]. */
const LEAST_m = 0.01;

/**
 * Places on the line of one leg from which the other leg leaves at 90° or 45°: the leg keeps its direction, so that
 * the fitting at its far end stays what it is.
 */
function onLine(anchor: PlanPoint3, here: PlanPoint3, other: PlanPoint3): PlanPoint3[] {
  const u = direction3(anchor, here, SAME_PLACE_m);
  if (!u) return [];
  const to = minus(other, anchor);
  const square_m = dot(to, u);
  const aside_m = Math.sqrt(Math.max(0, dot(to, to) - square_m * square_m));
  return [square_m, square_m - aside_m, square_m + aside_m].filter((at_m) => at_m > LEAST_m).map((at_m) => along(anchor, u, at_m));
}

/** The place nearest to a bend from which both neighbours are seen at an angle: on the arc over the line between them. */
function onArc(a: PlanPoint3, here: PlanPoint3, c: PlanPoint3, seen_rad: number): PlanPoint3[] {
  const u = direction3(a, c, SAME_PLACE_m);
  if (!u) return [];
  const chord_m = distance3_m(a, c);
  const middle = along(a, u, chord_m / 2);
  const off = minus(here, along(a, u, dot(minus(here, a), u)));
  const off_m = Math.sqrt(dot(off, off));
  if (off_m <= SAME_PLACE_m) return [];
  const side = { x: off.x / off_m, y: off.y / off_m, z: off.z / off_m };
  const radius_m = chord_m / 2 / Math.sin(seen_rad);
  // Inscribed angle: the centre lies on the far side of the chord for an obtuse angle.
  const centre = along(middle, side, chord_m / 2 / Math.tan(seen_rad));
  const out = direction3(centre, here, SAME_PLACE_m);
  return out ? [along(centre, out, radius_m)] : [];
}

/** The foot of a bend on the straight line between its neighbours: there it turns no more. */
function onChord(a: PlanPoint3, here: PlanPoint3, c: PlanPoint3): PlanPoint3[] {
  const u = direction3(a, c, SAME_PLACE_m);
  return u ? [along(a, u, dot(minus(here, a), u))] : [];
}

/** The pipes around a place, as far as a move of it changes an angle. */
function around(network: Network, node: string): Network {
  const near = new Set([node]);
  const touches = ({ from, to }: Pipe): boolean => near.has(from) || near.has(to);
  for (const pipe of Object.values(network.pipes)) if (pipe.from === node || pipe.to === node) near.add(pipe.from).add(pipe.to);
  const pipes = Object.fromEntries(Object.entries(network.pipes).filter(([, pipe]) => touches(pipe)));
  const kept = new Set(Object.values(pipes).flatMap(({ from, to }) => [from, to]));
  return { ...network, pipes, nodes: Object.fromEntries(Object.entries(network.nodes).filter(([id]) => kept.has(id))), source: network.source !== null && kept.has(network.source) ? network.source : null };
}

const fittingsAt = (network: Network, node: string, at: PlanPoint3) => {
  const place = network.nodes[node];
  const moved = place ? { ...network, nodes: { ...network.nodes, [node]: { ...place, at } } } : network;
  return fittingsOf(moved, pipeTreeOf(moved));
};

/**
 * The nearest place at which a turn that no fitting makes becomes one that is made: 90°, 45°, or none at all.
 * Only places are taken that leave fewer such turns at the place and its neighbours, and none at the place itself.
 * @param node where the odd bend is
 * @returns undefined when no move of this one place does it
 */
export function oddAngleCure(network: Network, node: string): OddAngleCure | undefined {
  const here = network.nodes[node]?.at;
  if (!here || network.source === node) return undefined;
  const local = around(network, node);
  const others = Object.values(local.pipes).flatMap(({ from, to }) => (from === node ? [to] : to === node ? [from] : [])).flatMap((id) => local.nodes[id]?.at ?? []);
  const odd = (at: PlanPoint3): number => fittingsAt(local, node, at).filter(({ kind }) => kind === 'odd-bend').length;
  const now = odd(here);
  const pairs = others.flatMap((anchor) => others.flatMap((other) => (other === anchor ? [] : [{ anchor, other }])));
  const straight = pairs.flatMap(({ anchor, other }) => [...onLine(anchor, here, other), ...(others.length === 2 ? onChord(anchor, here, other) : [])]);
  // On the arc neither pipe keeps its direction: only where nothing else does it.
  const askew = others.length === 2 ? pairs.flatMap(({ anchor, other }) => [Math.PI / 2, (3 * Math.PI) / 4].flatMap((seen_rad) => onArc(anchor, here, other, seen_rad))) : [];
  const places = [...straight.map((at) => ({ at, rank: 0 })), ...askew.map((at) => ({ at, rank: 1 }))];
  const best = places
    .filter(({ at }) => others.every((other) => distance3_m(at, other) > LEAST_m))
    .map(({ at, rank }) => ({ at, rank, away_m: distance3_m(here, at), left: odd(at) }))
    .filter(({ at, left }) => left < now && fittingsAt(local, node, at).every((fitting) => fitting.node !== node || fitting.kind !== 'odd-bend'))
    .sort((a, b) => a.left - b.left || a.rank - b.rank || a.away_m - b.away_m)[0];
  if (!best) return undefined;
  const made = fittingsAt(local, node, best.at).find((fitting) => fitting.node === node && fitting.kind !== 'reducer')?.kind;
  return { to: best.at, becomes: made === 'elbow-90' || made === 'elbow-45' ? made : made === 'tee' || made === 'cross' ? 'tee' : 'straight' };
}

/** How a crooked piece is laid square: on in the direction of the pipe before it, then across it [m]. */
export interface TwoPieces {
  readonly onward_m: number;
  readonly across_m: number;
}

/**
 * The two square pieces in place of the one that leaves a bend at an angle no fitting makes.
 * @param pipes of the bend, the one toward the source first
 * @returns undefined where a place is lost, or where the pipe turns back
 */
export function twoPiecesFor(network: Network, node: string, pipes: readonly string[]): TwoPieces | undefined {
  const endOf = (id: string | undefined): PlanPoint3 | undefined => {
    const pipe = network.pipes[id ?? ''];
    return network.nodes[(pipe?.from === node ? pipe.to : pipe?.from) ?? '']?.at;
  };
  const here = network.nodes[node]?.at;
  const [before, after] = [endOf(pipes[0]), endOf(pipes[1])];
  const u = here && before && direction3(before, here, SAME_PLACE_m);
  if (!here || !after || !u) return undefined;
  const onward_m = dot(minus(after, here), u);
  const across_m = Math.sqrt(Math.max(0, distance3_m(here, after) ** 2 - onward_m ** 2));
  return onward_m > LEAST_m && across_m > LEAST_m ? { onward_m, across_m } : undefined;
}
