import type { Space } from '../../derived/derived.ts';
import { remembered } from '../../derived/remember.ts';
import { intersectionOf, fillOf } from '../../derived/polygon-sums.ts';
import { isThere } from '../../derived/solids.ts';
import { boundsOf, boxesTouch, signedArea_m2 } from '../../geometry/outline.ts';

/** Heights between which a solid is sure to be in a space [m]: over the highest floor and under the lowest ceiling about it. */
function sureHeights_m(space: Space, { footprint, bounds }: Space['solids'][number]): readonly [floor_m: number, ceiling_m: number] | undefined {
  if (space.kind === 'under-floor') return [space.floor_m, 0];
  const { ceilingZones, ceilingVoid } = space.enclosure;
  const depth_m = space.kind === 'ceiling-void' ? (ceilingVoid?.depth_m ?? 0) : 0;
  const places = [...footprint, { x: (bounds.minX + bounds.maxX) / 2, y: (bounds.minY + bounds.maxY) / 2 }];
  const zones = Object.values(ceilingZones).filter(({ outline }) => boxesTouch(boundsOf(outline), bounds));
  const tops = [...places.flatMap((at) => space.ceilingAt_m(at) ?? []), ...zones.map(({ height_m }) => height_m + depth_m)];
  if (tops.length === 0) return undefined;
  return [space.kind === 'ceiling-void' ? Math.max(...tops) - depth_m : space.floor_m, Math.min(...tops)];
}

/**
 * Net volume of a space: gross, less the solids that agent does not pass through. Where solids overlap, the
 * shared part is deducted once; where floor or ceiling about a solid step, it is deducted only where it is under the
 * lowest ceiling and over the highest floor, so that the volume errs toward more agent.
 * Source: only fixed solid items may be deducted (common practice, follows NFPA 2001).
 * @returns net volume [m³]; undefined while the height is unknown
 */
export const netVolumeOf_m3 = remembered((space: Space): number | undefined => {
  if (space.grossVolume_m3 === undefined) return undefined;
  const room = [space.outline, ...space.holes];
  const solids = space.solids
    .filter((solid) => isThere(solid) && !solid.obstruction.isPermeable)
    .flatMap((solid) => {
      const sure_m = sureHeights_m(space, solid);
      if (!sure_m) return [];
      const [bottom_m, top_m] = [Math.max(sure_m[0], solid.bottom_m), Math.min(sure_m[1], solid.top_m)];
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
