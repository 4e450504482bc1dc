import type { PlanPoint } from '../geometry/point.ts';
import type { RefOf } from '../model/plan.ts';
import { command } from './command.ts';
import { cornerOf } from './lookup.ts';
import { reshape } from './rings.ts';
import { soundPoint } from './sound-value.ts';

/**
 * Moves one corner of an outline or shaft. Openings keep their place along their wall as far as it reaches.
 * Refuses a place where the outline would cross or touch itself, leave a shaft outside, or make a wall too short
 * for its opening.
 */
export const moveCorner = command('Move corner', (draft, ref: RefOf<'corner'>, to: PlanPoint) => {
  const { enclosure, corner } = cornerOf(draft, ref);
  const at = soundPoint(to);
  reshape(enclosure, () => {
    corner.x = at.x;
    corner.y = at.y;
  });
});
