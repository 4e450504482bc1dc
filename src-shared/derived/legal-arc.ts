import { turnTo_rad } from '../geometry/angle.ts';
import { bearing_rad, distance_m, planPoint } from '../geometry/point.ts';
import { ANGLE_SLACK_rad, LENGTH_SLACK_m, SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { LimitKey } from '../profile/limit-catalogue.ts';
import { cornersNear } from './corner-zone.ts';
import type { HungNozzle } from './derived.ts';
import { type JetObstacle, buriedIn, jetObstaclesOf } from './jet-obstacles.ts';
import { wallsAlone } from './near-wall.ts';
import { type Arc, gapsBetween, turned } from './turn-intervals.ts';

/** Limits that must be known before any turn of a nozzle can be called legal. */
const ARC_LIMITS = ['cornerZone_m', 'cornerAngle_rad', 'nearWallZone_m', 'nearWallAngle_rad'] as const satisfies readonly LimitKey[];

/** The limit that says how far a nozzle's jets must run free: a void has one of its own. */
export const freeJetKey = ({ space }: HungNozzle): 'freeJet_m' | 'voidFreeJet_m' => (space && space.kind !== 'room' ? 'voidFreeJet_m' : 'freeJet_m');

/** Limits of the nozzle's profile that are blank although its legal turns depend on them. */
export const blankArcLimits = (nozzle: HungNozzle): LimitKey[] => [...ARC_LIMITS, freeJetKey(nozzle)].filter((key) => !nozzle.profile?.limits[key]);

/**
 * The ranges of `rotation_rad` in which every hole of a nozzle stays off the corners it stands in, blows along the walls
 * it stands near, and runs free for the least length: what N5, N6 and N7 ask, in a void N18, with the profile's limits. Ends included.
 * Found exactly, each hole's forbidden directions being arcs, and narrowed by a hair so that an end never breaks a limit.
 * @returns ranges in order of their start in [0, 2π); a range may pass 2π; a full turn is 0 … 2π. Empty where no turn is
 * legal, and also where it cannot be known: no space, no holes, or a limit in `blankArcLimits`
 */
export function legalArcs(nozzle: HungNozzle): Arc[] {
  const { cornerZone_m, cornerAngle_rad, nearWallZone_m, nearWallAngle_rad, [freeJetKey(nozzle)]: freeJet_m } = nozzle.profile?.limits ?? {};
  if (!cornerZone_m || !cornerAngle_rad || !nearWallZone_m || !nearWallAngle_rad || !freeJet_m) return [];
  const { at, space } = nozzle;
  const holes_rad = nozzle.nozzle.holes_rad;
  if (!at || !space || holes_rad.length === 0) return [];
  if (buriedIn(nozzle) && freeJet_m.value > 0) return [];

  const forbidden: Arc[] = [];
  for (const { bearing_rad: to_rad } of cornersNear(nozzle, cornerZone_m.value)) forbidden.push(around(to_rad, cornerAngle_rad.value));
  for (const { axis_rad } of wallsAlone(nozzle, nearWallZone_m.value, cornerZone_m.value)) {
    const across_rad = Math.PI / 2 - nearWallAngle_rad.value;
    forbidden.push(around(axis_rad + Math.PI / 2, across_rad), around(axis_rad - Math.PI / 2, across_rad));
  }
  for (const obstacle of jetObstaclesOf(nozzle)) {
    const blocked = blockedBy(at, obstacle, freeJet_m.value);
    if (blocked) forbidden.push(blocked);
  }
  return gapsBetween(
    holes_rad.flatMap((hole_rad) => turned(forbidden, -hole_rad)),
    ANGLE_SLACK_rad / 2,
  );
}

const around = (middle_rad: number, half_rad: number): Arc => ({ from_rad: middle_rad - half_rad, to_rad: middle_rad + half_rad });

/** The directions in which an obstacle is met sooner than `free_m`, as one arc; undefined when there are none. */
function blockedBy(at: { readonly x: number; readonly y: number }, { segment, front_rad, isTouched }: JetObstacle, free_m: number): Arc | undefined {
  if (free_m <= 0) return undefined;
  if (isTouched) return around(front_rad + Math.PI, Math.PI / 2);
  const { a, b } = segment;
  const length_m = distance_m(a, b);
  if (length_m === 0) return undefined;
  const ux = (b.x - a.x) / length_m;
  const uy = (b.y - a.y) / length_m;
  const foot_m = (at.x - a.x) * ux + (at.y - a.y) * uy;
  const off_m = Math.abs((at.x - a.x) * uy - (at.y - a.y) * ux);
  if (off_m >= free_m) return undefined;
  const half_m = Math.sqrt(free_m ** 2 - off_m ** 2);
  const from_m = Math.max(0, foot_m - half_m);
  const to_m = Math.min(length_m, foot_m + half_m);
  if (from_m > to_m) return undefined;
  const place = (along_m: number) => planPoint(a.x + ux * along_m, a.y + uy * along_m);
  const [start, end] = [place(from_m), place(to_m)];
  const nearest_m = Math.max(Math.min(distance_m(at, start), distance_m(at, end)), SAME_PLACE_m);
  const turn_rad = turnTo_rad(bearing_rad(at, start), bearing_rad(at, end));
  const wider_rad = LENGTH_SLACK_m / nearest_m;
  const middle_rad = bearing_rad(at, start) + turn_rad / 2;
  return around(middle_rad, Math.abs(turn_rad) / 2 + wider_rad);
}
