import { type PlanPoint, type PlanPoint3, distance_m } from '#shared/geometry/point';
import { JOIN_m } from '#shared/commands/sound-value';
import { nearestOnSegment } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import type { Network, Plan, RefOf } from '#shared/model/plan';
import { networksOn } from './level-things.ts';

/** Something of a network under a caught place. */
export interface NetworkHit {
  readonly network: Network;
  readonly at: PlanPoint3;
  readonly kind: 'node' | 'pipe' | 'cylinder';
  /** Node, pipe or cylinder id. */
  readonly id: string;
}

/** Pipes that end at a node. */
export const pipesAt = (network: Network, node: string) => Object.values(network.pipes).filter(({ from, to }) => from === node || to === node);

/** Whether a nozzle hangs at a node. */
export const hasNozzle = (network: Network, node: string): boolean => Object.values(network.nozzles).some((nozzle) => nozzle.node === node);

/** Whether a run stops here in the open: one pipe, no nozzle, not the source. */
export const isOpenEnd = (network: Network, node: string): boolean => network.source !== node && !hasNozzle(network, node) && pipesAt(network, node).length === 1;

/** Heights are proposed in whole steps of this [m]. */
const STEPS_m = { feet: 0.0254, metric: 0.01 } as const;

/**
 * Height proposed for where the pipe of a cylinder begins [m above the floor]: high enough over the valve outlet for its hose to
 * turn back along the wall, or up under a manifold with the parts that stand between; while the bend of the hose is
 * blank, with the stiff parts of the discharge assembly above the outlet. undefined while the profile leaves the outlet blank.
 */
export function pipeBegin_m(plan: Plan, network: Network): number | undefined {
  const { outletHeight_m, hoseBendRadius_m } = plan.profiles[network.profile]?.limits ?? {};
  if (!outletHeight_m) return undefined;
  const { assembly } = network;
  const lengthOf_m = (parts: Network['assembly']): number => parts.filter(({ kind }) => kind !== 'hose').reduce((sum, part) => sum + part.length_m, 0);
  if (!hoseBendRadius_m) return outletHeight_m.value + lengthOf_m(assembly);
  const upright_m = lengthOf_m(assembly.slice(0, Math.max(0, assembly.findIndex(({ kind }) => kind === 'manifold'))));
  const step_m = STEPS_m[plan.settings.lengths];
  return Math.ceil((outletHeight_m.value + Math.max(2 * hoseBendRadius_m.value, hoseBendRadius_m.value + upright_m)) / step_m - 1e-6) * step_m;
}

/** Nodes of the level's networks that lie at a place of the plan, whatever their height. */
export const nodesAt = (plan: Plan, level: string, at: PlanPoint): NetworkHit[] =>
  networksOn(plan, level).flatMap((network) =>
    Object.values(network.nodes)
      .filter((node) => distance_m(node.at, at) < JOIN_m)
      .map((node): NetworkHit => ({ network, at: node.at, kind: 'node', id: node.id })),
  );

/** Pipes under a place of the plan, with the place on them; upright pipes are left to their nodes. */
export const pipesUnder = (plan: Plan, level: string, at: PlanPoint, reach_m = JOIN_m): NetworkHit[] =>
  networksOn(plan, level).flatMap((network) =>
    Object.values(network.pipes).flatMap(({ id, from, to }): NetworkHit[] => {
      const a = network.nodes[from]?.at;
      const b = network.nodes[to]?.at;
      const run_m = a && b ? distance_m(a, b) : 0;
      if (!a || !b || run_m <= SAME_PLACE_m) return [];
      const on = nearestOnSegment(at, { a: { x: a.x, y: a.y }, b: { x: b.x, y: b.y } });
      if (distance_m(on, at) > reach_m) return [];
      const share = distance_m({ x: a.x, y: a.y }, on) / run_m;
      return [{ network, at: { x: on.x, y: on.y, z: a.z + share * (b.z - a.z) }, kind: 'pipe', id }];
    }),
  );

/** Cylinders whose axis lies at a place. */
const cylindersAt = (plan: Plan, level: string, at: PlanPoint) =>
  networksOn(plan, level).flatMap((network) => Object.values(network.cylinders).flatMap((cylinder) => (distance_m(cylinder.at, at) < JOIN_m ? [{ network, cylinder }] : [])));

/** Of several at one place the one nearest to a height. */
const nearestHeight = (hits: readonly NetworkHit[], height_m: number): NetworkHit | undefined =>
  [...hits].sort((a, b) => Math.abs(a.at.z - height_m) - Math.abs(b.at.z - height_m))[0];

/** What a run that begins at a caught place begins on: an open end, a node, a cylinder's outlet, a pipe, in this order. */
export function hitForStart(plan: Plan, level: string, at: PlanPoint, height_m: number): NetworkHit | undefined {
  const nodes = nodesAt(plan, level, at);
  const open = nodes.filter(({ network, id }) => isOpenEnd(network, id));
  const node = nearestHeight(open, height_m) ?? nearestHeight(nodes, height_m);
  if (node) return node;
  const found = cylindersAt(plan, level, at)[0];
  if (found) {
    const { network, cylinder } = found;
    const source = network.source === null ? undefined : network.nodes[network.source];
    const z = pipeBegin_m(plan, network) ?? height_m;
    return { network, at: source?.at ?? { x: cylinder.at.x, y: cylinder.at.y, z }, kind: 'cylinder', id: cylinder.id };
  }
  return nearestHeight(pipesUnder(plan, level, at), height_m);
}

/** What a run that comes to a caught place at a height joins: a node or a pipe. */
export const hitForEnd = (plan: Plan, level: string, at: PlanPoint, height_m: number): NetworkHit | undefined =>
  nearestHeight(nodesAt(plan, level, at), height_m) ?? nearestHeight(pipesUnder(plan, level, at), height_m);

/**
 * A node with those above and below it that upright pipes join to it: what stands on one place of the plan
 * moves together, so that risers and drops stay upright.
 */
export function stackOf(network: Network, node: string): RefOf<'node'>[] {
  const found = new Set([node]);
  const place = network.nodes[node]?.at;
  if (!place) return [];
  for (const id of found) {
    for (const { from, to } of pipesAt(network, id)) {
      const other = from === id ? to : from;
      const at = network.nodes[other]?.at;
      if (at && distance_m(at, place) < JOIN_m) found.add(other);
    }
  }
  return [...found].map((id) => ({ kind: 'node', network: network.id, id }));
}
