import { type PlanPoint, distance_m } from '../geometry/point.ts';
import type { Plan, Ref } from '../model/plan.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { command, refuse } from './command.ts';
import { mapThings } from './map-things.ts';
import { JOIN_m, soundPoint } from './sound-value.ts';

/**
 * Mirrors everything named across the line through `a` and `b`: footprints, hole directions, cylinder backs, ceiling
 * slopes and door hinges change sides; the walls of a mirrored enclosure keep their names.
 * Refuses a line without direction, any floor plan, a door or vent without its enclosure, and where an outline would
 * cross itself.
 */
export const mirrorThings = command((plan: Plan, refs: readonly Ref[], _a: PlanPoint, _b: PlanPoint) => `Mirror ${thingsInSentence(plan, refs)}`, (draft, refs: readonly Ref[], a: PlanPoint, b: PlanPoint) => {
  const [from, to] = [soundPoint(a), soundPoint(b)];
  const length_m = distance_m(from, to);
  if (length_m < JOIN_m) refuse('The line to mirror across needs two places apart.');
  const [ux, uy] = [(to.x - from.x) / length_m, (to.y - from.y) / length_m];
  const axis_rad = Math.atan2(uy, ux);
  mapThings(draft, refs, {
    point: ({ x, y }) => {
      const along_m = (x - from.x) * ux + (y - from.y) * uy;
      const across_m = -(x - from.x) * uy + (y - from.y) * ux;
      return { x: from.x + along_m * ux + across_m * uy, y: from.y + along_m * uy - across_m * ux };
    },
    direction: (direction_rad) => 2 * axis_rad - direction_rad,
    isMirrored: true,
    isShift: false,
  });
});
