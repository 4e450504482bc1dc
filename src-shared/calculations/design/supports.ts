import type { DerivedNetwork, DerivedPipe, Fitting, PipePath } from '../../derived/derived.ts';
import { pipesAtSupports, placedSupportsOf } from '../../derived/placed-supports.ts';
import { type PlanPoint3, distance3_m } from '../../geometry/point.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import { TURN_SUPPORT_m, nozzleSupport_m, supportSpanBasis, supportSpan_m } from '../formulas/support-spans.ts';
import type { HeldSupport, SpanSums, SupportSums } from './design.ts';
import { type Worked, notWorked, worked } from './worked.ts';

/** A place along a path, from the source [m]. */
interface Mark {
  readonly along_m: number;
  readonly held: HeldSupport;
}

/** A path with where its nodes and supports are along it. */
interface MeasuredPath {
  readonly path: PipePath;
  readonly pipes: readonly DerivedPipe[];
  /** Along the path to the downstream end of each pipe. */
  readonly ends_m: readonly number[];
  readonly marks: readonly Mark[];
}

/** The supports that touch each pipe, by its id: at a joint one holds all that meet there. */
function holdersOf(derived: DerivedNetwork, held: readonly HeldSupport[]): ReadonlyMap<string, readonly HeldSupport[]> {
  const touched = pipesAtSupports(derived);
  const holders = new Map<string, HeldSupport[]>();
  for (const each of held) {
    for (const { id } of touched.get(each.support) ?? []) {
      const known = holders.get(id);
      if (known) known.push(each);
      else holders.set(id, [each]);
    }
  }
  return holders;
}

function measured(path: PipePath, byId: ReadonlyMap<string, DerivedPipe>, holders: ReadonlyMap<string, readonly HeldSupport[]>, rank: ReadonlyMap<HeldSupport, number>): MeasuredPath {
  const pipes = path.pipes.flatMap((id) => byId.get(id) ?? []);
  const ends_m: number[] = [];
  const marks = new Map<HeldSupport, Mark>();
  let end_m = 0;
  for (const pipe of pipes) {
    end_m += pipe.length_m;
    ends_m.push(end_m);
    for (const held of holders.get(pipe.pipe.id) ?? []) {
      if (!marks.has(held)) marks.set(held, { along_m: end_m - pipe.length_m + Math.min(pipe.length_m, distance3_m(pipe.from, held.support.at)), held });
    }
  }
  return { path, pipes, ends_m, marks: [...marks.values()].sort((a, b) => a.along_m - b.along_m || (rank.get(a.held) ?? 0) - (rank.get(b.held) ?? 0)) };
}

/** Place along a measured path. */
function placeAt({ pipes, ends_m }: MeasuredPath, along_m: number): PlanPoint3 {
  const index = Math.max(0, ends_m.findIndex((end_m) => end_m >= along_m - 1e-9));
  const pipe = pipes[index];
  if (!pipe) return { x: 0, y: 0, z: 0 };
  const share = pipe.length_m === 0 ? 0 : Math.min(1, Math.max(0, 1 - ((ends_m[index] ?? 0) - along_m) / pipe.length_m));
  const between = (a: number, b: number): number => a + (b - a) * share;
  return { x: between(pipe.from.x, pipe.to.x), y: between(pipe.from.y, pipe.to.y), z: between(pipe.from.z, pipe.to.z) };
}

/** Free stretches of one path: the discharge assembly holds its beginning, its end hangs free. */
function spansAlong(way: MeasuredPath, basis: BasisOfDesign): SpanSums[] {
  const stops = [0, ...way.marks.map(({ along_m }) => along_m), way.path.length_m];
  return stops.slice(1).flatMap((to_m, i): SpanSums[] => {
    const from_m = stops[i] ?? 0;
    const on = way.pipes.filter((pipe, k) => (way.ends_m[k] ?? 0) - pipe.length_m < to_m - 1e-9 && (way.ends_m[k] ?? 0) > from_m + 1e-9);
    const [first] = on;
    if (!first || to_m - from_m < 1e-9) return [];
    const allowed = on.map(({ pipe }) => supportSpan_m(basis.supportTable, pipe.size));
    const known = allowed.filter((span_m) => span_m !== undefined);
    return [{ pipe: first, length_m: to_m - from_m, allowed_m: known.length === allowed.length ? Math.min(...known) : undefined, at: [placeAt(way, from_m), placeAt(way, to_m)] }];
  });
}

const isAtSamePlaces = ({ at: [a, b] }: SpanSums, { at: [c, d] }: SpanSums): boolean => a.x === c.x && a.y === c.y && a.z === c.z && b.x === d.x && b.y === d.y && b.z === d.z;

const TURNS: ReadonlySet<Fitting['kind']> = new Set<Fitting['kind']>(['elbow-90', 'elbow-45', 'odd-bend', 'tee', 'cross']);

/** The nearest support along any path through a place, and how far it is. */
function nearestAlong(ways: readonly MeasuredPath[], along_m: (way: MeasuredPath) => number | undefined): { readonly distance_m: number; readonly held: HeldSupport } | undefined {
  let best: { distance_m: number; held: HeldSupport } | undefined;
  for (const way of ways) {
    const here_m = along_m(way);
    if (here_m === undefined) continue;
    for (const { along_m: there_m, held } of way.marks) {
      const distance_m = Math.abs(there_m - here_m);
      if (!best || distance_m < best.distance_m) best = { distance_m, held };
    }
  }
  return best;
}

const nodeAlong_m = ({ path, ends_m }: MeasuredPath, node: string): number | undefined => {
  const index = path.nodes.indexOf(node);
  return index < 0 ? undefined : index === 0 ? 0 : ends_m[index - 1];
};

/** What the drawn supports of a network hold: spans, last supports before nozzles, supports at turns. */
export function supportsOf(derived: DerivedNetwork, basis: BasisOfDesign): Worked<SupportSums> {
  if (derived.paths.length === 0) return notWorked('no pipe leads to a nozzle yet.');
  const held = placedSupportsOf(derived);
  if (held.length === 0) return notWorked('no support is drawn: place them by the table.');
  const byId = new Map(derived.pipes.map((pipe) => [pipe.pipe.id, pipe]));
  const holders = holdersOf(derived, held);
  const rank = new Map(held.map((each, i) => [each, i]));
  const ways = derived.paths.map((path) => measured(path, byId, holders, rank));
  const spans = new Map<string, SpanSums>();
  // Paths have their beginning in common: most spans come again and again.
  const known = new Map<DerivedPipe, SpanSums[]>();
  for (const span of ways.flatMap((way) => spansAlong(way, basis))) {
    const alike = known.get(span.pipe) ?? [];
    if (alike.some((other) => isAtSamePlaces(other, span))) continue;
    known.set(span.pipe, [...alike, span]);
    const key = span.at.map(({ x, y, z }) => [x, y, z].map((each) => each.toFixed(4)).join()).join(' ');
    if (!spans.has(key)) spans.set(key, span);
  }
  return worked({
    held,
    table: supportSpanBasis.source,
    spans: [...spans.values()],
    nozzles: derived.nozzles.flatMap(({ ref, nozzle }) => {
      const way = ways.find(({ path }) => path.nozzle === nozzle.id);
      const last = way?.pipes.at(-1);
      if (!way || !last) return [];
      const nearest = nearestAlong([way], () => way.path.length_m);
      return [{ ref, name: nozzle.name, distance_m: nearest?.distance_m, allowed_m: nozzleSupport_m(basis.lastSupport, last.pipe.size), support: nearest?.held }];
    }),
    turns: derived.fittings
      .filter(({ kind }) => TURNS.has(kind))
      .map((fitting) => ({ fitting, distance_m: nearestAlong(ways, (way) => nodeAlong_m(way, fitting.node))?.distance_m, allowed_m: TURN_SUPPORT_m })),
  });
}
