import type { Space } from '../../derived/derived.ts';
import { remembered } from '../../derived/remember.ts';
import { intersectionOf, fillOf } from '../../derived/polygon-sums.ts';
import { boundsOf, boxesTouch, signedArea_m2 } from '../../geometry/outline.ts';

/** Lowest upper face over a solid [m]: a solid is never deducted above the ceiling. */
function lowestCeiling_m(space: Space, solid: Space['solids'][number]): number | undefined {
  const places = [...solid.footprint, { x: (solid.bounds.minX + solid.bounds.maxX) / 2, y: (solid.bounds.minY + solid.bounds.maxY) / 2 }];
  const heights = places.flatMap((at) => space.ceilingAt_m(at) ?? []);
  const zones = space.kind === 'room' ? Object.values(space.enclosure.ceilingZones).filter(({ outline }) => boxesTouch(boundsOf(outline), solid.bounds)) : [];
  const lowest = Math.min(...heights, ...zones.map(({ height_m }) => height_m));
  return Number.isFinite(lowest) ? lowest : undefined;
}

/**
 * Net volume of a space: gross, less the solids that agent does not pass through. Where solids overlap, the
 * shared part is deducted once; where the ceiling over a solid steps, it is deducted up to the lowest step, so
 * that the volume errs toward more agent.
 * Source: only fixed solid items may be deducted (common practice, follows NFPA 2001).
 * @returns net volume [m³]; undefined while the height is unknown
 */
export const netVolumeOf_m3 = remembered((space: Space): number | undefined => {
  if (space.grossVolume_m3 === undefined) return undefined;
  const room = [...[space.outline], ...space.holes];
  const solids = space.solids
    .filter(({ obstruction }) => !obstruction.isPermeable)
    .flatMap((solid) => {
      const ceiling_m = lowestCeiling_m(space, solid);
      const bottom_m = Math.max(space.floor_m, solid.bottom_m);
      const top_m = Math.min(ceiling_m ?? bottom_m, solid.top_m);
      return top_m > bottom_m ? [{ footprint: solid.footprint, bottom_m, top_m }] : [];
    });
  const heights = [...new Set(solids.flatMap(({ bottom_m, top_m }) => [bottom_m, top_m]))].sort((a, b) => a - b);
  let deducted_m3 = 0;
  heights.slice(1).forEach((top_m, i) => {
    const bottom_m = heights[i] ?? top_m;
    const slab = solids.filter((solid) => solid.bottom_m <= bottom_m && solid.top_m >= top_m);
    if (slab.length === 0) return;
    const filled = intersectionOf(fillOf(slab.map(({ footprint }) => footprint)), room);
    deducted_m3 += filled.reduce((sum, ring) => sum + signedArea_m2(ring), 0) * (top_m - bottom_m);
  });
  return space.grossVolume_m3 - deducted_m3;
});
