import { isOneMake } from '../derived/bought-fittings.ts';
import type { DerivedNetwork } from '../derived/derived.ts';
import { type Leg, type PipeTree, pipeTreeOf } from '../derived/pipe-tree.ts';
import { remembered } from '../derived/remember.ts';
import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import type { Pipe } from '../model/plan.ts';
import type { PipeSchedule, PipeSize } from '../profile/pipe-table.ts';

/** Straight pipe of one make between two numbered nodes, in flow order, however many pipes of the plan it is drawn with. */
export interface StraightRun {
  /** Node ids. */
  readonly from: string;
  readonly to: string;
  readonly start: PlanPoint3;
  readonly end: PlanPoint3;
  readonly pipes: readonly string[];
  readonly size: PipeSize;
  readonly schedule: PipeSchedule;
  readonly material: Pipe['material'];
  readonly joint: Pipe['joint'];
  readonly length_m: number;
}

/** The nodes worth a number, along the flow, and the straight pipe between them. */
export interface RunTree {
  /** Node ids: each branch is told to its end before the next, short ones first. */
  readonly nodes: readonly string[];
  readonly runs: readonly StraightRun[];
  readonly places: ReadonlyMap<string, PlanPoint3>;
  /** Whether a pipe closes a loop. */
  readonly hasLoop: boolean;
}

const isLike = (a: Leg | undefined, b: Leg | undefined): boolean =>
  a !== undefined && b !== undefined && isOneMake(a.pipe, b.pipe);

const makeOf = ({ size, schedule, material, joint }: Pipe): Pick<StraightRun, 'size' | 'schedule' | 'material' | 'joint'> => ({ size, schedule, material, joint });

/** How many pipes hang on each node, away from the source. */
function weightsOf(tree: PipeTree): ReadonlyMap<string, number> {
  const weights = new Map<string, number>();
  for (const node of [...tree.order].reverse()) {
    const inlet = tree.inlets.get(node);
    if (inlet) weights.set(inlet.other, (weights.get(inlet.other) ?? 0) + (weights.get(node) ?? 0) + 1);
  }
  return weights;
}

/** Parts a network into straight runs between its source, fittings, nozzles and ends. */
export const runTreeOf = remembered(({ network, fittings }: DerivedNetwork): RunTree => {
  const tree = pipeTreeOf(network);
  const weights = weightsOf(tree);
  const busy = new Set([...fittings.map(({ node }) => node), ...Object.values(network.nozzles).map(({ node }) => node)]);
  /** A node that the pipe only goes straight through. */
  const isPassed = (node: string): boolean => {
    const [first, second, ...more] = tree.legs.get(node) ?? [];
    return !busy.has(node) && node !== tree.source && tree.inlets.has(node) && more.length === 0 && isLike(first, second);
  };
  const leaving = (node: string): Leg[] => (tree.legs.get(node) ?? []).filter(({ pipe }) => tree.upstream.get(pipe.id) === node);

  const nodes: string[] = [];
  const runs: StraightRun[] = [];
  /** Follows a pipe to the next node worth a number. */
  const follow = (from: string, leg: Leg): StraightRun | undefined => {
    const pipes = [leg.pipe.id];
    let to = leg.other;
    let length_m = 0;
    let here = tree.places.get(from);
    const start = here;
    for (let next: Leg | undefined = leg; next; ) {
      const there = tree.places.get(next.other);
      if (!here || !there) return undefined;
      length_m += distance3_m(here, there);
      here = there;
      to = next.other;
      next = isPassed(to) && tree.inlets.get(to)?.pipe === next.pipe ? leaving(to)[0] : undefined;
      if (next) pipes.push(next.pipe.id);
    }
    return start && here ? { from, to, start, end: here, pipes, ...makeOf(leg.pipe), length_m } : undefined;
  };

  for (const root of tree.order.filter((node) => !tree.inlets.has(node))) {
    const waiting: { readonly node: string; readonly run: StraightRun | undefined }[] = [{ node: root, run: undefined }];
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      const { node, run } = next;
      if (run) runs.push(run);
      // A pipe that closes a loop ends at a node that has its number from elsewhere.
      if (run && tree.inlets.get(node)?.pipe.id !== run.pipes.at(-1)) continue;
      nodes.push(node);
      const onward = leaving(node).sort((a, b) => (weights.get(b.other) ?? 0) - (weights.get(a.other) ?? 0));
      for (const leg of onward) {
        const found = follow(node, leg);
        if (found) waiting.push({ node: found.to, run: found });
      }
    }
  }
  return { nodes, runs, places: tree.places, hasLoop: tree.closing.length > 0 };
});
