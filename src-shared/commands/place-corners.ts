import type { PlanPoint } from '../geometry/point.ts';
import type { RefOf } from '../model/plan.ts';
import { command } from './command.ts';
import { enclosureOf } from './lookup.ts';
import { reshape } from './rings.ts';
import { soundPoint } from './sound-value.ts';

/**
 * Puts several corners of an outline elsewhere at once. Openings keep their place along their wall as far as it reaches.
 * @param places  by corner id; corners that are not named stay
 * Refuses places where the outline would cross or touch itself, leave a shaft outside, or make a wall too short for its opening.
 */
export const placeCorners = command('Fit room to its measurements', (draft, ref: RefOf<'enclosure'>, places: ReadonlyMap<string, PlanPoint>) => {
  const enclosure = enclosureOf(draft, ref.level, ref.id);
  reshape(enclosure, () => {
    for (const corner of enclosure.outline) {
      const to = places.get(corner.id);
      if (!to) continue;
      const { x, y } = soundPoint(to);
      corner.x = x;
      corner.y = y;
    }
  });
});
