import { type BoughtFitting, boughtFittingsOf } from '../derived/bought-fittings.ts';
import type { DerivedNetwork, DerivedNozzle } from '../derived/derived.ts';
import { type PressureZone, pipeZoneOf } from '../derived/pipe-zone.ts';
import { type PlacedSupport, placedSupportsOf } from '../derived/placed-supports.ts';
import { type PlanPoint3, distance3_m, polar } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { type DrawnLike, bestArrangement, drawnLike, likeArrangement } from './drawn-lengths.ts';
import { crowding } from './crowding.ts';
import { legsOf } from './fitting-attitude.ts';
import { type IsoPlace, type IsoView, nearness, project } from './project.ts';
import { type StraightRun, runTreeOf } from './straight-runs.ts';

/** A place worth a number: where the pipe begins, turns, parts, changes its size, or ends. */
export interface IsometricNode {
  /** Along the flow, from 1. */
  readonly number: number;
  readonly id: string;
  readonly at: PlanPoint3;
  readonly place: IsoPlace;
  readonly isSource: boolean;
  readonly nozzle: DerivedNozzle | undefined;
  readonly fittings: readonly BoughtFitting[];
  /** Developed length from where the pipe begins [m]; undefined where the agent does not get. */
  readonly distance_m: number | undefined;
  /** A run that rises or falls begins or ends here: the height must be told. */
  readonly changesHeight: boolean;
}

/** Straight pipe as it is drawn; printed with its true length. */
export interface IsometricRun extends StraightRun {
  readonly a: IsoPlace;
  readonly b: IsoPlace;
  /** Drawn shorter than it is. */
  readonly isBroken: boolean;
  /** What is nearer is drawn later. */
  readonly nearness: number;
}

/** A direction on the drawing [rad], counter-clockwise from its right. */
type Heading_rad = number;

export interface IsometricFitting {
  readonly fitting: BoughtFitting;
  readonly place: IsoPlace;
  /** Where its pipes leave it, the one toward the source first. */
  readonly legs_rad: readonly Heading_rad[];
}

export interface IsometricSupport {
  readonly placed: PlacedSupport;
  readonly place: IsoPlace;
  readonly pipe_rad: Heading_rad;
}

/** A network drawn by isometric axes, not to scale. */
export interface Isometric {
  readonly network: DerivedNetwork;
  /** Where the viewer stands. */
  readonly view: IsoView;
  /** Pressure that all its pipe stands under. */
  readonly zone: PressureZone;
  readonly nodes: readonly IsometricNode[];
  readonly runs: readonly IsometricRun[];
  readonly fittings: readonly IsometricFitting[];
  readonly supports: readonly IsometricSupport[];
  /** Supports that lie on no drawn pipe. */
  readonly looseSupports: number;
  readonly north_rad: Heading_rad;
  /** How hard its pipes are to tell apart; 0 is clear. */
  readonly crowding: number;
  /** For the next drawing of the same network, so that it does not jump. */
  readonly like: DrawnLike;
}

const heading = (way: IsoPlace): Heading_rad => Math.atan2(way.y, way.x);

/** Where the holes of a nozzle blow on the drawing [rad]. */
export const holeHeadings = ({ holes_rad }: DerivedNozzle, view: IsoView): Heading_rad[] =>
  holes_rad.map((hole_rad) => heading(project({ ...polar({ x: 0, y: 0 }, hole_rad, 1), z: 0 }, view)));

/**
 * Lays a network out as an isometric: every pipe and fitting once, nodes numbered along the flow.
 * @param like  an earlier drawing that this one keeps to; without it the clearest is searched
 */
export function layoutIsometric(network: DerivedNetwork, like?: DrawnLike): Isometric {
  const tree = runTreeOf(network);
  const bought = boughtFittingsOf(network);
  const arrangement = like ? likeArrangement(tree, like) : bestArrangement(tree);
  const { view, drawn, places } = arrangement;
  const middle = (a: PlanPoint3, b: PlanPoint3): PlanPoint3 => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, z: (a.z + b.z) / 2 });
  const runs = tree.runs.flatMap((run, i): IsometricRun[] => {
    const [a, b] = [places.get(run.from), places.get(run.to)];
    return a && b ? [{ ...run, a, b, isBroken: (drawn[i] ?? run.length_m) < run.length_m - SAME_PLACE_m, nearness: nearness(middle(run.start, run.end), view) }] : [];
  });

  const source = network.network.source;
  const distances = new Map<string, number>(source === null ? [] : [[source, 0]]);
  for (const { from, to, length_m } of runs) {
    const before = distances.get(from);
    if (before !== undefined && !distances.has(to)) distances.set(to, before + length_m);
  }
  const slanted = new Set(runs.filter(({ start, end }) => Math.abs(start.z - end.z) > SAME_PLACE_m).flatMap(({ from, to }) => [from, to]));
  const ends = new Map(network.nozzles.map((nozzle) => [nozzle.nozzle.node, nozzle]));
  const nodes = tree.nodes.flatMap((id): Omit<IsometricNode, 'number'>[] => {
    const [place, at] = [places.get(id), tree.places.get(id)];
    if (!place || !at) return [];
    const fittings = bought.filter(({ node }) => node === id);
    return [{ id, at, place, isSource: id === source, nozzle: ends.get(id), fittings, distance_m: distances.get(id), changesHeight: slanted.has(id) || id === source || ends.has(id) }];
  });

  const supports = placedSupportsOf(network).flatMap((placed): IsometricSupport[] => {
    const run = runs.find(({ pipes }) => placed.pipe && pipes.includes(placed.pipe.ref.id));
    if (!run || run.length_m <= 0) return [];
    const share = Math.min(1, distance3_m(run.start, placed.support.at) / run.length_m);
    return [{ placed, place: { x: run.a.x + (run.b.x - run.a.x) * share, y: run.a.y + (run.b.y - run.a.y) * share }, pipe_rad: heading({ x: run.b.x - run.a.x, y: run.b.y - run.a.y }) }];
  });
  return {
    network,
    view,
    zone: pipeZoneOf(network.network),
    nodes: nodes.map((node, i) => ({ ...node, number: i + 1 })),
    runs,
    fittings: bought.flatMap((fitting): IsometricFitting[] => {
      const place = places.get(fitting.node);
      return place ? [{ fitting, place, legs_rad: legsOf(network, fitting).map((leg) => heading(project(leg, view))) }] : [];
    }),
    supports,
    looseSupports: Object.keys(network.network.supports).length - supports.length,
    north_rad: heading(project({ x: 0, y: 1, z: 0 }, view)),
    crowding: crowding(runs, 0),
    like: drawnLike(tree, arrangement),
  };
}

/** The middle one of the drawn lengths of the runs [m of the drawing]; 1 where none has a length. */
export function middleRun_m({ runs }: Pick<Isometric, 'runs'>): number {
  const lengths = runs.map(({ a, b }) => Math.hypot(b.x - a.x, b.y - a.y)).filter((length) => length > 0).sort((a, b) => a - b);
  return lengths[Math.floor(lengths.length / 2)] ?? 1;
}
