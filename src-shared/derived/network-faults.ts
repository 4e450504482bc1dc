import RBush from 'rbush';
import type { Box } from '../geometry/outline.ts';
import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { distanceToSegment3_m } from '../geometry/segment3.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Network, Pipe } from '../model/plan.ts';
import { pipeOutside_m } from '../profile/pipe-table.ts';
import type { Fitting, NetworkFault } from './derived.ts';
import { type PipeTree, wayUp } from './pipe-tree.ts';

/**
 * Why a network is not one tree that its source feeds: lost or missing source, loops, parts that no agent reaches,
 * gaps, open ends, nozzles that hang at no pipe end; last, turns that no fitting makes. An empty list is a sound network.
 */
export function networkFaultsOf(network: Network, tree: PipeTree, fittings: readonly Fitting[] = []): NetworkFault[] {
  const at = (nodes: Iterable<string>): PlanPoint3[] => [...nodes].flatMap((node) => tree.places.get(node) ?? []);
  const gaps = gapsOf(network, tree);
  const gapNodes = new Set(gaps.flatMap(({ nodes }) => nodes));
  return [
    ...brokenFaults(tree),
    ...sourceFaults(network, tree, at),
    ...loopFaults(tree, at),
    ...unreachableFaults(tree, at),
    ...gaps.map(({ fault }) => fault),
    ...openEndFaults(network, tree, at, gapNodes),
    ...nozzleFaults(network, tree, at),
    ...oddBendFaults(fittings),
  ];
}

const degreesText = (angle_rad: number): string => `${Number(((angle_rad * 180) / Math.PI).toFixed(1))}°`;

/** Turns that no fitting makes: a bend that is neither 90° nor 45°, a leg of a tee that is neither straight on nor square. */
const oddBendFaults = (fittings: readonly Fitting[]): NetworkFault[] =>
  fittings.flatMap(({ kind, node, at, turn_rad, pipes }): NetworkFault[] => {
    if (kind !== 'odd-bend') return [];
    const text = pipes.length > 1 ? `Turn ${degreesText(turn_rad)}: no fitting is made for it.` : `A leg of the tee here is ${degreesText(turn_rad)} off: no tee is made for it.`;
    return [{ kind: 'unbuildable', text, at: [at], pipes, node }];
  });

type PlacesOf = (nodes: Iterable<string>) => PlanPoint3[];

const brokenFaults = (tree: PipeTree): NetworkFault[] =>
  tree.broken.map(({ id, from, to }) => ({
    kind: 'gap',
    text: from === to ? 'A pipe begins and ends at the same place.' : 'A pipe has lost one of its ends.',
    at: [from, to].flatMap((node) => tree.places.get(node) ?? []),
    pipes: [id],
  }));

function sourceFaults(network: Network, tree: PipeTree, at: PlacesOf): NetworkFault[] {
  if (tree.source === undefined) {
    const text = tree.legs.size === 0 ? 'No pipe begins at the cylinders yet.' : 'No pipe end is joined to the cylinders.';
    return [{ kind: 'no-source', text, at: at(tree.legs.keys()), pipes: Object.keys(network.pipes) }];
  }
  if (tree.legs.has(tree.source)) return [];
  return [{ kind: 'open-end', text: 'No pipe leaves the outlet of the cylinders.', at: at([tree.source]), pipes: [] }];
}

const loopFaults = (tree: PipeTree, at: PlacesOf): NetworkFault[] =>
  tree.closing.map((pipe) => {
    const one = wayUp(tree, pipe.from);
    const other = wayUp(tree, pipe.to);
    while (one.nodes.length > 1 && other.nodes.length > 1 && one.nodes.at(-2) === other.nodes.at(-2)) {
      for (const way of [one, other]) {
        way.nodes.pop();
        way.pipes.pop();
      }
    }
    return {
      kind: 'loop',
      text: 'Pipes form a closed loop.',
      at: at(new Set([...one.nodes, ...other.nodes])),
      pipes: [...one.pipes, pipe.id, ...other.pipes],
    };
  });

function unreachableFaults(tree: PipeTree, at: PlacesOf): NetworkFault[] {
  if (tree.source === undefined) return [];
  const parts: string[][] = [];
  for (const node of tree.order) {
    if (tree.reached.has(node)) continue;
    if (tree.inlets.has(node)) parts.at(-1)?.push(node);
    else parts.push([node]);
  }
  return parts.map((nodes) => ({
    kind: 'unreachable',
    text: 'Pipe is not joined to the cylinders: no agent reaches it.',
    at: at(nodes),
    pipes: [...new Set(nodes.flatMap((node) => (tree.legs.get(node) ?? []).map(({ pipe }) => pipe.id)))],
  }));
}

/** Parts that close an end of pipe. */
const CLOSED: ReadonlySet<string> = new Set(['dirt-trap', 'drain', 'cap', 'plug']);

const openEndFaults = (network: Network, tree: PipeTree, at: PlacesOf, gapNodes: ReadonlySet<string>): NetworkFault[] => {
  const ends = new Set(Object.values(network.nozzles).map(({ node }) => node));
  /** What ends there on purpose. */
  const isClosed = (node: string): boolean => CLOSED.has(network.nodes[node]?.part ?? '');
  return tree.order
    .filter((node) => tree.legs.get(node)?.length === 1 && node !== tree.source && !ends.has(node) && !isClosed(node) && !gapNodes.has(node))
    .map((node) => ({
      kind: 'open-end',
      text: 'A pipe ends without a nozzle.',
      at: at([node]),
      pipes: (tree.legs.get(node) ?? []).map(({ pipe }) => pipe.id),
    }));
};

function nozzleFaults(network: Network, tree: PipeTree, at: PlacesOf): NetworkFault[] {
  const taken = new Set<string>();
  return Object.values(network.nozzles).flatMap(({ name, node }): NetworkFault[] => {
    const legs = tree.legs.get(node) ?? [];
    const fault = (text: string): NetworkFault[] => [
      { kind: 'nozzle-not-at-end', text, at: at([node]), pipes: legs.map(({ pipe }) => pipe.id) },
    ];
    if (!tree.places.has(node)) return fault(`Nozzle ${name} has lost its place.`);
    if (taken.has(node)) return fault(`Nozzle ${name} shares its pipe end with another nozzle.`);
    taken.add(node);
    if (legs.length === 0) return fault(`Nozzle ${name} is not joined to a pipe.`);
    if (legs.length > 1) return fault(`Nozzle ${name} is not at the end of a pipe: pipe goes on from it.`);
    return node === tree.source ? fault(`Nozzle ${name} is where the agent enters the pipe.`) : [];
  });
}

interface Gap {
  readonly nodes: readonly string[];
  readonly fault: NetworkFault;
}

interface PipeBox extends Box {
  readonly pipe: Pipe;
  readonly order: number;
  readonly a: PlanPoint3;
  readonly b: PlanPoint3;
  readonly outside_m: number;
}

/**
 * Places that look joined but are not: a node within the radius of a pipe that does not end there,
 * and two open ends no farther apart than the pipe is thick.
 */
function gapsOf(network: Network, tree: PipeTree): Gap[] {
  const boxes = [...tree.upstream.keys()].flatMap((id, order): PipeBox[] => {
    const pipe = network.pipes[id];
    const a = pipe && tree.places.get(pipe.from);
    const b = pipe && tree.places.get(pipe.to);
    if (!pipe || !a || !b) return [];
    const outside_m = pipeOutside_m(pipe.size);
    return [
      {
        pipe,
        order,
        a,
        b,
        outside_m,
        minX: Math.min(a.x, b.x) - outside_m,
        minY: Math.min(a.y, b.y) - outside_m,
        maxX: Math.max(a.x, b.x) + outside_m,
        maxY: Math.max(a.y, b.y) + outside_m,
      },
    ];
  });
  const nearTo = finderOf(boxes);
  const loose = Object.values(network.nozzles).flatMap(({ node }) => (tree.legs.has(node) ? [] : [node]));
  const gaps = new Map<string, Gap>();
  for (const node of new Set([...tree.order, ...loose])) {
    const p = tree.places.get(node);
    if (!p) continue;
    const legs = tree.legs.get(node) ?? [];
    const thickest_m = legs.reduce((most_m, { pipe }) => Math.max(most_m, pipeOutside_m(pipe.size)), 0);
    for (const { pipe, a, b, outside_m } of nearTo(p, thickest_m)) {
      if (pipe.from === node || pipe.to === node) continue;
      const radius_m = Math.max(outside_m / 2, SAME_PLACE_m);
      const reach_m = Math.max(outside_m, thickest_m);
      const end = distance3_m(p, a) <= distance3_m(p, b) ? pipe.from : pipe.to;
      const toEnd_m = Math.min(distance3_m(p, a), distance3_m(p, b));
      const bothOpen = legs.length <= 1 && (tree.legs.get(end)?.length ?? 0) <= 1 && toEnd_m <= reach_m;
      if (!bothOpen && distanceToSegment3_m(p, { a, b }) > radius_m) continue;
      if (isStub(tree, node, pipe, reach_m)) continue;
      const meetsEnd = toEnd_m <= reach_m;
      const key = meetsEnd ? [node, end].sort().join('|') : `${node}|${pipe.id}`;
      if (gaps.has(key)) continue;
      gaps.set(key, {
        nodes: meetsEnd ? [node, end] : [node],
        fault: {
          kind: 'gap',
          text: bothOpen ? 'Two pipe ends lie side by side but are not joined.' : 'A pipe passes a joint without being joined to it.',
          at: meetsEnd ? [p, end === pipe.from ? a : b] : [p],
          pipes: [...new Set([...legs.map((leg) => leg.pipe.id), pipe.id])],
        },
      });
    }
  }
  return [...gaps.values()];
}

/** So many boxes are looked through faster one by one than found by an index. */
const FEW = 100;

/** Finds the pipes whose box comes within a margin of a place, in the order of the plan. */
function finderOf(boxes: readonly PipeBox[]): (p: PlanPoint3, margin_m: number) => PipeBox[] {
  if (boxes.length <= FEW) {
    return (p, margin_m) => {
      const [left, right, lower, upper] = [p.x - margin_m, p.x + margin_m, p.y - margin_m, p.y + margin_m];
      const near: PipeBox[] = [];
      for (const box of boxes) if (box.minX <= right && box.maxX >= left && box.minY <= upper && box.maxY >= lower) near.push(box);
      return near;
    };
  }
  const index = new RBush<PipeBox>();
  index.load([...boxes]);
  return (p, margin_m) =>
    index
      .search({ minX: p.x - margin_m, minY: p.y - margin_m, maxX: p.x + margin_m, maxY: p.y + margin_m })
      .sort((one, other) => one.order - other.order);
}

/** Whether a node sits at the end of a piece so short that it lies within the very pipe that the piece is joined to. */
const isStub = (tree: PipeTree, node: string, pipe: Pipe, reach_m: number): boolean => {
  const p = tree.places.get(node);
  return (tree.legs.get(node) ?? []).some(({ other }) => {
    const there = tree.places.get(other);
    return (pipe.from === other || pipe.to === other) && p !== undefined && there !== undefined && distance3_m(p, there) <= 2 * reach_m;
  });
};
