import { isInsideRegion, sideOfOutline } from '../geometry/inside.ts';
import { type Outline, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, distance_m, planPoint } from '../geometry/point.ts';
import type { Segment } from '../geometry/segment.ts';
import { LENGTH_SLACK_m, SAME_PLACE_m } from '../geometry/tolerance.ts';
import { isFullHeight } from './clearance-faces.ts';
import type { Solid, Space } from './derived.ts';

/** Sound goes round a thing that is narrower than this as if it were not there [m]. */
const WIDE_m = 1;

/** The floor of a room as sound finds it: its walls and shafts, and the wide things that are as high as the room. */
export interface SoundFloor {
  readonly outline: Outline;
  readonly holes: readonly Outline[];
  readonly tall: readonly Outline[];
  readonly sides: readonly Segment[];
  /** Corners that a way can bend round. */
  readonly bends: readonly PlanPoint[];
}

const isWide = ({ bounds: { minX, minY, maxX, maxY } }: Solid): boolean => Math.hypot(maxX - minX, maxY - minY) >= WIDE_m;

/** Corners at which a ring with the room on its left turns right: a way can bend round them. */
const bendsOf = (ring: Outline): PlanPoint[] =>
  ring.filter((at, i) => {
    const [from, to] = [ring.at(i - 1), ring[(i + 1) % ring.length]];
    return from !== undefined && to !== undefined && (at.x - from.x) * (to.y - at.y) - (at.y - from.y) * (to.x - at.x) < 0;
  });

/**
 * The floor of a room for sound.
 * @param ear_m  height that a thing must rise above while the ceiling is unknown [m]
 */
export function soundFloorOf(space: Space, ear_m: number): SoundFloor {
  const tall = space.solids.filter((solid) => isWide(solid) && isFullHeight(space, solid, ear_m)).map(({ footprint }) => footprint);
  const rings = [space.outline, ...space.holes, ...tall.map((ring) => [...ring].reverse())];
  return { outline: space.outline, holes: space.holes, tall, sides: rings.flatMap(sidesOf), bends: rings.flatMap(bendsOf) };
}

/** Whether a place is on the floor of a room, walls included. */
export const isOnFloor = ({ outline, holes, tall }: SoundFloor, at: PlanPoint): boolean => isInsideRegion(at, outline, holes) && tall.every((ring) => sideOfOutline(at, ring) !== 'inside');

/** Whether a place lies in the crack between two of the rings, where nothing gets through. */
export const isInCrack = ({ outline, holes, tall }: SoundFloor, at: PlanPoint): boolean => tall.length > 0 && [outline, ...holes, ...tall].filter((ring) => sideOfOutline(at, ring) === 'on').length > 1;

/** Shares of the way from `a` to `b` at which it meets a side, ends of sides included. */
function meetings({ sides }: SoundFloor, a: PlanPoint, b: PlanPoint): number[] {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const slack = SAME_PLACE_m;
  const found: number[] = [];
  for (const side of sides) {
    const [sx, sy] = [side.b.x - side.a.x, side.b.y - side.a.y];
    const cross = dx * sy - dy * sx;
    if (Math.abs(cross) < 1e-15) continue;
    const [qx, qy] = [side.a.x - a.x, side.a.y - a.y];
    const t = (qx * sy - qy * sx) / cross;
    const u = (qx * dy - qy * dx) / cross;
    const overhang = slack / Math.hypot(sx, sy);
    if (t > 0 && t < 1 && u >= -overhang && u <= 1 + overhang) found.push(t);
  }
  return found.sort((one, other) => one - other);
}

/** Whether the straight way between two places stays on the floor; along a wall and round a corner it does. */
export function isStraightWay(floor: SoundFloor, a: PlanPoint, b: PlanPoint): boolean {
  const length_m = distance_m(a, b);
  if (length_m <= LENGTH_SLACK_m) return true;
  const stops = [0, ...meetings(floor, a, b), 1];
  return stops.slice(1).every((stop, i) => {
    const from = stops[i] ?? 0;
    if ((stop - from) * length_m <= 4 * SAME_PLACE_m) return true;
    const middle = (from + stop) / 2;
    const at = planPoint(a.x + (b.x - a.x) * middle, a.y + (b.y - a.y) * middle);
    return isOnFloor(floor, at) && !isInCrack(floor, at);
  });
}

/** Shortest ways from one place, round the corners of the floor. */
export interface SoundWays {
  /** Length of the shortest way to a place [m]; Infinity when there is none. */
  distanceTo_m(at: PlanPoint): number;
}

/**
 * The shortest ways that sound takes from a place over the floor of a room: straight, or round corners from one to the
 * next (a way that bends anywhere else could be shortened). Every way is as long as it is drawn, so that sound is never
 * taken to arrive louder than along a way that is there.
 */
export function soundWaysFrom(floor: SoundFloor, from: PlanPoint): SoundWays {
  const stations: { readonly at: PlanPoint; readonly way_m: number }[] = [{ at: from, way_m: 0 }];
  const open = new Map(floor.bends.map((at) => [at, isStraightWay(floor, from, at) ? distance_m(from, at) : Infinity]));
  while (open.size > 0) {
    const [at, way_m] = [...open].reduce((least, each) => (each[1] < least[1] ? each : least));
    if (way_m === Infinity) break;
    open.delete(at);
    stations.push({ at, way_m });
    for (const [next, known_m] of open) {
      const longer_m = way_m + distance_m(at, next);
      if (longer_m < known_m && isStraightWay(floor, at, next)) open.set(next, longer_m);
    }
  }
  return {
    distanceTo_m(at) {
      let least = Infinity;
      for (const station of stations) {
        const whole_m = station.way_m + distance_m(station.at, at);
        if (whole_m < least && isStraightWay(floor, station.at, at)) least = whole_m;
      }
      return least;
    },
  };
}
