import type { RefOf, Wall } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { cornerAfter, cornerOf } from './lookup.ts';
import { reshape } from './rings.ts';

/** What is known of a wall made of two: only what holds for both, and the weaker strength. */
const joined = (a: Wall, b: Wall): Wall => ({
  construction: a.construction === b.construction ? a.construction : 'unknown',
  loadBearing: a.loadBearing === b.loadBearing ? a.loadBearing : null,
  allowablePressure_Pa: a.allowablePressure_Pa === null || b.allowablePressure_Pa === null ? null : Math.min(a.allowablePressure_Pa, b.allowablePressure_Pa),
  capacity_N: a.capacity_N === null || b.capacity_N === null ? null : Math.min(a.capacity_N, b.capacity_N),
  reaches: a.reaches === b.reaches ? a.reaches : 'unknown',
});

/**
 * Takes a corner out: the walls on its two sides become one. Openings of both stay, at the nearest place of the
 * new wall. Refuses on a triangle, and where the outline would cross itself or an opening would not fit.
 */
export const removeCorner = command('Remove corner', (draft, ref: RefOf<'corner'>) => {
  const { enclosure, ring, index, corner, isHole } = cornerOf(draft, ref);
  if (ring.length <= 3) refuse(`${isHole ? 'A shaft' : 'An enclosure'} keeps at least three corners.`);
  const before = cornerAfter(ring, index, -1);
  reshape(enclosure, () => {
    before.wall = joined(before.wall, corner.wall);
    for (const opening of Object.values(enclosure.openings)) if (opening.wall === corner.id) opening.wall = before.id;
    ring.splice(index, 1);
  });
});
