import type { Derived, DerivedNetwork, DerivedNozzle, Solid, Space } from '#shared/derived/derived';
import { floorAt_m } from '#shared/derived/spaces';
import { type Box, type Outline, boundsOf, boxesTouch, isInside, sidesOf } from '#shared/geometry/outline';
import { type PlanPoint, type PlanPoint3, distance_m, planPoint } from '#shared/geometry/point';
import { type Segment, distanceToSegment_m, meetingOf } from '#shared/geometry/segment';
import type { RefOf } from '#shared/model/plan';
import { type SectionPath, alongOf_m } from './section-path.ts';

/** A place in the section: distance along the way and height above the finished floor [m]. */
export interface SectionPoint {
  readonly s: number;
  readonly z: number;
}

/** A stretch of the way inside one space. */
export interface Bay {
  readonly space: Space;
  readonly from_m: number;
  readonly to_m: number;
  /** Whether a wall stands at its ends; otherwise the way only turns or begins there. */
  readonly wallAtStart: boolean;
  readonly wallAtEnd: boolean;
  readonly floor: readonly SectionPoint[];
  /** Empty while the ceiling is not known. */
  readonly ceiling: readonly SectionPoint[];
}

export interface CutSolid {
  readonly solid: Solid;
  readonly from_m: number;
  readonly to_m: number;
  /** The way runs through it; otherwise it is seen beyond. */
  readonly isCut: boolean;
}

export interface SectionPipe {
  readonly ref: RefOf<'pipe'>;
  readonly a: SectionPoint;
  readonly b: SectionPoint;
  readonly outside_m: number;
  readonly isBeyond: boolean;
}

export interface SectionNode {
  readonly ref: RefOf<'node'>;
  readonly at: SectionPoint;
  /** Its place in the plan. */
  readonly place: PlanPoint3;
}

export interface SectionNozzle {
  readonly nozzle: DerivedNozzle;
  readonly at: SectionPoint;
  readonly isBeyond: boolean;
}

export interface SectionCylinder {
  readonly ref: RefOf<'cylinder'>;
  readonly network: DerivedNetwork;
  readonly name: string;
  readonly along_m: number;
  readonly railHeight_m: number | null;
  readonly outletHeight_m: number | undefined;
  /** Where the pipe begins, seen from this cylinder. */
  readonly source: SectionPoint | undefined;
}

/** What the strip shows, true to scale. */
export interface SectionCut {
  readonly path: SectionPath;
  readonly length_m: number;
  readonly bottom_m: number;
  readonly top_m: number;
  readonly bays: readonly Bay[];
  readonly solids: readonly CutSolid[];
  readonly pipes: readonly SectionPipe[];
  readonly nodes: readonly SectionNode[];
  readonly nozzles: readonly SectionNozzle[];
  readonly cylinders: readonly SectionCylinder[];
}

/** Nearer to the cut than this is on it [m]. */
const ON_CUT_m = 0.15;
/** An unfolded run shows what stands within this distance of it [m]. */
const BESIDE_RUN_m = 0.6;
/** Ceilings are followed in steps of this length, and exactly at every edge [m]. */
const CEILING_STEP_m = 0.25;
/** Heights are read this far to either side of an edge [m]. */
const EDGE_m = 1e-5;

interface Piece extends Segment {
  readonly start_m: number;
  readonly length_m: number;
  readonly bounds: Box;
}

const piecesOf = ({ places }: SectionPath): Piece[] => {
  const along = alongOf_m(places);
  return places.slice(1).flatMap((b, i) => {
    const a = places[i];
    return a ? [{ a, b, start_m: along[i] ?? 0, length_m: distance_m(a, b), bounds: boundsOf([a, b]) }] : [];
  });
};

const placeOn = ({ a, b, length_m }: Piece, at_m: number): PlanPoint => {
  const t = length_m === 0 ? 0 : at_m / length_m;
  return planPoint(a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t);
};

/** Distances along a piece at which it crosses the sides of rings [m], with its two ends, in order. */
function crossings_m(piece: Piece, rings: readonly Outline[]): number[] {
  const found = rings.flatMap((ring) => sidesOf(ring).flatMap((side) => meetingOf(piece, side) ?? [])).map((p) => distance_m(piece.a, p));
  return [0, ...found, piece.length_m].sort((a, b) => a - b).filter((each, i, all) => i === 0 || each - (all[i - 1] ?? 0) > 1e-7);
}

/** Stretches of a piece inside an area. */
function stretchesIn(piece: Piece, outline: Outline, holes: readonly Outline[]): [number, number][] {
  const stops = crossings_m(piece, [outline, ...holes]);
  const merged: [number, number][] = [];
  for (let i = 0; i + 1 < stops.length; i += 1) {
    const from = stops[i] ?? 0;
    const to = stops[i + 1] ?? 0;
    const middle = placeOn(piece, (from + to) / 2);
    if (!isInside(middle, outline) || holes.some((hole) => isInside(middle, hole))) continue;
    const last = merged.at(-1);
    if (last && from - last[1] < 1e-6) last[1] = to;
    else merged.push([from, to]);
  }
  return merged;
}

function bayOf(space: Space, piece: Piece, [from, to]: [number, number]): Bay {
  const zones = Object.values(space.enclosure.ceilingZones).map(({ outline }) => outline);
  const edges = crossings_m(piece, zones).filter((each) => each > from + EDGE_m && each < to - EDGE_m);
  const stops = [from + EDGE_m, ...edges.flatMap((each) => [each - EDGE_m, each + EDGE_m]), to - EDGE_m];
  for (let at = from + CEILING_STEP_m; at < to; at += CEILING_STEP_m) stops.push(at);
  stops.sort((a, b) => a - b);
  const follow = (height: (p: PlanPoint) => number | undefined): SectionPoint[] => {
    const points = stops.map((at) => ({ s: piece.start_m + at, z: height(placeOn(piece, at)) }));
    return points.every((p): p is SectionPoint => p.z !== undefined) ? straightened(points) : [];
  };
  return {
    space,
    from_m: piece.start_m + from,
    to_m: piece.start_m + to,
    wallAtStart: from > 1e-6,
    wallAtEnd: to < piece.length_m - 1e-6,
    floor: follow((p) => floorAt_m(space, p)),
    ceiling: follow(space.ceilingAt_m),
  };
}

/** Leaves out places that lie on the straight line between their neighbours. */
export function straightened(points: readonly SectionPoint[]): SectionPoint[] {
  const kept: SectionPoint[] = [];
  for (const [i, p] of points.entries()) {
    const before = kept.at(-1);
    const after = points[i + 1];
    if (before && after) {
      const cross = (p.s - before.s) * (after.z - before.z) - (p.z - before.z) * (after.s - before.s);
      if (Math.abs(cross) < 1e-7) continue;
    }
    kept.push(p);
  }
  return kept;
}

/** Where a place appears on a straight way: along it, and how far left of it [m]. */
function onLine({ a, b, length_m }: Piece, p: PlanPoint | PlanPoint3): { s: number; left_m: number } {
  const ux = (b.x - a.x) / length_m;
  const uy = (b.y - a.y) / length_m;
  return { s: (p.x - a.x) * ux + (p.y - a.y) * uy, left_m: (p.y - a.y) * ux - (p.x - a.x) * uy };
}

/** Everything that the strip shows along a way. */
export function cutSection(derived: Derived, path: SectionPath, level: string): SectionCut {
  const pieces = piecesOf(path);
  const spaces = derived.spaces.filter((space) => space.level.id === level && (path.enclosure === undefined || space.enclosure.id === path.enclosure));
  const bays = pieces.flatMap((piece) => spaces.filter(({ bounds }) => boxesTouch(bounds, piece.bounds)).flatMap((space) => stretchesIn(piece, space.outline, space.holes).map((stretch) => bayOf(space, piece, stretch))));
  const rooms = [...new Set(bays.map(({ space }) => space))].filter((space) => space.kind === 'room');
  const solids = solidsAlong(derived, level, pieces, path, rooms);
  const networks = derived.networks.filter((network) => network.network.level === level);
  const line = pieces[0];
  const things = path.run ? runThings(networks, path.run) : line ? lineThings(networks, line, path.kind, rooms) : NO_THINGS;
  const heights = [
    ...bays.flatMap(({ floor, ceiling }) => [...floor, ...ceiling].map(({ z }) => z)),
    ...solids.flatMap(({ solid }) => [solid.bottom_m, solid.top_m]),
    ...things.pipes.flatMap(({ a, b }) => [a.z, b.z]),
    ...things.nozzles.map(({ at }) => at.z),
    ...things.cylinders.map(({ outletHeight_m }) => outletHeight_m ?? 0),
  ].filter((z) => Math.abs(z) < 60);
  return {
    path,
    length_m: pieces.reduce((sum, piece) => sum + piece.length_m, 0),
    bottom_m: Math.min(0, ...heights),
    top_m: Math.max(2.4, ...heights),
    bays,
    solids,
    ...things,
  };
}

function solidsAlong(derived: Derived, level: string, pieces: readonly Piece[], path: SectionPath, rooms: readonly Space[]): CutSolid[] {
  const all = derived.solids.filter((solid) => solid.ref.level === level);
  const cut = all.flatMap((solid) =>
    pieces.filter((piece) => boxesTouch(solid.bounds, piece.bounds)).flatMap((piece) => stretchesIn(piece, solid.footprint, []).map(([from, to]) => ({ solid, from_m: piece.start_m + from, to_m: piece.start_m + to, isCut: true }))),
  );
  const isCut = new Set(cut.map(({ solid }) => solid));
  const inRooms = [...new Set(rooms.flatMap((room) => room.solids))].filter((solid) => !isCut.has(solid));
  const beyond = inRooms.flatMap((solid) =>
    pieces.flatMap((piece) => {
      if (path.kind === 'run' && Math.min(...sidesOf(solid.footprint).map(({ a }) => distanceToSegment_m(a, piece)), Infinity) > BESIDE_RUN_m) return [];
      const seen = solid.footprint.map((p) => onLine(piece, p));
      if (path.kind === 'line' && Math.max(...seen.map(({ left_m }) => left_m)) <= 0) return [];
      const from = Math.max(0, Math.min(...seen.map(({ s }) => s)));
      const to = Math.min(piece.length_m, Math.max(...seen.map(({ s }) => s)));
      return to - from > 1e-6 ? [{ solid, from_m: piece.start_m + from, to_m: piece.start_m + to, isCut: false }] : [];
    }),
  );
  return [...beyond, ...cut];
}

type Things = Pick<SectionCut, 'pipes' | 'nodes' | 'nozzles' | 'cylinders'>;
const NO_THINGS: Things = { pipes: [], nodes: [], nozzles: [], cylinders: [] };

const cylinderOf = (network: DerivedNetwork, id: string, along_m: number, source: SectionPoint | undefined): SectionCylinder[] => {
  const cylinder = network.network.cylinders[id];
  if (!cylinder) return [];
  return [
    {
      ref: { kind: 'cylinder', network: network.network.id, id },
      network,
      name: cylinder.name,
      along_m,
      railHeight_m: cylinder.railHeight_m,
      outletHeight_m: network.profile?.limits.outletHeight_m?.value,
      source,
    },
  ];
};

/** The pipes, nodes and nozzles of an unfolded run, each as far along as the run has come. */
function runThings(networks: readonly DerivedNetwork[], run: NonNullable<SectionPath['run']>): Things {
  const network = networks.find((each) => each.network.id === run.network);
  if (!network) return NO_THINGS;
  const { nodes, source } = network.network;
  const at = (id: string): SectionPoint | undefined => {
    const s = run.nodes.get(id);
    const node = nodes[id];
    return s === undefined || !node ? undefined : { s, z: node.at.z };
  };
  return {
    pipes: network.pipes.flatMap(({ ref, pipe, outside_m }) => {
      const a = at(pipe.from);
      const b = at(pipe.to);
      return run.pipes.has(pipe.id) && a && b ? [{ ref, a, b, outside_m, isBeyond: false }] : [];
    }),
    nodes: [...run.nodes.keys()].flatMap((id) => {
      const place = at(id);
      const node = nodes[id];
      return place && node ? [{ ref: { kind: 'node' as const, network: network.network.id, id }, at: place, place: node.at }] : [];
    }),
    nozzles: network.nozzles.flatMap((nozzle) => {
      const place = at(nozzle.nozzle.node);
      return place ? [{ nozzle, at: place, isBeyond: false }] : [];
    }),
    cylinders: run.cylinder === null ? [] : cylinderOf(network, run.cylinder, run.cylinderAlong_m, source === null ? undefined : at(source)),
  };
}

/** What hangs and stands in the rooms that a straight cut goes through, seen square to it. */
function lineThings(networks: readonly DerivedNetwork[], line: Piece, kind: SectionPath['kind'], rooms: readonly Space[]): Things {
  const isInRooms = (p: PlanPoint): boolean => rooms.some((room) => isInside(p, room.outline));
  const seen = (p: PlanPoint | PlanPoint3): { s: number; left_m: number } | undefined => {
    const place = onLine(line, p);
    if (place.s < -1e-6 || place.s > line.length_m + 1e-6) return undefined;
    return kind === 'line' && place.left_m < -ON_CUT_m ? undefined : place;
  };
  const isBeyond = ({ left_m }: { left_m: number }): boolean => Math.abs(left_m) > ON_CUT_m;
  const things = { pipes: [] as SectionPipe[], nodes: [] as SectionNode[], nozzles: [] as SectionNozzle[], cylinders: [] as SectionCylinder[] };
  for (const network of networks) {
    const { nodes, cylinders, source } = network.network;
    const shownNodes = new Set<string>();
    for (const { ref, from, to, pipe, outside_m } of network.pipes) {
      const a = seen(from);
      const b = seen(to);
      if (!a || !b || !isInRooms({ x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 })) continue;
      shownNodes.add(pipe.from);
      shownNodes.add(pipe.to);
      things.pipes.push({ ref, a: { s: a.s, z: from.z }, b: { s: b.s, z: to.z }, outside_m, isBeyond: isBeyond(a) || isBeyond(b) });
    }
    for (const id of shownNodes) {
      const node = nodes[id];
      const place = node && seen(node.at);
      if (node && place) things.nodes.push({ ref: { kind: 'node', network: network.network.id, id }, at: { s: place.s, z: node.at.z }, place: node.at });
    }
    for (const nozzle of network.nozzles) {
      const place = nozzle.at && seen(nozzle.at);
      if (nozzle.at && place && isInRooms(nozzle.at)) things.nozzles.push({ nozzle, at: { s: place.s, z: nozzle.at.z }, isBeyond: isBeyond(place) });
    }
    const begin = source === null ? undefined : nodes[source]?.at;
    const beginSeen = begin && seen(begin);
    for (const { id, at } of Object.values(cylinders)) {
      const place = seen(at);
      if (place && isInRooms(at)) things.cylinders.push(...cylinderOf(network, id, place.s, begin && beginSeen ? { s: beginSeen.s, z: begin.z } : undefined));
    }
  }
  return things;
}
