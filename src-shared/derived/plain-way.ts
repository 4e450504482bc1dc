import { isInside } from '../geometry/outline.ts';
import { type PlanPoint, distance_m, midpoint, polar } from '../geometry/point.ts';
import { type Segment, distanceToSegment_m } from '../geometry/segment.ts';
import { squareBetween3_m2 } from '../geometry/segment3.ts';
import type { Solid, Space } from './derived.ts';
import type { OtherCylinder } from './front-depth.ts';

/** A way is plainly free only with so much to spare on either side [m]: far more than the grid and the straight pieces of an exact look take. */
const TO_SPARE_m = 1e-4;
/** A way ends this far before the line of a doorway [m]. */
const BEFORE_DOOR_m = 5e-4;
/** A front that is shallower is left to an exact look [m]. */
const LEAST_DEPTH_m = 5e-3;
/** How far into the front a way may begin, as shares of its depth. */
const STARTS = [0.5, 0.85, 0.15];

/** What a way must keep off, and how far. */
export interface InTheWay {
  readonly room: Space;
  /** Faces of the room beside its doorways, and sides of what stands in it. */
  readonly edges: readonly Segment[];
  readonly standing: readonly Solid[];
  readonly others: readonly OtherCylinder[];
  /** Half the width of what is carried [m], with all that an exact look would add. */
  readonly edgeRadius_m: number;
  /** The same beside another cylinder. */
  radiusBeside_m(other: OtherCylinder): number;
}

const apart2_m2 = (one: Segment, other: Segment): number => squareBetween3_m2(one.a.x, one.a.y, 0, one.b.x, one.b.y, 0, other.a.x, other.a.y, 0, other.b.x, other.b.y, 0);

/** Whether a place is floor whatever the winding of what is drawn. */
const isOnFloor = (p: PlanPoint, { room, standing }: InTheWay): boolean =>
  isInside(p, room.outline) &&
  !room.holes.some((hole) => isInside(p, hole)) &&
  !standing.some(({ bounds: { minX, minY, maxX, maxY } }) => p.x >= minX - TO_SPARE_m && p.x <= maxX + TO_SPARE_m && p.y >= minY - TO_SPARE_m && p.y <= maxY + TO_SPARE_m);

function isFree(leg: Segment, { room, edges, others, edgeRadius_m, radiusBeside_m }: InTheWay): boolean {
  const off2_m2 = (edgeRadius_m + TO_SPARE_m) ** 2;
  // No wall is crossed either, not even through a doorway.
  const crossed2_m2 = (BEFORE_DOOR_m / 2) ** 2;
  return (
    edges.every((edge) => apart2_m2(leg, edge) > off2_m2) &&
    room.walls.every(({ segment }) => apart2_m2(leg, segment) > crossed2_m2) &&
    others.every((other) => distanceToSegment_m(other.at, leg) > radiusBeside_m(other) + TO_SPARE_m)
  );
}

/**
 * Whether some way of two or three straight pieces plainly leads from a floor in front of a cylinder to a doorway: straight to
 * it, or round one square corner. Where it answers yes an exact look does too; no says nothing.
 * @param front       rectangle: near right, far right, far left, near left
 * @param inward_rad  from the doorway into the room
 */
export function leadsPlainly(front: readonly PlanPoint[], doorway: Segment, inward_rad: number, inTheWay: InTheWay): boolean {
  const [nearRight, farRight, farLeft, nearLeft] = front;
  if (!nearRight || !farRight || !farLeft || !nearLeft || distance_m(nearRight, farRight) < LEAST_DEPTH_m) return false;
  const [near, far] = [midpoint(nearRight, nearLeft), midpoint(farRight, farLeft)];
  const door = midpoint(doorway.a, doorway.b);
  const end = polar(door, inward_rad, BEFORE_DOOR_m);
  const before = polar(door, inward_rad, inTheWay.edgeRadius_m + 2 * TO_SPARE_m);
  if (!isFree({ a: before, b: end }, inTheWay)) return false;
  const [cos, sin] = [Math.cos(inward_rad), Math.sin(inward_rad)];
  return STARTS.some((share) => {
    const start: PlanPoint = { x: near.x + (far.x - near.x) * share, y: near.y + (far.y - near.y) * share };
    if (!isOnFloor(start, inTheWay)) return false;
    if (isFree({ a: start, b: before }, inTheWay)) return true;
    const square_m = (before.x - start.x) * cos + (before.y - start.y) * sin;
    const corners: PlanPoint[] = [
      { x: start.x + cos * square_m, y: start.y + sin * square_m },
      { x: before.x - cos * square_m, y: before.y - sin * square_m },
    ];
    return corners.some((corner) => isFree({ a: start, b: corner }, inTheWay) && isFree({ a: corner, b: before }, inTheWay));
  });
}
