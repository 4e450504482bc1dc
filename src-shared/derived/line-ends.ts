import type { DerivedNetwork, DerivedNozzle, Fitting } from './derived.ts';
import { pipeTreeOf } from './pipe-tree.ts';
import { remembered } from './remember.ts';

/** The end of a distribution line: its last nozzle, and what its last fitting holds against dirt. */
export interface LineEnd {
  readonly nozzle: DerivedNozzle;
  /** The last fitting before the nozzle; undefined when the pipe runs straight to it. */
  readonly fitting: Fitting | undefined;
  /** Pipes of the dirt trap there, in order from the tee; empty when there is none. */
  readonly trap: readonly string[];
}

const TURNS: ReadonlySet<Fitting['kind']> = new Set<Fitting['kind']>(['elbow-90', 'elbow-45', 'odd-bend', 'tee', 'cross']);

/**
 * The ends of the distribution lines of a network. A nozzle is the last of its line when it hangs at a turn, at a tee
 * with a dirt trap, or at no fitting at all; at a tee that parts the agent when no other leg leads on to further
 * fittings: of a tee fed through its branch every nozzle, of any other the one straight on.
 */
export const lineEndsOf = remembered(({ network, nozzles, fittings, paths }: DerivedNetwork): readonly LineEnd[] => {
  const tree = pipeTreeOf(network);
  const turns = new Map<string, Fitting>();
  for (const fitting of fittings) if (TURNS.has(fitting.kind) && !(fitting.kind === 'odd-bend' && turns.has(fitting.node))) turns.set(fitting.node, fitting);
  const pathOf = new Map(paths.map((path) => [path.nozzle, path]));
  const lastTurnOf = (id: string): Fitting | undefined => {
    const nodes = pathOf.get(id)?.nodes ?? [];
    for (let i = nodes.length - 2; i >= 0; i -= 1) {
      const turn = turns.get(nodes[i] ?? '');
      if (turn) return turn;
    }
    return undefined;
  };
  const parting = (fitting: Fitting): boolean => (fitting.kind === 'tee' || fitting.kind === 'cross') && !fitting.isTrap;
  const last = new Map(nozzles.map(({ nozzle }) => [nozzle.id, lastTurnOf(nozzle.id)]));
  const passing = new Map(paths.map(({ nozzle, nodes }) => [nozzle, new Set(nodes)]));
  const passes = (id: string, node: string): boolean => passing.get(id)?.has(node) ?? false;
  const inPaths = new Set(paths.flatMap(({ pipes }) => pipes));

  const isEnd = (id: string, fitting: Fitting | undefined): boolean => {
    if (!fitting || !parting(fitting)) return true;
    // Lines go on from here to nozzles that hang at a later fitting.
    if (nozzles.some(({ nozzle }) => nozzle.id !== id && passes(nozzle.id, fitting.node) && last.get(nozzle.id)?.node !== fitting.node)) return false;
    if (fitting.isBull || fitting.kind === 'cross') return true;
    const leg = fitting.pipes.slice(1).find((pipe) => pathOf.get(id)?.pipes.includes(pipe));
    return leg !== undefined && leg === straightOn(network, fitting);
  };
  const trapOf = (fitting: Fitting): string[] => {
    const trap: string[] = [];
    let node = fitting.node;
    const onward = () => (tree.legs.get(node) ?? []).filter(({ pipe }) => tree.upstream.get(pipe.id) === node && !inPaths.has(pipe.id));
    for (let [next] = onward(); next; [next] = onward()) {
      trap.push(next.pipe.id);
      node = next.other;
    }
    return network.nodes[node]?.part === 'dirt-trap' ? trap : [];
  };
  return nozzles.flatMap((nozzle): LineEnd[] => {
    const id = nozzle.nozzle.id;
    if (!pathOf.has(id)) return [];
    const fitting = last.get(id);
    return isEnd(id, fitting) ? [{ nozzle, fitting, trap: fitting?.isTrap ? trapOf(fitting) : [] }] : [];
  });
});

/** The leg of a tee that goes on most nearly as its first pipe came. */
function straightOn(network: DerivedNetwork['network'], { node, pipes }: Fitting): string | undefined {
  const at = network.nodes[node]?.at;
  const awayOf = (id: string): { x: number; y: number; z: number } | undefined => {
    const pipe = network.pipes[id];
    const there = pipe && network.nodes[pipe.from === node ? pipe.to : pipe.from]?.at;
    if (!at || !there) return undefined;
    const length_m = Math.hypot(there.x - at.x, there.y - at.y, there.z - at.z) || 1;
    return { x: (there.x - at.x) / length_m, y: (there.y - at.y) / length_m, z: (there.z - at.z) / length_m };
  };
  const came = awayOf(pipes[0] ?? '');
  const rated = pipes.slice(1).map((id) => {
    const away = awayOf(id);
    return { id, dot: came && away ? came.x * away.x + came.y * away.y + came.z * away.z : 0 };
  });
  return rated.sort((a, b) => a.dot - b.dot)[0]?.id;
}
