import type { Draft } from 'immer';
import { isCounterClockwise, type Outline } from '../geometry/outline.ts';
import { type PlanPoint, distance_m } from '../geometry/point.ts';
import { alongSegment_m } from '../geometry/segment.ts';
import { findOutside, findOverlap, findRingFault } from '../model/ring-relations.ts';
import { type Corner, type Enclosure, type Opening, type Plan, ringOf, takeId, unknownWall } from '../model/plan.ts';
import { refuse } from './command.ts';
import { JOIN_m, soundPoint } from './sound-value.ts';

const MOST_CORNERS = 2000;

/**
 * A drawn ring made fit for the plan: places drawn twice are one, the last is not the first again.
 * Refuses a ring that crosses itself or has no area.
 * @param what names it in the sentence: "The outline"
 */
export function soundRing(drawn: readonly PlanPoint[], what: string): { x: number; y: number }[] {
  const ring: { x: number; y: number }[] = [];
  for (const p of drawn.map(soundPoint)) {
    const last = ring.at(-1);
    if (!last || distance_m(last, p) >= JOIN_m) ring.push(p);
  }
  while (ring.length > 1 && distance_m(ring[0] ?? { x: 0, y: 0 }, ring.at(-1) ?? { x: 0, y: 0 }) < JOIN_m) ring.pop();
  if (ring.length < 3) refuse(`${what} needs three corners or more.`);
  if (ring.length > MOST_CORNERS) refuse(`${what} has more than ${MOST_CORNERS} corners. Draw it with fewer.`);
  refuseFault(ring, what);
  return ring;
}

/** Refuses a ring that is not the outline of an area. */
export function refuseFault(ring: Outline, what: string): void {
  const fault = findRingFault(ring);
  if (fault?.kind === 'crossing') refuse(`${what} would cross or touch itself.`);
  if (fault?.kind === 'no-length') refuse(`${what} would have two corners in one place.`);
  if (fault) refuse(`${what} would have no area.`);
}

/** The ring's places from where it winds counter-clockwise. */
export const woundLeft = <P extends PlanPoint>(ring: readonly P[]): P[] => (isCounterClockwise(ring) ? [...ring] : [...ring].reverse());

/** Corners with walls about which nothing is known, with ids of the plan. */
export const cornersFor = (draft: Draft<Plan>, ring: readonly PlanPoint[]): Corner[] =>
  ring.map(({ x, y }) => ({ id: takeId(draft, 'corner'), x, y, wall: unknownWall() }));

interface WallLine {
  readonly a: PlanPoint;
  readonly b: PlanPoint;
}

/** The lines of all walls by their id. */
export function wallLines({ outline, holes }: Enclosure): Map<string, WallLine> {
  const lines = new Map<string, WallLine>();
  for (const ring of [outline, ...holes]) {
    for (const [i, corner] of ring.entries()) {
      const next = ring[(i + 1) % ring.length];
      if (next) lines.set(corner.id, { a: { x: corner.x, y: corner.y }, b: { x: next.x, y: next.y } });
    }
  }
  return lines;
}

/** The place at a distance along a wall. */
const along = ({ a, b }: WallLine, along_m: number): PlanPoint => {
  const length_m = distance_m(a, b);
  return { x: a.x + ((b.x - a.x) * along_m) / length_m, y: a.y + ((b.y - a.y) * along_m) / length_m };
};

const SLACK_m = 1e-9;

/** Refuses when an opening is wider than a wall. */
export function refuseTooWide({ name, width_m }: Pick<Opening, 'name' | 'width_m'>, { a, b }: WallLine): void {
  if (width_m > distance_m(a, b) + SLACK_m) refuse(`“${name}” would no longer fit in its wall. Make it narrower or delete it first.`);
}

/** A distance along a wall at which an opening lies within it: the wanted one, or the nearest possible. Refuses when it is wider than the wall. */
export function alongWithin_m(opening: Pick<Opening, 'name' | 'width_m'>, wall: WallLine, wanted_m: number): number {
  refuseTooWide(opening, wall);
  const half_m = opening.width_m / 2;
  return Math.max(half_m, Math.min(Math.max(half_m, distance_m(wall.a, wall.b) - half_m), wanted_m));
}

const isShifted = (before: WallLine, after: WallLine): boolean =>
  Math.abs(after.b.x - after.a.x - (before.b.x - before.a.x)) < SLACK_m && Math.abs(after.b.y - after.a.y - (before.b.y - before.a.y)) < SLACK_m;

/** Holes stay inside the outline, and apart. */
function refuseLooseHoles({ outline, holes }: Enclosure): void {
  const rings = holes.map(ringOf);
  for (const [i, ring] of rings.entries()) {
    if (findOutside(ring, ringOf(outline))) refuse('A shaft would reach past the walls of its enclosure.');
    if (rings.slice(i + 1).some((other) => findOverlap(ring, other))) refuse('Two shafts of the enclosure would overlap.');
  }
}

/**
 * Changes the corners of an enclosure and keeps it sound: openings stay at their place along their wall, or as
 * near to it as the wall allows. Refuses what would cross, leave a shaft outside, or make a wall too short for
 * its opening.
 * @param change moves, adds or removes corners; an opening whose wall goes must be handed on by it
 */
export function reshape(enclosure: Enclosure, change: () => void): void {
  const before = wallLines(enclosure);
  const middles = new Map(
    Object.values(enclosure.openings).flatMap((opening) => {
      const line = before.get(opening.wall);
      return line ? [[opening.id, { line, at: along(line, opening.along_m) }] as const] : [];
    }),
  );
  change();
  refuseFault(ringOf(enclosure.outline), 'The outline');
  for (const hole of enclosure.holes) refuseFault(ringOf(hole), 'The shaft');
  refuseLooseHoles(enclosure);
  const after = wallLines(enclosure);
  for (const opening of Object.values(enclosure.openings)) {
    const middle = middles.get(opening.id);
    const line = after.get(opening.wall);
    if (!middle || !line || isShifted(middle.line, line)) continue;
    opening.along_m = alongWithin_m(opening, line, alongSegment_m(middle.at, line));
  }
}

/** The corners of a ring the other way round; every wall keeps its id, so that what names it still finds it. */
const turnedRound = (ring: readonly Corner[]): Corner[] =>
  ring
    .map((corner, i) => {
      const before = ring[(i + ring.length - 1) % ring.length] ?? corner;
      return { id: before.id, x: corner.x, y: corner.y, wall: { ...before.wall } };
    })
    .reverse();

/**
 * Winds the outline counter-clockwise and holes clockwise, so that the room lies left of every wall.
 * Openings stay where they are, hinges too.
 */
export function windRings(enclosure: Enclosure): void {
  const lines = wallLines(enclosure);
  const turn = (ring: Corner[], isLeft: boolean): Corner[] => {
    if (isCounterClockwise(ringOf(ring)) === isLeft) return ring;
    const walls = new Set(ring.map(({ id }) => id));
    for (const opening of Object.values(enclosure.openings)) {
      const line = lines.get(opening.wall);
      if (!line || !walls.has(opening.wall)) continue;
      opening.along_m = Math.max(0, distance_m(line.a, line.b) - opening.along_m);
      opening.hinge = opening.hinge === 'start' ? 'end' : 'start';
    }
    return turnedRound(ring);
  };
  enclosure.outline = turn(enclosure.outline, true);
  enclosure.holes = enclosure.holes.map((hole) => turn(hole, false));
}
