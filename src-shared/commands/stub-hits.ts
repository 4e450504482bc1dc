import { isInside, sidesOf } from '../geometry/outline.ts';
import { segmentToPrism_m } from '../geometry/prism.ts';
import { distanceToSegment_m, meetingOf } from '../geometry/segment.ts';
import { type Segment3, distanceBetween3_m } from '../geometry/segment3.ts';
import { type Enclosure, type Network, type Plan, ringOf } from '../model/plan.ts';
import { pipeOutside_m } from '../profile/pipe-table.ts';
import { entryOf } from '../model/find-thing.ts';

/** Height of the lid over a place [m]; undefined while it is not known. A ceiling that hangs below a void may be passed. */
function lidOver_m({ height_m, slope, ceilingZones, ceilingVoid }: Enclosure, { x, y }: { readonly x: number; readonly y: number }): number | undefined {
  const zone = Object.values(ceilingZones).find(({ outline }) => isInside({ x, y }, outline));
  if (height_m === null && !zone) return undefined;
  const along_m = slope ? (x - slope.at.x) * Math.cos(slope.direction_rad) + (y - slope.at.y) * Math.sin(slope.direction_rad) : 0;
  return (zone?.height_m ?? (height_m ?? 0) + (slope?.rise ?? 0) * along_m) + (ceilingVoid?.depth_m ?? 0);
}

function roomHit(enclosure: Enclosure, { a, b }: Segment3, radius_m: number): string | undefined {
  const rings = [ringOf(enclosure.outline), ...enclosure.holes.map(ringOf)];
  const [outline, ...holes] = rings;
  if (!outline || !isInside(a, outline) || holes.some((hole) => isInside(a, hole))) return undefined;
  const isAtWall = rings.flatMap(sidesOf).some((side) => meetingOf({ a, b }, side) || (distanceToSegment_m(b, side) < radius_m && distanceToSegment_m(b, side) < distanceToSegment_m(a, side)));
  if (isAtWall) return `a wall of ${enclosure.name}`;
  const lid_m = lidOver_m(enclosure, b);
  if (b.z > a.z && lid_m !== undefined && b.z + radius_m > lid_m) return `the ceiling of ${enclosure.name}`;
  return b.z < a.z && b.z - radius_m < -(enclosure.underFloor?.depth_m ?? 0) ? `the floor of ${enclosure.name}` : undefined;
}

/**
 * What a short piece of pipe from one of the joints of a network would run into: other pipe, a thing, a wall, ceiling or floor.
 * @param axis     from the joint to the end of the piece [m]
 * @param radius_m half its outside diameter
 * @param joint    node it starts from; the pipes that meet there are no hit
 * @returns the thing in the middle of a sentence; undefined when the way is free as far as it is known
 */
export function stubHit(plan: Plan, network: Network, axis: Segment3, radius_m: number, joint: string): string | undefined {
  const level = entryOf(plan.levels, network.level);
  for (const each of Object.values(plan.networks).filter((other) => other.level === network.level)) {
    for (const pipe of Object.values(each.pipes)) {
      if (each === network && (pipe.from === joint || pipe.to === joint)) continue;
      const [a, b] = [entryOf(each.nodes, pipe.from)?.at, entryOf(each.nodes, pipe.to)?.at];
      if (a && b && distanceBetween3_m(axis, { a, b }) < radius_m + pipeOutside_m(pipe.size) / 2) return 'other pipe';
    }
  }
  const solid = Object.values(level?.obstructions ?? {}).find(({ footprint, bottom_m, top_m }) => segmentToPrism_m(axis, { footprint, bottom_m, top_m }) < radius_m);
  if (solid) return `“${solid.name}”`;
  for (const enclosure of Object.values(level?.enclosures ?? {})) {
    const hit = roomHit(enclosure, axis, radius_m);
    if (hit) return hit;
  }
  return undefined;
}
