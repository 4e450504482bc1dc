import { coverageOf } from '../derived/coverage.ts';
import type { HungNozzle } from '../derived/derived.ts';
import type { Region } from '../derived/polygon-sums.ts';
import { distanceToOutline_m, isInside } from '../geometry/outline.ts';
import type { PlanPoint } from '../geometry/point.ts';
import type { Site } from './site.ts';
import { standIn } from './stand-in.ts';
import { tracedWithin } from './traced.ts';

/** How far beyond the border in closed form so little floor may be lost that check N9 takes it for noise of its sums [m]. */
const BAND_m = 0.05;
const BOX_m = 0.05;

/**
 * The part of a region from which the nozzle covers all floor that only it covers, but for what check N9 lets pass as noise: up
 * to 1 cm² in one place. Found by trying places near the border that is told without it.
 * @param open  where it matters
 * @param kept  the part of it from which nothing at all is lost
 */
export function grazedFloor(site: Site, open: Region, kept: Region): Region {
  const { derived, nozzle, space } = site;
  const serving = derived.nozzles.filter((each) => each.space?.key === space.key);
  const isAllCovered = (nozzles: readonly HungNozzle[]): boolean => coverageOf(space, nozzles).uncovered.length === 0;
  // Where floor lies bare as drawn, a sliver beside it is no sliver.
  if (kept.length === 0 || !isAllCovered(serving)) return kept;
  const border_m = (p: PlanPoint): number => Math.min(...kept.map((ring) => distanceToOutline_m(p, ring)));
  const isKept = (p: PlanPoint): boolean => {
    if (kept.filter((ring) => isInside(p, ring)).length % 2 === 1) return true;
    if (border_m(p) > BAND_m) return false;
    return isAllCovered(serving.map((each) => (each.ref === nozzle.ref ? standIn(site, p) : each)));
  };
  const isDetail = (middle: PlanPoint, half_m: number): boolean => border_m(middle) <= half_m + BAND_m;
  return tracedWithin(open, isKept, { box_m: BOX_m, coarse: 8, isDetail });
}
