import type { PlanPoint3 } from '../geometry/point.ts';
import type { Network, Pipe } from '../model/plan.ts';
import { sameList } from './remember.ts';

/** A pipe as seen from one of its nodes. */
export interface Leg {
  readonly pipe: Pipe;
  /** Node at the other end. */
  readonly other: string;
}

/** How the pipes of a network hang together. */
export interface PipeTree {
  readonly places: ReadonlyMap<string, PlanPoint3>;
  /** Legs of every node that has some, in the order of the plan. */
  readonly legs: ReadonlyMap<string, readonly Leg[]>;
  /** Pipes that lost an end, or whose ends are one node. */
  readonly broken: readonly Pipe[];
  /** Node where the agent enters; undefined when none is set or it is lost. */
  readonly source: string | undefined;
  /** Nodes that the agent reaches. */
  readonly reached: ReadonlySet<string>;
  /** Nodes from the source outwards; then the parts it does not reach, each from its first node. */
  readonly order: readonly string[];
  /** The leg of a node toward the source, or toward the first node of its part. */
  readonly inlets: ReadonlyMap<string, Leg>;
  /** Upstream node of every pipe that is not broken. */
  readonly upstream: ReadonlyMap<string, string>;
  /** Pipes that close a loop. */
  readonly closing: readonly Pipe[];
}

/** How pipes hang together, wherever their nodes are. */
type Joints = Omit<PipeTree, 'places'>;

function jointsOf({ pipes, source: entry }: Network, places: PipeTree['places']): Joints {
  const legs = new Map<string, Leg[]>();
  const broken: Pipe[] = [];
  const join = (node: string, leg: Leg): void => {
    const joined = legs.get(node);
    if (joined) joined.push(leg);
    else legs.set(node, [leg]);
  };
  for (const pipe of Object.values(pipes)) {
    if (pipe.from === pipe.to || !places.has(pipe.from) || !places.has(pipe.to)) broken.push(pipe);
    else {
      join(pipe.from, { pipe, other: pipe.to });
      join(pipe.to, { pipe, other: pipe.from });
    }
  }

  const source = entry !== null && places.has(entry) ? entry : undefined;
  const order: string[] = [];
  const seen = new Set<string>();
  const inlets = new Map<string, Leg>();
  const upstream = new Map<string, string>();
  const closing: Pipe[] = [];
  const walk = (root: string): void => {
    if (seen.has(root)) return;
    let next = order.length;
    order.push(root);
    seen.add(root);
    for (let node = order[next]; node !== undefined; node = order[next]) {
      next += 1;
      for (const { pipe, other } of legs.get(node) ?? []) {
        if (upstream.has(pipe.id)) continue;
        upstream.set(pipe.id, node);
        if (seen.has(other)) closing.push(pipe);
        else {
          seen.add(other);
          order.push(other);
          inlets.set(other, { pipe, other: node });
        }
      }
    }
  };
  if (source !== undefined) walk(source);
  const reached = new Set(order);
  for (const node of legs.keys()) walk(node);
  return { legs, broken, source, reached, order, inlets, upstream, closing };
}

/** The joints of pipes as they were last walked, with what they followed from besides. */
interface LastJoints {
  readonly nodes: readonly string[];
  readonly source: string | null;
  readonly joints: Joints;
}

const lastJoints = new WeakMap<Network['pipes'], LastJoints>();

/** While nodes only move, their pipes hang together as they did. */
function keptJointsOf(network: Network, places: PipeTree['places']): Joints {
  const last = lastJoints.get(network.pipes);
  const nodes = [...places.keys()];
  if (last && last.source === network.source && sameList(last.nodes, nodes) === last.nodes) return last.joints;
  const joints = jointsOf(network, places);
  lastJoints.set(network.pipes, { nodes, source: network.source, joints });
  return joints;
}

const lastTrees = new WeakMap<Network['nodes'], Pick<Network, 'pipes' | 'source'> & { readonly tree: PipeTree }>();

/** Walks a network from its source outwards, nearest nodes first. The tree of a frozen network is walked once. */
export function pipeTreeOf(network: Network): PipeTree {
  const { nodes, pipes, source } = network;
  const isKeepable = Object.isFrozen(nodes) && Object.isFrozen(pipes);
  const last = isKeepable ? lastTrees.get(nodes) : undefined;
  if (last && last.pipes === pipes && last.source === source) return last.tree;
  const places = new Map(Object.values(nodes).map(({ id, at }) => [id, at]));
  if (!isKeepable) return { places, ...jointsOf(network, places) };
  const tree = { places, ...keptJointsOf(network, places) };
  lastTrees.set(nodes, { pipes, source, tree });
  return tree;
}

/** The way from a node up to the source, or to the first node of its part: the node itself first. */
export function wayUp(tree: PipeTree, node: string): { readonly nodes: string[]; readonly pipes: string[] } {
  const nodes = [node];
  const pipes: string[] = [];
  for (let inlet = tree.inlets.get(node); inlet; inlet = tree.inlets.get(inlet.other)) {
    pipes.push(inlet.pipe.id);
    nodes.push(inlet.other);
  }
  return { nodes, pipes };
}
