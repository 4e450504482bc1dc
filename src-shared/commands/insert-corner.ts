import { type PlanPoint, distance_m } from '../geometry/point.ts';
import { alongSegment_m, nearestOnSegment } from '../geometry/segment.ts';
import { type Ref, type RefOf, takeId } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { cornerAfter, cornerOf } from './lookup.ts';
import { JOIN_m, soundPoint } from './sound-value.ts';

/**
 * Puts a corner into a wall, at the place of the wall nearest to the one given. Both halves know what the wall
 * knew, and each keeps the openings that lie in it.
 * Refuses a place at a corner or within an opening.
 */
export const insertCorner = command('Insert corner', (draft, ref: RefOf<'wall'>, at: PlanPoint): readonly Ref[] => {
  const { enclosure, ring, index, corner } = cornerOf(draft, ref);
  if (ring.length >= 2000) refuse('This outline has as many corners as it can have.');
  const wall = { a: { x: corner.x, y: corner.y }, b: soundPoint(cornerAfter(ring, index)) };
  const place = nearestOnSegment(soundPoint(at), wall);
  const cut_m = alongSegment_m(place, wall);
  if (cut_m < JOIN_m || distance_m(place, wall.b) < JOIN_m) refuse('There is a corner here already.');
  const id = takeId(draft, 'corner');
  for (const opening of Object.values(enclosure.openings)) {
    if (opening.wall !== corner.id) continue;
    if (Math.abs(opening.along_m - cut_m) < opening.width_m / 2 - 1e-9) refuse(`“${opening.name}” is here. Put the corner beside it.`);
    if (opening.along_m < cut_m) continue;
    opening.wall = id;
    opening.along_m -= cut_m;
  }
  ring.splice(index + 1, 0, { id, x: place.x, y: place.y, wall: { ...corner.wall } });
  return [{ kind: 'corner', level: ref.level, enclosure: ref.enclosure, id }];
});
