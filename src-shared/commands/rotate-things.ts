import type { PlanPoint } from '../geometry/point.ts';
import type { Plan, Ref } from '../model/plan.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { command } from './command.ts';
import { mapThings } from './map-things.ts';
import { soundAngle_rad, soundPoint } from './sound-value.ts';

/** Quarter turns are exact: no wall ends up a hair off the square. */
function turnOf(angle_rad: number): { readonly cos: number; readonly sin: number } {
  const quarters = angle_rad / (Math.PI / 2);
  if (Math.abs(quarters - Math.round(quarters)) > 1e-12) return { cos: Math.cos(angle_rad), sin: Math.sin(angle_rad) };
  return [{ cos: 1, sin: 0 }, { cos: 0, sin: 1 }, { cos: -1, sin: 0 }, { cos: 0, sin: -1 }][((Math.round(quarters) % 4) + 4) % 4] ?? { cos: 1, sin: 0 };
}

/**
 * Turns everything named about a place, counter-clockwise: footprints, hole directions, cylinder backs and ceiling
 * slopes turn with it; pipes take along what stands upright over or under them.
 * Refuses a locked floor plan, a door or vent without its enclosure, and where an outline would cross itself.
 */
export const rotateThings = command((plan: Plan, refs: readonly Ref[], _about: PlanPoint, _angle_rad: number) => `Turn ${thingsInSentence(plan, refs)}`, (draft, refs: readonly Ref[], about: PlanPoint, angle_rad: number) => {
  const turn_rad = soundAngle_rad(angle_rad);
  const centre = soundPoint(about);
  const { cos, sin } = turnOf(turn_rad);
  if (turn_rad === 0) return;
  mapThings(draft, refs, {
    point: ({ x, y }) => ({ x: centre.x + (x - centre.x) * cos - (y - centre.y) * sin, y: centre.y + (x - centre.x) * sin + (y - centre.y) * cos }),
    direction: (direction_rad) => direction_rad + turn_rad,
    isMirrored: false,
    isShift: false,
  });
});
