import type { PlanPoint } from '../geometry/point.ts';
import { isCounterClockwise } from '../geometry/outline.ts';
import { type Corner, type RefOf, ringOf, takeId } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { cornerAfter, cornerOf } from './lookup.ts';
import { reshape } from './rings.ts';
import { JOIN_m, soundPoint } from './sound-value.ts';

/** Below this sine two walls count as one straight line: a slide along it would lead far away. */
const PARALLEL = 1e-3;

/** How far a wall's end goes along its neighbour so that the wall shifts by `offset_m` along its normal; undefined when the two are parallel. */
function slideAlong(end: PlanPoint, neighbour: PlanPoint, normal: PlanPoint, offset_m: number): PlanPoint | undefined {
  const length_m = Math.hypot(neighbour.x - end.x, neighbour.y - end.y);
  const [ux, uy] = [(neighbour.x - end.x) / length_m, (neighbour.y - end.y) / length_m];
  const across = ux * normal.x + uy * normal.y;
  return Math.abs(across) < PARALLEL ? undefined : { x: end.x + (ux * offset_m) / across, y: end.y + (uy * offset_m) / across };
}

/**
 * Moves a wall square to itself. Its ends slide along the neighbouring walls, which keep their direction; where a
 * neighbour goes straight on, a new short wall joins the two.
 * @param offset_m distance [m], into the room positive
 * Refuses where the outline would cross itself, lose a wall, leave a shaft outside, or make a wall too short for
 * its opening.
 */
export const moveWall = command('Move wall', (draft, ref: RefOf<'wall'>, offset_m: number) => {
  const { enclosure, ring, index, corner, isHole } = cornerOf(draft, ref);
  if (!Number.isFinite(offset_m)) refuse('This distance is not a number.');
  if (offset_m === 0) return;
  const end = cornerAfter(ring, index);
  const [a, b] = [soundPoint(corner), soundPoint(end)];
  const length_m = Math.hypot(b.x - a.x, b.y - a.y);
  const side = isCounterClockwise(ringOf(ring)) === isHole ? -1 : 1;
  const normal = { x: (-(b.y - a.y) / length_m) * side, y: ((b.x - a.x) / length_m) * side };
  const shifted = (p: PlanPoint): PlanPoint => ({ x: p.x + normal.x * offset_m, y: p.y + normal.y * offset_m });
  const newCorner = (at: PlanPoint, like: Corner): Corner => ({ id: takeId(draft, 'corner'), ...soundPoint(at), wall: { ...like.wall } });
  const slidA = slideAlong(a, cornerAfter(ring, index, -1), normal, offset_m);
  const slidB = slideAlong(b, cornerAfter(ring, index, 2), normal, offset_m);
  if (Math.abs(offset_m) < JOIN_m && (!slidA || !slidB)) refuse('This wall goes straight on into the next. Move it by 1 mm or more.');
  reshape(enclosure, () => {
    // The far end first: the index of the near one then still holds.
    if (slidB) Object.assign(end, soundPoint(slidB));
    else ring.splice(index + 1, 0, newCorner(shifted(b), corner));
    if (!slidA) ring.splice(index, 0, newCorner(a, corner));
    Object.assign(corner, soundPoint(slidA ?? shifted(a)));
  });
});
