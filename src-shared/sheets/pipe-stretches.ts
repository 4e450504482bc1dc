import type { DerivedNetwork, DerivedPipe } from '../derived/derived.ts';
import { type PlanPoint3, distance3_m, distance_m } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { PipeSchedule, PipeSize } from '../profile/pipe-table.ts';

/** Straight pipe of one size from fitting to fitting; couplings in it do not part it. In flow order. */
export interface PipeStretch {
  readonly from: PlanPoint3;
  readonly to: PlanPoint3;
  readonly size: PipeSize;
  readonly schedule: PipeSchedule;
  readonly length_m: number;
  /** `upright` stands over one place of the plan; `sloped` runs and rises. */
  readonly lie: 'level' | 'upright' | 'sloped';
  readonly way: 'riser' | 'drop' | null;
  /** Network and pipe ids. */
  readonly network: string;
  readonly pipes: readonly string[];
}

const endsOf = ({ pipe }: DerivedPipe): readonly [string, string] => [pipe.from, pipe.to];

const isStraight = (a: PlanPoint3, b: PlanPoint3, c: PlanPoint3): boolean => {
  const [ux, uy, uz] = [b.x - a.x, b.y - a.y, b.z - a.z];
  const [vx, vy, vz] = [c.x - b.x, c.y - b.y, c.z - b.z];
  const lengths = Math.hypot(ux, uy, uz) * Math.hypot(vx, vy, vz);
  return lengths > 0 && ux * vx + uy * vy + uz * vz > (1 - 1e-9) * lengths;
};

/**
 * Joins the pipes of one network into straight stretches.
 * @param busy nodes where a stretch ends though the pipe goes straight on: nozzles, the pipe's begin
 */
export function stretchesOf(pipes: readonly DerivedPipe[], busy: ReadonlySet<string>): PipeStretch[] {
  const at = new Map<string, DerivedPipe[]>();
  for (const pipe of pipes) for (const node of endsOf(pipe)) at.set(node, [...(at.get(node) ?? []), pipe]);
  const joins = new Map<DerivedPipe, DerivedPipe>();
  const joined = new Set<DerivedPipe>();
  for (const [node, meeting] of at) {
    const [first, second] = meeting;
    if (meeting.length !== 2 || !first || !second || busy.has(node) || first.pipe.size !== second.pipe.size || first.pipe.schedule !== second.pipe.schedule) continue;
    for (const [p, q] of [
      [first, second],
      [second, first],
    ] as const) {
      if (distance3_m(p.to, q.from) <= SAME_PLACE_m && isStraight(p.from, p.to, q.to) && !joins.has(p) && !joined.has(q)) {
        joins.set(p, q);
        joined.add(q);
        break;
      }
    }
  }
  return pipes
    .filter((pipe) => !joined.has(pipe))
    .map((start): PipeStretch => {
      const chain = [start];
      for (let next = joins.get(start); next && !chain.includes(next); next = joins.get(next)) chain.push(next);
      const end = chain.at(-1) ?? start;
      const run_m = distance_m(start.from, end.to);
      const rise_m = end.to.z - start.from.z;
      const isUpright = run_m <= SAME_PLACE_m;
      const isLevel = Math.abs(rise_m) <= SAME_PLACE_m;
      return {
        from: start.from,
        to: end.to,
        size: start.pipe.size,
        schedule: start.pipe.schedule,
        length_m: distance3_m(start.from, end.to),
        lie: isUpright ? 'upright' : isLevel ? 'level' : 'sloped',
        way: isUpright ? (rise_m >= 0 ? 'riser' : 'drop') : null,
        network: start.ref.network,
        pipes: chain.map(({ ref }) => ref.id),
      };
    });
}

/** Straight stretches of a network's pipes, parted at its nozzles and where its pipe begins. */
export function networkStretches({ network }: DerivedNetwork, pipes: readonly DerivedPipe[]): PipeStretch[] {
  const busy = new Set(Object.values(network.nozzles).map(({ node }) => node));
  if (network.source) busy.add(network.source);
  return stretchesOf(pipes, busy);
}

/** The upright stretch that ends at a nozzle's orifice, if one does. */
export const dropTo = (stretches: readonly PipeStretch[], orifice: PlanPoint3): PipeStretch | undefined =>
  stretches.find(({ lie, to }) => lie === 'upright' && distance3_m(to, orifice) <= SAME_PLACE_m);
