import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { type Direction3, angleBetween3_rad, direction3 } from '../geometry/vector3.ts';
import type { Pipe } from '../model/plan.ts';
import { type PipeSize, pipeSizeRank } from '../profile/pipe-table.ts';
import type { DerivedNetwork, Fitting, FittingKind } from './derived.ts';
import { isOrdinaryFitting } from './ordinary-fitting.ts';
import { type MatchedFitting, findMadeFitting } from './made-fitting.ts';
import { pipeTreeOf } from './pipe-tree.ts';
import { remembered } from './remember.ts';

/** A leg of a fitting, in the order in which the trade names them: of a tee the run, its larger end first, then the branch. */
export interface FittingLeg {
  /** null: the discharge assembly, or a leg that no pipe of the plan is on. */
  readonly pipe: string | null;
  readonly size: PipeSize;
}

/** A fitting as it is bought: one for each thing that stands at a node. */
export interface BoughtFitting extends Fitting {
  readonly legs: readonly FittingLeg[];
  /** Its legs are of different sizes: it has lengths of its own. */
  readonly isReducing: boolean;
  /** What its maker says of it, leg by leg; null: not in the unit profile. */
  readonly made: MatchedFitting | null;
}

/** A pipe at a node, and its other end. */
interface Way {
  readonly pipe: Pipe;
  readonly there: PlanPoint3 | undefined;
}
type Ways = readonly Way[];

const rank = ({ size }: Pick<Pipe, 'size'>): number => pipeSizeRank(size);
const legOf = ({ pipe }: Way): FittingLeg => ({ pipe: pipe.id, size: pipe.size });
const largerFirst = <Leg extends FittingLeg>(legs: readonly Leg[]): Leg[] => [...legs].sort((a, b) => rank(b) - rank(a));

/** How straight two legs run through [rad], π for a straight run. */
const opening = (a: Direction3 | undefined, b: Direction3 | undefined): number => (a && b ? angleBetween3_rad(a, b) : 0);

/** The two legs of the run, then the others. */
function runFirst(ways: Ways, at: PlanPoint3): Way[] {
  const away = ways.map(({ there }) => there && direction3(at, there, SAME_PLACE_m));
  let run: readonly [Way, Way] | undefined;
  let widest_rad = 0;
  for (const [i, a] of ways.entries()) {
    for (let k = i + 1; k < ways.length; k += 1) {
      const [b, open_rad] = [ways[k], opening(away[i], away[k])];
      if (!b || (run && open_rad <= widest_rad + 1e-12)) continue;
      run = [a, b];
      widest_rad = open_rad;
    }
  }
  const first = run;
  return first ? [...first, ...ways.filter((way) => !first.includes(way))] : [...ways];
}

/**
 * Legs of a fitting in the order of the trade. The discharge assembly is a leg where the network begins at a tee or cross.
 * The outside thread of a street elbow is taken to be on the shorter leg: it screws straight into the next fitting.
 */
function legsOf({ kind, isStreet }: Pick<Fitting, 'kind' | 'isStreet'>, ways: Ways, at: PlanPoint3, isSource: boolean): FittingLeg[] {
  const length_m = ({ there }: Way): number => (there ? distance3_m(at, there) : 0);
  if (isStreet) return [...ways].sort((a, b) => length_m(b) - length_m(a)).map(legOf);
  const legs = kind === 'tee' || kind === 'cross' ? runFirst(ways, at).map(legOf) : largerFirst(ways.map(legOf));
  const [a, b, ...branches] = legs;
  if ((kind !== 'tee' && kind !== 'cross') || !a || !b) return legs;
  if (!isSource) return [...largerFirst([a, b]), ...largerFirst(branches)];
  const [largest = a] = largerFirst(legs);
  return [...legs, { pipe: null, size: largest.size }];
}

/**
 * The fittings that are bought for a network, node by node from the source outwards: the same ones on plan, isometric,
 * schedule and bill.
 * - Where sizes meet at a tee, cross or elbow, one reducing fitting stands there if its maker gives it or the trade keeps
 *   it (common practice); else a straight one of the largest size, with a reducer on each smaller leg.
 * - Pipe that goes straight on in another size takes a reducer; in another make, a coupling, or a joint where it is not threaded.
 * - A plug has an outside thread: a coupling holds it on the end of its pipe.
 */
export const boughtFittingsOf = remembered((derived: DerivedNetwork): readonly BoughtFitting[] => {
  const { network, profile } = derived;
  const tree = pipeTreeOf(network);
  const nozzles = new Set(Object.values(network.nozzles).map(({ node }) => node));
  const made = (kind: FittingKind, legs: readonly FittingLeg[], isStreet: boolean): MatchedFitting | null => findMadeFitting(profile?.madeFittings ?? [], kind, legs, isStreet) ?? null;
  const byNode = new Map<string, Fitting[]>();
  for (const fitting of derived.fittings) {
    const others = byNode.get(fitting.node);
    if (others) others.push(fitting);
    else byNode.set(fitting.node, [fitting]);
  }

  return tree.order.flatMap((node): BoughtFitting[] => {
    const at = tree.places.get(node);
    if (!at) return [];
    const here = byNode.get(node) ?? [];
    const isSource = node === tree.source;
    const waysOf = (pipes: readonly string[]): Way[] =>
      (tree.legs.get(node) ?? []).flatMap(({ pipe, other }) => (pipes.includes(pipe.id) ? [{ pipe, there: tree.places.get(other) }] : []));
    const bought = (fitting: Omit<BoughtFitting, 'legs' | 'isReducing' | 'made'>, legs: readonly FittingLeg[], known?: MatchedFitting | null): BoughtFitting => ({
      ...fitting,
      legs,
      isReducing: legs.some(({ size }) => size !== legs[0]?.size),
      made: known === undefined ? made(fitting.kind, legs, fitting.isStreet) : known,
    });
    const reducer = (fitting: Fitting, large: PipeSize, leg: FittingLeg): BoughtFitting =>
      bought({ ...fitting, kind: 'reducer', turn_rad: 0, isBull: false, isStreet: false, isTrap: false, pipes: [...fitting.pipes.filter((id) => id !== leg.pipe).slice(0, 1), ...(leg.pipe === null ? [] : [leg.pipe])] }, [{ pipe: null, size: large }, leg]);

    const main = here.find(({ kind, pipes }) => kind !== 'reducer' && (kind !== 'odd-bend' || pipes.length > 1));
    const odd = here.filter((fitting) => fitting.kind === 'odd-bend' && fitting !== main).map((fitting) => bought(fitting, waysOf(fitting.pipes).map(legOf)));
    if (!main) {
      const changes = here.filter(({ kind }) => kind === 'reducer').map((fitting) => bought(fitting, legsOf(fitting, waysOf(fitting.pipes), at, false)));
      if (changes.length > 0) return changes;
      const legs = tree.legs.get(node) ?? [];
      const [a, b] = legs.map(({ pipe }) => pipe);
      if (legs.length !== 2 || !a || !b || isSource || nozzles.has(node) || isOneMake(a, b)) return [];
      const kind = a.joint === 'threaded' && b.joint === 'threaded' ? 'coupling' : 'joint';
      const pipes = [a.id, b.id];
      return [bought({ node, at, kind, turn_rad: 0, pipes, isBull: false, isStreet: false, isTrap: false }, waysOf(pipes).map(legOf))];
    }

    const legs = legsOf(main, waysOf(main.pipes), at, isSource);
    const sizes = legs.map(({ size }) => size);
    if (main.kind === 'plug') return [bought(main, legs), bought({ ...main, kind: 'coupling' }, legs)];
    // Where the network begins, which leg the discharge assembly is on is not drawn: lengths that differ from leg to leg cannot be told.
    const found = made(main.kind, legs, main.isStreet);
    const match = isSource && new Set(found?.reaches_m).size > 1 ? null : found;
    if (new Set(sizes).size === 1) return [bought(main, legs, match), ...odd];
    if (match || isOrdinaryFitting(main.kind, sizes)) return [bought(main, legs, match), ...odd];
    const [largest = sizes[0]] = largerFirst(legs).map(({ size }) => size);
    if (!largest) return [];
    const straight = legs.map(({ pipe }) => ({ pipe, size: largest }));
    return [bought(main, straight), ...odd, ...legs.filter(({ size }) => size !== largest).map((leg) => reducer(main, largest, leg))];
  });
});

/** Whether two pipes are cut from the same bar and joined the same way. */
export const isOneMake = (a: Pipe, b: Pipe): boolean => a.size === b.size && a.schedule === b.schedule && a.material === b.material && a.joint === b.joint;

/** Sizes of a fitting as the trade names it: one where all legs are alike. */
export function fittingSizesOf({ legs }: Pick<BoughtFitting, 'legs'>): PipeSize[] {
  const sizes = legs.map(({ size }) => size);
  return new Set(sizes).size === 1 ? sizes.slice(0, 1) : sizes;
}

