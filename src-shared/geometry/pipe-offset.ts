import type { PlanPoint3 } from './point.ts';
import type { Direction3 } from './vector3.ts';

/** A run set over to a parallel line by two 45° elbows. */
export interface PipeOffset {
  /** Where the second elbow is: the run goes on from here in its old direction. */
  readonly to: PlanPoint3;
  /** Between the two lines, √(sideways² + up²) [m]. */
  readonly set_m: number;
  /** How far the run comes forward meanwhile [m]: as much as the set. */
  readonly advance_m: number;
  /** From elbow to elbow, middle to middle [m]: set · √2. */
  readonly travel_m: number;
}

/**
 * The offset of a run: sideways, up or down, or both at once (a rolling offset). With 45° elbows the travel lies at
 * 45° to the run whichever way it is set over, so it is √2 times the true set.
 * @param from  where the first elbow is [m]
 * @param along direction of the run, of length 1
 * @param aside how far it is set over [m], square to the run; what of it lies along the run is left out
 * Source: trigonometry of the 45° right triangle; handbook constant 1.414 for 45° fittings.
 * @example offsetBy({ x: 0, y: 0, z: 0 }, { x: 1, y: 0, z: 0 }, { x: 0, y: 0.3048, z: 0 }).travel_m // 0.431052
 */
export function offsetBy(from: PlanPoint3, along: Direction3, aside: Direction3): PipeOffset {
  const lies_m = aside.x * along.x + aside.y * along.y + aside.z * along.z;
  const square = { x: aside.x - lies_m * along.x, y: aside.y - lies_m * along.y, z: aside.z - lies_m * along.z };
  const set_m = Math.hypot(square.x, square.y, square.z);
  return {
    to: { x: from.x + along.x * set_m + square.x, y: from.y + along.y * set_m + square.y, z: from.z + along.z * set_m + square.z },
    set_m,
    advance_m: set_m,
    travel_m: set_m * Math.SQRT2,
  };
}
