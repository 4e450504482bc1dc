import { type BoughtFitting, boughtFittingsOf } from '../derived/bought-fittings.ts';
import type { DerivedNetwork, FittingKind } from '../derived/derived.ts';
import { type StraightRun, runTreeOf } from '../isometric/straight-runs.ts';
import { type AsBuilt, type LengthBasis, asBuiltOf } from './as-built.ts';

/** What stands at an end of a piece: a fitting that the node demands, one that the stock length demands, or nothing. */
export const PIECE_ENDS = [
  'open', 'nozzle', 'cap', 'plug', 'drain', 'elbow-90', 'elbow-45', 'odd-bend', 'tee', 'cross', 'reducer', 'coupling', 'union', 'joint', 'unfitted', 'unfed',
] as const satisfies readonly (FittingKind | 'open' | 'nozzle' | 'unfitted' | 'unfed')[];
export type PieceEndKind = (typeof PIECE_ENDS)[number];

/** An end of a straight run. */
export interface RunEnd {
  readonly node: string;
  readonly kind: PieceEndKind;
  /** What stands there; null where nothing is bought, and at a coupling that the stock length demands. */
  readonly fitting: Pick<BoughtFitting, 'legs' | 'isReducing' | 'isStreet' | 'made'> | null;
  /** Leg of the fitting that the run is on; −1 for none. */
  readonly leg: number;
  /** A reducer stands between the fitting and this run. */
  readonly isReduced: boolean;
}

/** Pipe of one make from fitting to fitting. */
export interface PieceRun extends Pick<StraightRun, 'pipes' | 'size' | 'schedule' | 'material' | 'joint'> {
  readonly from: RunEnd;
  readonly to: RunEnd;
  /** Developed, from centre to centre, as measured where it was [m]. */
  readonly length_m: number;
  readonly basis: LengthBasis;
}

/** What the length of a run rests on: a run with a measured pipe is measured. */
function basisOf(pipes: readonly string[], { bases }: AsBuilt): LengthBasis {
  let basis: LengthBasis = 'drawn';
  for (const pipe of pipes) {
    const own = bases.get(pipe);
    if (own === 'measured') return own;
    if (own === 'follows') basis = own;
  }
  return basis;
}

/** The straight runs of a network with what stands at their ends, in the order of the isometric's numbers. */
export function pieceRunsOf(derived: DerivedNetwork, asBuilt: AsBuilt = asBuiltOf(derived)): PieceRun[] {
  const { network } = derived;
  const { runs, nodes } = runTreeOf(derived);
  const numbers = new Map(nodes.map((node, i) => [node, i]));
  const at = new Map<string, BoughtFitting[]>();
  for (const fitting of boughtFittingsOf(derived)) {
    const others = at.get(fitting.node);
    if (others) others.push(fitting);
    else at.set(fitting.node, [fitting]);
  }
  const nozzles = new Set(Object.values(network.nozzles).map(({ node }) => node));
  const counts = new Map<string, number>();
  for (const { pipe } of derived.pipes) for (const node of [pipe.from, pipe.to]) counts.set(node, (counts.get(node) ?? 0) + 1);

  const bare = (node: string): PieceEndKind => {
    const isNozzle = nozzles.has(node);
    if (counts.get(node) === 1) return isNozzle ? 'nozzle' : 'open';
    return isNozzle ? 'unfitted' : 'unfed';
  };
  const endOf = (node: string, pipe: string): RunEnd => {
    const here = at.get(node) ?? [];
    const odd = here.find(({ kind, pipes }) => kind === 'odd-bend' && pipes.includes(pipe));
    const main = here.find(({ kind }) => kind !== 'reducer' && kind !== 'odd-bend') ?? here[0];
    const fitting = odd ?? main ?? null;
    const leg = fitting ? fitting.legs.findIndex((each) => each.pipe === pipe) : -1;
    const isReduced = here.some((each) => each !== fitting && each.kind === 'reducer' && each.legs.some((other) => other.pipe === pipe));
    return { node, kind: fitting?.kind ?? bare(node), fitting, leg, isReduced };
  };
  return runs
    .map((run): PieceRun => {
      const { from, to, pipes, size, schedule, material, joint } = run;
      const length_m = pipes.reduce((sum, pipe) => sum + (asBuilt.lengths_m.get(pipe) ?? 0), 0);
      return { from: endOf(from, pipes[0] ?? ''), to: endOf(to, pipes.at(-1) ?? ''), pipes, size, schedule, material, joint, length_m, basis: basisOf(pipes, asBuilt) };
    })
    .sort((a, b) => (numbers.get(a.to.node) ?? 0) - (numbers.get(b.to.node) ?? 0));
}
