import type { DerivedNetwork } from '../../derived/derived.ts';
import type { PlanPoint3 } from '../../geometry/point.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import type { PipeSize } from '../../profile/pipe-table.ts';
import { SUPPORT_TABLES, TURN_SUPPORT_m, nozzleSupport_m, supportSpan_m } from '../formulas/support-spans.ts';

/** A support keeps this far from a fitting where the pipe is long enough [m]: hands and wrench need room. */
export const FROM_FITTING_m = 0.05;

/** Nearest to an end of a pipe so long that a support may come [m]: half of a short one. */
export const supportClear_m = (length_m: number): number => Math.min(FROM_FITTING_m, length_m / 2);

const TURNS: ReadonlySet<string> = new Set(['elbow-90', 'elbow-45', 'odd-bend', 'tee', 'cross']);

/** A pipe as its supports see it. */
export interface WebPipe {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly a: PlanPoint3;
  readonly b: PlanPoint3;
  readonly length_m: number;
  /** Greatest distance between supports [m]. */
  readonly span_m: number;
  /** Nearest to an end that a support may come [m]: half its length where it is short. */
  readonly clear_m: number;
  /** Couplings that the plan does not draw, from the `from` end [m]: the stock length puts them there. */
  readonly joints_m: readonly number[];
}

/** Pipes that hang together, and how near to which nodes a support must stand. */
export interface PipeWeb {
  readonly pipes: ReadonlyMap<string, WebPipe>;
  /** Turns by node: the greatest distance to a support before or after them in the flow [m]. */
  readonly turns_m: ReadonlyMap<string, number>;
  /** Nozzles by node: the greatest distance to a support on the very pipe that feeds it [m]; one on another branch does not hold it. */
  readonly nozzles_m: ReadonlyMap<string, number>;
}

/** A place on a pipe, measured from its `from` end. */
export interface PlaceOnPipe {
  readonly pipe: string;
  readonly along_m: number;
}

/**
 * Span for a suggestion [m]: the table's own; for a size that it leaves out the shortest of the other tables, else
 * the shortest span that any table has. Whether it will do is judged by the table alone.
 */
export function spanToPlaceBy_m(table: BasisOfDesign['supportTable'], size: PipeSize): number {
  const spans = (sized: PipeSize): number[] => SUPPORT_TABLES.flatMap((each) => supportSpan_m(each, sized) ?? []);
  return supportSpan_m(table, size) ?? Math.min(...spans(size), ...(spans(size).length > 0 ? [] : spans('1/2')));
}

/** What the supports of a network have to do under a basis of design. Pipe without length needs none, nor does the nipple of a dirt trap. */
export function pipeWebOf({ network, pipes, fittings }: DerivedNetwork, basis: BasisOfDesign, joints: readonly PlaceOnPipe[]): PipeWeb {
  const nozzles_m = new Map<string, number>();
  for (const { node } of Object.values(network.nozzles)) {
    for (const { from, to, size } of Object.values(network.pipes)) {
      if (from === node || to === node) nozzles_m.set(node, Math.min(nozzleSupport_m(basis.lastSupport, size), nozzles_m.get(node) ?? Number.POSITIVE_INFINITY));
    }
  }
  const joints_m = new Map<string, number[]>();
  for (const { pipe, along_m } of joints) joints_m.set(pipe, [...(joints_m.get(pipe) ?? []), along_m]);
  const isNipple = (node: string): boolean => network.nodes[node]?.part === 'dirt-trap' && pipes.filter(({ pipe }) => pipe.from === node || pipe.to === node).length === 1;
  return {
    turns_m: new Map(fittings.flatMap(({ kind, node }): [string, number][] => (TURNS.has(kind) ? [[node, TURN_SUPPORT_m]] : []))),
    nozzles_m,
    pipes: new Map(
      pipes.flatMap(({ pipe: { id, from, to, size }, length_m }): [string, WebPipe][] => {
        const [a, b] = [network.nodes[from]?.at, network.nodes[to]?.at];
        return a && b && !isNipple(from) && !isNipple(to) ? [[id, { id, from, to, a, b, length_m, span_m: spanToPlaceBy_m(basis.supportTable, size), clear_m: supportClear_m(length_m), joints_m: joints_m.get(id) ?? [] }]] : [];
      }),
    ),
  };
}
