import type { PlanPoint, PlanPoint3 } from '../geometry/point.ts';
import { normalAngle_rad } from '../geometry/angle.ts';
import { FARTHEST_IN_FILE, FARTHEST_m } from '../model/schema.ts';
import { refuse } from './command.ts';

/** Places nearer than this are one place to a person who draws [m]: pipes join there, and a wall is longer. */
export const JOIN_m = 0.001;

const checked = (value: number): number =>
  Number.isFinite(value) && Math.abs(value) <= FARTHEST_m ? value : refuse('This place lies too far off the plan. Nothing lies farther than 100 km from its origin.');

/** A coordinate that may stand in a plan [m]; refuses one that is not a number or too far off. */
export const soundCoordinate_m = checked;

/** A place that may stand in a plan, as a value of its own; refuses one too far off. */
export const soundPoint = ({ x, y }: PlanPoint): { x: number; y: number } => ({ x: checked(x), y: checked(y) });

const checkedInFile = (value: number): number =>
  Number.isFinite(value) && Math.abs(value) <= FARTHEST_IN_FILE ? value : refuse('The floor plan would lie too far off. Check its scale and its units.');

/** A place of an imported file in its own units, or of its origin on the plan; refuses what no drawing has. */
export const soundFilePoint = ({ x, y }: PlanPoint): { x: number; y: number } => ({ x: checkedInFile(x), y: checkedInFile(y) });

/** A place in space that may stand in a plan, as a value of its own; refuses one too far off. */
export const soundPoint3 = ({ x, y, z }: PlanPoint3): { x: number; y: number; z: number } => ({ x: checked(x), y: checked(y), z: checked(z) });

/** A direction within one turn [rad]; refuses what is not a number. */
export const soundAngle_rad = (angle_rad: number): number => (Number.isFinite(angle_rad) ? normalAngle_rad(angle_rad) : refuse('This direction is not a number. Type degrees, such as 45.'));

/** A size more than nothing [m]; refuses any other with its name. */
export const soundSize_m = (what: string, size_m: number): number => {
  if (!Number.isFinite(size_m) || size_m < JOIN_m) return refuse(`${what} must be more than 0.`);
  return checked(size_m);
};

/** A text that says something, at most 200 characters; refuses a blank one. */
export const soundName = (what: string, name: string): string => {
  const trimmed = name.trim();
  if (trimmed === '') return refuse(`${what} needs a name.`);
  return trimmed.length <= 200 ? trimmed : refuse(`${what} needs a shorter name: 200 characters at most.`);
};
