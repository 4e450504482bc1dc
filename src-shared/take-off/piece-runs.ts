import type { DerivedNetwork, DerivedPipe, Fitting } from '../derived/derived.ts';
import { pipeTreeOf } from '../derived/pipe-tree.ts';
import type { PipeSchedule, PipeSize } from '../profile/pipe-table.ts';

/** What stands at an end of a piece: a fitting that the node demands, one that the stock length demands, or nothing. */
export const PIECE_ENDS = ['open', 'nozzle', 'cap', 'plug', 'drain', 'elbow-90', 'elbow-45', 'odd-bend', 'tee', 'cross', 'reducer', 'coupling', 'union', 'joint', 'unfitted'] as const;
export type PieceEndKind = (typeof PIECE_ENDS)[number];

/** An end of a straight run. */
export interface RunEnd {
  readonly node: string;
  readonly kind: PieceEndKind;
  /** The pipes at it are of different sizes: the fitting has lengths of its own. */
  readonly isReducing: boolean;
}

/** Pipe of one make from fitting to fitting, however many pipes of the plan it is drawn with. */
export interface StraightRun {
  readonly from: RunEnd;
  readonly to: RunEnd;
  readonly pipes: readonly DerivedPipe[];
  readonly size: PipeSize;
  readonly schedule: PipeSchedule;
  readonly material: DerivedPipe['pipe']['material'];
  readonly joint: DerivedPipe['pipe']['joint'];
  /** Developed, from centre to centre [m]. */
  readonly length_m: number;
}

const isOneMake = ({ pipe: a }: DerivedPipe, { pipe: b }: DerivedPipe): boolean =>
  a.size === b.size && a.schedule === b.schedule && a.material === b.material && a.joint === b.joint;

/** What meets at a node. */
interface Joint {
  readonly pipes: readonly DerivedPipe[];
  readonly fittings: readonly Fitting[];
  readonly isNozzle: boolean;
  readonly isSource: boolean;
}

/** The pipe runs on through the node: nothing there parts it. */
const isPassage = ({ pipes, fittings, isNozzle, isSource }: Joint): boolean => {
  const [a, b] = pipes;
  return pipes.length === 2 && a !== undefined && b !== undefined && fittings.length === 0 && !isNozzle && !isSource && isOneMake(a, b);
};

function endKindOf(joint: Joint, pipe: DerivedPipe): PieceEndKind {
  const { pipes, fittings, isNozzle, isSource } = joint;
  if (fittings.some(({ kind, pipes: at }) => kind === 'odd-bend' && at.includes(pipe.ref.id))) return 'odd-bend';
  const fitting = fittings.find(({ kind }) => kind !== 'reducer' && kind !== 'odd-bend') ?? fittings[0];
  if (fitting) return fitting.kind;
  if (pipes.length === 1) return isNozzle ? 'nozzle' : isSource ? 'open' : 'cap';
  if (isNozzle) return 'unfitted';
  // Straight on into pipe of another make.
  return pipe.pipe.joint === 'threaded' ? 'coupling' : 'joint';
}

/** The straight runs of a network, in the order of the flow. */
export function straightRunsOf(derived: DerivedNetwork): StraightRun[] {
  const { network } = derived;
  const at = new Map<string, DerivedPipe[]>();
  for (const pipe of derived.pipes) for (const node of new Set([pipe.pipe.from, pipe.pipe.to])) at.set(node, [...(at.get(node) ?? []), pipe]);
  const nozzles = new Set(Object.values(network.nozzles).map(({ node }) => node));
  const jointOf = (node: string): Joint => ({
    pipes: at.get(node) ?? [],
    fittings: derived.fittings.filter((fitting) => fitting.node === node),
    isNozzle: nozzles.has(node),
    isSource: network.source === node,
  });
  const joints = new Map([...at.keys()].map((node) => [node, jointOf(node)]));
  const tree = pipeTreeOf(network);
  const rank = new Map(tree.order.map((node, i) => [node, i]));
  const upstreamOf = ({ ref, pipe }: DerivedPipe): string => tree.upstream.get(ref.id) ?? pipe.from;
  const downstreamOf = (pipe: DerivedPipe): string => (upstreamOf(pipe) === pipe.pipe.from ? pipe.pipe.to : pipe.pipe.from);

  const seen = new Set<DerivedPipe>();
  const endOf = (node: string, pipe: DerivedPipe): RunEnd => {
    const joint = joints.get(node) ?? jointOf(node);
    return { node, kind: endKindOf(joint, pipe), isReducing: new Set(joint.pipes.map((each) => each.pipe.size)).size > 1 };
  };
  /** Pipes on from a node through every passage, and the node where they end. */
  const follow = (start: string, first: DerivedPipe): { readonly pipes: DerivedPipe[]; readonly node: string } => {
    const pipes: DerivedPipe[] = [];
    let node = start;
    for (let joint = joints.get(node), last = first; joint && isPassage(joint); joint = joints.get(node)) {
      const next = joint.pipes.find((pipe) => pipe !== last);
      if (!next || seen.has(next)) break;
      seen.add(next);
      pipes.push(next);
      node = next.pipe.from === node ? next.pipe.to : next.pipe.from;
      last = next;
    }
    return { pipes, node };
  };
  const inFlow = [...derived.pipes].sort((a, b) => (rank.get(upstreamOf(a)) ?? 0) - (rank.get(upstreamOf(b)) ?? 0));
  return inFlow.flatMap((pipe): StraightRun[] => {
    if (seen.has(pipe)) return [];
    seen.add(pipe);
    const before = follow(upstreamOf(pipe), pipe);
    const after = follow(downstreamOf(pipe), pipe);
    const pipes = [...before.pipes.reverse(), pipe, ...after.pipes];
    const { size, schedule, material, joint } = pipe.pipe;
    return [
      {
        from: endOf(before.node, pipes[0] ?? pipe),
        to: endOf(after.node, pipes.at(-1) ?? pipe),
        pipes,
        size,
        schedule,
        material,
        joint,
        length_m: pipes.reduce((sum, { length_m }) => sum + length_m, 0),
      },
    ];
  });
}
