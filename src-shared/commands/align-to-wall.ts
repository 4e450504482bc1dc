import { type Outline, isCounterClockwise } from '../geometry/outline.ts';
import type { PlanPoint } from '../geometry/point.ts';
import { type Plan, type Ref, type RefOf, ringOf } from '../model/plan.ts';
import { type Command, command, refuse, sequence } from './command.ts';
import { cornerAfter, cornerOf, cylinderOf, deviceOf, networkOf, nodeIn, nodeOf, noteOf, nozzleOf, obstructionOf, pipeOf } from './lookup.ts';
import { moveThings } from './move-things.ts';

/** The places of a thing that count when it is brought to a distance from a wall. */
function placesOf(draft: Plan, ref: Ref): Outline {
  switch (ref.kind) {
    case 'nozzle':
      return [nodeIn(networkOf(draft, ref.network), nozzleOf(draft, ref).node).at];
    case 'node':
      return [nodeOf(draft, ref).at];
    case 'cylinder':
      return [cylinderOf(draft, ref).at];
    case 'device':
      return [deviceOf(draft, ref).at];
    case 'note':
      return [noteOf(draft, ref).at];
    case 'obstruction':
      return obstructionOf(draft, ref).footprint;
    default:
      return refuse('Only nozzles, cylinders, pipes, obstacles, devices and notes can be brought to a distance from a wall.');
  }
}

interface Face {
  readonly a: PlanPoint;
  /** Into the room, of length 1. */
  readonly normal: PlanPoint;
}

function faceOf(plan: Plan, ref: RefOf<'wall'>): Face {
  const { ring, index, corner, isHole } = cornerOf(plan, ref);
  const end = cornerAfter(ring, index);
  const length_m = Math.hypot(end.x - corner.x, end.y - corner.y);
  const side = isCounterClockwise(ringOf(ring)) === isHole ? -1 : 1;
  return { a: { x: corner.x, y: corner.y }, normal: { x: (-(end.y - corner.y) / length_m) * side, y: ((end.x - corner.x) / length_m) * side } };
}

/** A pipe lies along a wall when both its ends do. */
const withEnds = (plan: Plan, refs: readonly Ref[]): Ref[] =>
  refs.flatMap((ref): Ref[] => {
    if (ref.kind !== 'pipe') return [ref];
    const { from, to } = pipeOf(plan, ref);
    return [from, to].map((id) => ({ kind: 'node', network: ref.network, id }));
  });

const distanceFrom_m = ({ a, normal }: Face, p: PlanPoint): number => (p.x - a.x) * normal.x + (p.y - a.y) * normal.y;

/** Refuses what cannot be aligned at all; changes nothing. */
const check = command('Bring to wall', (draft, refs: readonly Ref[], wall: RefOf<'wall'>, distance_m: number) => {
  if (!Number.isFinite(distance_m)) refuse('This distance is not a number.');
  faceOf(draft, wall);
  for (const ref of withEnds(draft, refs)) placesOf(draft, ref);
});

/**
 * Brings things to a distance from a wall's face, square to it: nozzles, cylinders, pipe ends, devices and notes by their
 * place, obstructions by their nearest corner, pipes by both ends.
 * @param distance_m from the finished face into the room [m]
 * Refuses kinds that have no such place, and whatever moving them refuses.
 */
export const alignToWall =
  (refs: readonly Ref[], wall: RefOf<'wall'>, distance_m: number): Command =>
  (plan) => {
    const checked = check(refs, wall, distance_m)(plan);
    if (!checked.ok) return checked;
    const face = faceOf(plan, wall);
    const moves = withEnds(plan, refs).map((ref): Command => (now) => {
      const present_m = Math.min(...placesOf(now, ref).map((p) => distanceFrom_m(face, p)));
      const shift_m = distance_m - present_m;
      return moveThings([ref], face.normal.x * shift_m, face.normal.y * shift_m)(now);
    });
    const outcome = sequence(checked.label, moves)(plan);
    return outcome.ok ? { ...outcome, created: [] } : outcome;
  };
