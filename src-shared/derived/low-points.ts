import type { PlanPoint3 } from '../geometry/point.ts';
import { ANGLE_SLACK_rad, SAME_PLACE_m } from '../geometry/tolerance.ts';
import { angleBetween3_rad, direction3 } from '../geometry/vector3.ts';
import type { DerivedNetwork } from './derived.ts';
import { type PipeTree, pipeTreeOf } from './pipe-tree.ts';
import { remembered } from './remember.ts';

/** A place that water runs to and cannot leave: one node, or the nodes of a level stretch. */
export interface LowPoint {
  readonly nodes: readonly string[];
  readonly at: readonly PlanPoint3[];
  /** It ends in a cap or plug. */
  readonly deadEnd: string | undefined;
  /** Turn at which pipe from above meets level pipe, so that a drain can go straight down from it. */
  readonly turn: string | undefined;
}

/** A made tee takes up this much of a crooked turn [rad]: one degree. */
const AS_MADE_rad = Math.PI / 180 + ANGLE_SLACK_rad;

/** Nodes that level pipe joins. */
function stretchesOf(tree: PipeTree): string[][] {
  const seen = new Set<string>();
  return tree.order.flatMap((first): string[][] => {
    if (seen.has(first)) return [];
    const stretch = [first];
    seen.add(first);
    for (const node of stretch) {
      const z = tree.places.get(node)?.z ?? 0;
      for (const { other } of tree.legs.get(node) ?? []) {
        if (seen.has(other) || Math.abs((tree.places.get(other)?.z ?? 0) - z) > SAME_PLACE_m) continue;
        seen.add(other);
        stretch.push(other);
      }
    }
    return [stretch];
  });
}

/** Whether a tee fits the turn with its run upright: two pipes, one straight up, the other level. */
function isDrainable(tree: PipeTree, node: string): boolean {
  const at = tree.places.get(node);
  const ways = (tree.legs.get(node) ?? []).flatMap(({ other }) => {
    const there = tree.places.get(other);
    const way = at && there && direction3(at, there, SAME_PLACE_m);
    return way ? [way] : [];
  });
  if (ways.length !== 2) return false;
  const up = { x: 0, y: 0, z: 1 };
  const offs = ways.map((way) => angleBetween3_rad(way, up)).sort((a, b) => a - b);
  return (offs[0] ?? Math.PI) <= AS_MADE_rad && Math.abs((offs[1] ?? 0) - Math.PI / 2) <= AS_MADE_rad;
}

/**
 * The low points of a network: every pipe that leaves them rises, and neither a nozzle nor a drain or dirt trap lets
 * out what gathers there. Where the pipe begins belongs to the discharge assembly and is none.
 */
export const lowPointsOf = remembered(({ network }: DerivedNetwork): readonly LowPoint[] => {
  const tree = pipeTreeOf(network);
  const nozzles = new Set(Object.values(network.nozzles).map(({ node }) => node));
  const letsOut = (node: string): boolean => nozzles.has(node) || ['drain', 'dirt-trap'].includes(network.nodes[node]?.part ?? '');
  return stretchesOf(tree).flatMap((nodes): LowPoint[] => {
    if (nodes.some((node) => node === tree.source || letsOut(node))) return [];
    const within = new Set(nodes);
    const heightOf = (node: string): number => tree.places.get(node)?.z ?? 0;
    const leaving = nodes.flatMap((node) => (tree.legs.get(node) ?? []).flatMap(({ other }) => (within.has(other) ? [] : [heightOf(other) - heightOf(node)])));
    if (leaving.length === 0 || leaving.some((rise_m) => rise_m < 0)) return [];
    const deadEnd = nodes.find((node) => tree.legs.get(node)?.length === 1 && (tree.legs.get(node) ?? []).every(({ other }) => !within.has(other)));
    return [{ nodes, at: nodes.flatMap((node) => tree.places.get(node) ?? []), deadEnd, turn: nodes.find((node) => isDrainable(tree, node)) }];
  });
});
