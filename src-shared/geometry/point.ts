/**
 * A place on the plan [m]: x to the east, y to the north, from the plan's origin.
 * The phantom `space` keeps plan, screen and sheet places apart at compile time:
 * a literal fits any of them, a value of one does not fit another.
 */
export interface PlanPoint {
  readonly x: number;
  readonly y: number;
  readonly space?: 'plan';
}

/** A place in 3D [m]: plan place and height z above the finished floor of its level. */
export interface PlanPoint3 {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly space?: 'plan';
}

/** A place on the screen [px]: x right, y down, from the board's top left corner. */
export interface ScreenPoint {
  readonly x: number;
  readonly y: number;
  readonly space?: 'screen';
}

/** A place on paper [mm]: x right, y down, from the sheet's top left corner. */
export interface SheetPoint {
  readonly x: number;
  readonly y: number;
  readonly space?: 'sheet';
}

/** Builds a plan place from its coordinates [m]. */
export const planPoint = (x: number, y: number): PlanPoint => ({ x, y });

/** Plan distance between two places [m], heights ignored. */
export const distance_m = (a: PlanPoint | PlanPoint3, b: PlanPoint | PlanPoint3): number =>
  Math.hypot(b.x - a.x, b.y - a.y);

/** Distance in space between two places [m]. */
export const distance3_m = (a: PlanPoint3, b: PlanPoint3): number =>
  Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);

/** Direction from `a` to `b` [rad], counter-clockwise from east, in (−π, π]; 0 when they coincide. */
export const bearing_rad = (a: PlanPoint | PlanPoint3, b: PlanPoint | PlanPoint3): number =>
  Math.atan2(b.y - a.y, b.x - a.x);

/** The place `distance_m` away from `from` in direction `angle_rad` (counter-clockwise from east). */
export const polar = (from: PlanPoint, angle_rad: number, length_m: number): PlanPoint =>
  planPoint(from.x + Math.cos(angle_rad) * length_m, from.y + Math.sin(angle_rad) * length_m);

/** The place halfway between two places. */
export const midpoint = (a: PlanPoint, b: PlanPoint): PlanPoint => planPoint((a.x + b.x) / 2, (a.y + b.y) / 2);
