import type { Network } from '../model/plan.ts';
import type { Fitting, PipePath } from './derived.ts';
import { type PipeTree, wayUp } from './pipe-tree.ts';

/** What the agent has passed on the way from the source to a node. */
interface Passed {
  readonly length_m: number;
  readonly elbows: number;
  readonly tees: number;
}

const NOTHING: Passed = { length_m: 0, elbows: 0, tees: 0 };

const isTee = ({ kind, isTrap }: Fitting): boolean => (kind === 'tee' && !isTrap) || kind === 'cross';

/** Whether a fitting turns the agent that comes in through one pipe and leaves through another. */
const isElbow = ({ kind, isTrap, turn_rad, pipes }: Fitting, inlet: string | undefined, outlet: string | undefined): boolean => {
  if (kind === 'elbow-90' || kind === 'elbow-45' || (isTrap && turn_rad > 0)) return true;
  const last = pipes.at(-1);
  return kind === 'odd-bend' && last !== undefined && (last === inlet || last === outlet);
};

/** One way; its lists are put together when somebody reads them, since all lists of a large network are long together. */
class Path implements PipePath {
  readonly nozzle: string;
  readonly length_m: number;
  readonly elbows: number;
  readonly tees: number;
  readonly #tree: PipeTree;
  readonly #end: string;
  #way: { readonly nodes: readonly string[]; readonly pipes: readonly string[] } | undefined;

  constructor(nozzle: string, { length_m, elbows, tees }: Passed, tree: PipeTree, end: string) {
    this.nozzle = nozzle;
    this.length_m = length_m;
    this.elbows = elbows;
    this.tees = tees;
    this.#tree = tree;
    this.#end = end;
  }

  get nodes(): readonly string[] {
    return this.#wayDown().nodes;
  }

  get pipes(): readonly string[] {
    return this.#wayDown().pipes;
  }

  #wayDown() {
    if (!this.#way) {
      const { nodes, pipes } = wayUp(this.#tree, this.#end);
      this.#way = { nodes: nodes.reverse(), pipes: pipes.reverse() };
    }
    return this.#way;
  }
}

/**
 * The way of the agent to each nozzle that it reaches, in the order of the plan.
 * Elbows are the bends on the way, odd ones and odd legs of tees included; tees are the tees and crosses it passes,
 * straight through or round the corner. A tee with a dirt trap parts nothing: it counts as the elbow that it stands for, or not at all where the agent goes straight on.
 * @param lengths_m length of every pipe, drops as they are [m]
 */
export function pipePathsOf(network: Network, tree: PipeTree, fittings: readonly Fitting[], lengths_m: ReadonlyMap<string, number>): PipePath[] {
  const byNode = new Map<string, Fitting[]>();
  for (const fitting of fittings) {
    const others = byNode.get(fitting.node);
    if (others) others.push(fitting);
    else byNode.set(fitting.node, [fitting]);
  }
  /** What has been passed with the fittings of a node, which the agent leaves through a pipe or not at all. */
  const through = (node: string, before: Passed, outlet: string | undefined): Passed => {
    const here = byNode.get(node);
    if (!here) return before;
    const inlet = tree.inlets.get(node)?.pipe.id;
    let { elbows, tees } = before;
    for (const fitting of here) {
      if (isElbow(fitting, inlet, outlet)) elbows += 1;
      if (isTee(fitting)) tees += 1;
    }
    return { length_m: before.length_m, elbows, tees };
  };
  // Nearest nodes come first, so that what leads to a node is known before it.
  const upTo = new Map<string, Passed>();
  for (const node of tree.order) {
    const inlet = tree.inlets.get(node);
    if (!inlet) upTo.set(node, NOTHING);
    else {
      const { length_m, elbows, tees } = through(inlet.other, upTo.get(inlet.other) ?? NOTHING, inlet.pipe.id);
      upTo.set(node, { length_m: length_m + (lengths_m.get(inlet.pipe.id) ?? 0), elbows, tees });
    }
  }
  return Object.values(network.nozzles).flatMap(({ id, node }): PipePath[] =>
    tree.reached.has(node) ? [new Path(id, through(node, upTo.get(node) ?? NOTHING, undefined), tree, node)] : [],
  );
}
