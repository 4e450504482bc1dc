import { type Direction3, angleBetween3_rad, direction3, opposite3 } from '../geometry/vector3.ts';
import { ANGLE_SLACK_rad, SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Network, Pipe } from '../model/plan.ts';
import type { Fitting } from './derived.ts';
import type { Leg, PipeTree } from './pipe-tree.ts';

/** A made fitting takes up this much of a crooked run [rad]: one degree, with slack for float noise. */
const AS_MADE_rad = Math.PI / 180 + ANGLE_SLACK_rad;
const SQUARE_rad = Math.PI / 2;

/** Flow direction of every pipe that is not broken; a pipe without length takes that of the pipe before it. */
function flowDirectionsOf(tree: PipeTree): ReadonlyMap<string, Direction3> {
  const flow = new Map<string, Direction3>();
  for (const node of tree.order) {
    const here = tree.places.get(node);
    const before = tree.inlets.get(node);
    for (const { pipe, other } of tree.legs.get(node) ?? []) {
      const there = tree.places.get(other);
      if (tree.upstream.get(pipe.id) !== node || !here || !there) continue;
      const direction = direction3(here, there, SAME_PLACE_m) ?? (before && flow.get(before.pipe.id));
      if (direction) flow.set(pipe.id, direction);
    }
  }
  return flow;
}

interface Way {
  readonly pipe: Pipe;
  /** Away from the node. */
  readonly away: Direction3;
}

/** How far two legs are from forming one straight run [rad]. */
const bendOf = (a: Way, b: Way): number => Math.PI - angleBetween3_rad(a.away, b.away);

/** The two legs that come nearest to a straight run. */
function runOf(ways: readonly Way[]): readonly [Way, Way] | undefined {
  let best: readonly [Way, Way] | undefined;
  for (const [i, a] of ways.entries()) {
    for (const b of ways.slice(i + 1)) {
      if (!best || bendOf(a, b) < bendOf(best[0], best[1]) - 1e-12) best = [a, b];
    }
  }
  return best;
}

/**
 * The fittings that the geometry of a network demands, node by node from the source outwards.
 * - A bend is an elbow when it is within one degree of 90° or 45°, else an odd bend; less than one degree is straight.
 * - Three legs are a tee, four and more a cross. The source counts as a leg of its own where more than one pipe begins.
 * - A leg of a tee or cross more than one degree off its run or off the square adds an odd bend, whose last pipe is that leg.
 * - Each leg of another size than the leg toward the source adds a reducer.
 * - An open end without nozzle is a cap, or the plug or drain that is built in there.
 * - A union or coupling that is built in stands where the pipe runs straight on.
 * - A tee of which one leg only leads to a dirt trap or drain turns the agent and does not part it.
 */
export function fittingsOf(network: Network, tree: PipeTree): Fitting[] {
  const flow = flowDirectionsOf(tree);
  const ends = new Set(Object.values(network.nozzles).map(({ node }) => node));
  const traps = trapPipesOf(network, tree, ends);
  return tree.order.flatMap((node): Fitting[] => {
    const at = tree.places.get(node);
    const part = network.nodes[node]?.part;
    const legs = tree.legs.get(node) ?? [];
    if (!at || legs.length === 0) return [];
    const inlet = tree.inlets.get(node);
    const isFed = tree.reached.has(node);
    const isSource = node === tree.source;
    const inOrder: readonly Leg[] = inlet ? [inlet, ...legs.filter(({ pipe }) => pipe !== inlet.pipe)] : legs;
    const ways = inOrder.flatMap(({ pipe }): Way[] => {
      const direction = flow.get(pipe.id);
      return direction ? [{ pipe, away: tree.upstream.get(pipe.id) === node ? direction : opposite3(direction) }] : [];
    });
    const fitting = (kind: Fitting['kind'], pipes: readonly Pipe[], turn_rad = 0, isBull = false): Fitting => ({
      node,
      at,
      kind,
      turn_rad,
      pipes: pipes.map(({ id }) => id),
      isBull,
      isStreet: part === 'street-elbow' && (kind === 'elbow-90' || kind === 'elbow-45'),
      isTrap: kind === 'tee' && pipes.some(({ id }) => traps.has(id)),
    });
    const all = inOrder.map(({ pipe }) => pipe);
    const first = all[0];
    const reducers = all.slice(1).flatMap((pipe) => (first && pipe.size !== first.size ? [fitting('reducer', [first, pipe])] : []));

    if (all.length === 1 && !isSource) return ends.has(node) ? [] : [fitting(part === 'plug' || part === 'drain' ? part : 'cap', all)];
    if (all.length === 1) return [];
    const run = runOf(ways);
    if (all.length === 2) {
      const turn_rad = run ? bendOf(run[0], run[1]) : 0;
      if (isSource) return [fitting('tee', all, 0, turn_rad <= AS_MADE_rad), ...reducers];
      if (turn_rad <= AS_MADE_rad) return reducers.length === 0 && (part === 'union' || part === 'coupling') ? [fitting(part, all)] : reducers;
      return [fitting(bendKind(turn_rad), all, turn_rad), ...reducers];
    }
    const odd = oddLegsOf(ways, run, inlet?.pipe).map(({ pipe, turn_rad }) => fitting('odd-bend', [pipe], turn_rad));
    if (all.length === 3 && !isSource) {
      const isBull = isFed && inlet !== undefined && !!run?.every(({ pipe }) => pipe !== inlet.pipe);
      return [fitting('tee', all, trapTurn_rad(ways, traps), isBull), ...odd, ...reducers];
    }
    return [fitting('cross', all), ...odd, ...reducers];
  });
}

/** How far the agent turns in a tee of which one leg only leads to a dirt trap [rad]; 0 in any other tee, and straight past a trap. */
function trapTurn_rad(ways: readonly Way[], traps: ReadonlySet<string>): number {
  const [inlet, outlet, ...others] = ways.filter(({ pipe }) => !traps.has(pipe.id));
  if (!inlet || !outlet || others.length > 0) return 0;
  const turn_rad = bendOf(inlet, outlet);
  return turn_rad > AS_MADE_rad ? turn_rad : 0;
}

/** Pipes that only lead to dirt traps and drains. */
function trapPipesOf(network: Network, tree: PipeTree, ends: ReadonlySet<string>): ReadonlySet<string> {
  const trapping = new Set<string>();
  const leading = new Set<string>();
  for (const node of [...tree.order].reverse()) {
    const onward = (tree.legs.get(node) ?? []).filter(({ pipe }) => tree.upstream.get(pipe.id) === node);
    const part = network.nodes[node]?.part;
    const isTrap = onward.length === 0 ? (part === 'dirt-trap' || part === 'drain') && !ends.has(node) : onward.every(({ other }) => leading.has(other));
    if (!isTrap) continue;
    leading.add(node);
    const inlet = tree.inlets.get(node);
    if (inlet) trapping.add(inlet.pipe.id);
  }
  return trapping;
}

const bendKind = (turn_rad: number): 'elbow-90' | 'elbow-45' | 'odd-bend' => {
  const isNear = (made_rad: number): boolean => Math.abs(turn_rad - made_rad) <= AS_MADE_rad;
  if (isNear(SQUARE_rad)) return 'elbow-90';
  return isNear(SQUARE_rad / 2) ? 'elbow-45' : 'odd-bend';
};

/** Legs of a tee or cross that no made fitting offers, with how far they are off. */
function oddLegsOf(ways: readonly Way[], run: readonly [Way, Way] | undefined, inlet: Pipe | undefined): { pipe: Pipe; turn_rad: number }[] {
  if (!run) return [];
  const odd: { pipe: Pipe; turn_rad: number }[] = [];
  const notInlet = ([a, b]: readonly [Way, Way]): Way => (b.pipe === inlet ? a : b);
  const bend_rad = bendOf(run[0], run[1]);
  if (bend_rad > AS_MADE_rad) odd.push({ pipe: notInlet(run).pipe, turn_rad: bend_rad });
  const branches = ways.filter((way) => way !== run[0] && way !== run[1]);
  for (const [i, branch] of branches.entries()) {
    const off_rad = Math.abs(angleBetween3_rad(branch.away, run[0].away) - SQUARE_rad);
    const opposed = branches[0];
    const crooked_rad = i === 1 && opposed ? bendOf(opposed, branch) : 0;
    // More than two branches: no made fitting has so many legs.
    const turn_rad = i > 1 ? SQUARE_rad : Math.max(off_rad, crooked_rad);
    if (turn_rad > AS_MADE_rad) odd.push({ pipe: branch.pipe, turn_rad });
  }
  return odd;
}
