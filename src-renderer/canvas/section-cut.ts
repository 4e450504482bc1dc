import type { Derived, Solid, Space } from '#shared/derived/derived';
import { floorAt_m } from '#shared/derived/spaces';
import { type Outline, boxesTouch, isInside, sidesOf } from '#shared/geometry/outline';
import { type PlanPoint, distance_m } from '#shared/geometry/point';
import { distanceToSegment_m, meetingOf } from '#shared/geometry/segment';
import { type SectionDevice, devicesAlong } from './section-devices.ts';
import type { SectionPath } from './section-path.ts';
import { type Piece, onLine, piecesOf, placeOn } from './section-piece.ts';
import { NO_THINGS, type SectionPoint, type SectionThings, lineThings, runThings } from './section-things.ts';

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

/** What the strip shows, true to scale. */
export interface SectionCut extends SectionThings {
  readonly path: SectionPath;
  readonly length_m: number;
  readonly bottom_m: number;
  readonly top_m: number;
  readonly bays: readonly Bay[];
  readonly solids: readonly CutSolid[];
  readonly devices: readonly SectionDevice[];
}

/** An unfolded run shows what stands within this distance of it [m]. */
const BESIDE_RUN_m = 0.6;
/** Ceilings are followed in steps of this length, and exactly at every edge [m]. */
const CEILING_STEP_m = 0.25;
/** Heights are read this far to either side of an edge [m]. */
const EDGE_m = 1e-5;

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
  const devices = devicesAlong(derived.plan.levels[level], pieces, path, rooms);
  const heights = [
    ...bays.flatMap(({ floor, ceiling }) => [...floor, ...ceiling].map(({ z }) => z)),
    ...solids.flatMap(({ solid }) => [solid.bottom_m, solid.top_m]),
    ...things.pipes.flatMap(({ a, b }) => [a.z, b.z]),
    ...things.nozzles.map(({ at }) => at.z),
    ...devices.map(({ at }) => at.z),
    ...things.cylinders.map(({ outletHeight_m }) => outletHeight_m ?? 0),
  ].filter((z) => Math.abs(z) < 60);
  return {
    path,
    length_m: pieces.reduce((sum, piece) => sum + piece.length_m, 0),
    bottom_m: Math.min(0, ...heights),
    top_m: Math.max(2.4, ...heights),
    bays,
    solids,
    devices,
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
