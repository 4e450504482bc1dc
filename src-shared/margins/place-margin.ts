import { nearestClearanceFace } from '../derived/clearance-faces.ts';
import { jetsOf } from '../derived/jets.ts';
import type { MeasureKind } from '../rules/finding.ts';
import { distanceToOutline_m } from '../geometry/outline.ts';
import type { PlanPoint } from '../geometry/point.ts';
import { cornerShotsOf, nearWallShotsOf } from '../rules/nozzle/hole-faults.ts';
import { type AllowedPatch, isInRegion } from './allowed-patch.ts';
import type { Site } from './site.ts';
import { standIn } from './stand-in.ts';

/** What a margin map shows: one rule, or how far it is from a place to where the first of all rules breaks. */
export const MARGIN_RULES = ['all', 'N1', 'N2', 'N5', 'N6', 'N7'] as const;
export type MarginRule = (typeof MARGIN_RULES)[number];

/** What a margin measures, and the figure at which the ramp of colours ends. */
export function marginScaleOf({ limits }: Site, rule: MarginRule): { readonly measure: MeasureKind; readonly most: number } {
  switch (rule) {
    case 'N5':
      return { measure: 'angle', most: limits.cornerAngle_rad };
    case 'N6':
      return { measure: 'angle', most: limits.nearWallAngle_rad };
    case 'N2':
      return { measure: 'length', most: limits.nozzleToCeiling_m / 2 };
    case 'N7':
      return { measure: 'length', most: limits.freeJet_m };
    default:
      return { measure: 'length', most: 0.3 };
  }
}

/** How far a place lies within the patch, or outside it as a figure below 0 [m]. */
function withinPatch_m({ parts }: AllowedPatch, p: PlanPoint): number {
  const border_m = Math.min(...parts.flat().map((ring) => distanceToOutline_m(p, ring)), Infinity);
  return parts.some((part) => isInRegion(p, part)) ? border_m : -border_m;
}

/**
 * What is left of a rule's limit if the nozzle stood at a place, its height and its holes as drawn: signed, above 0 where it is
 * kept [m or rad]. For all rules together it is the way to the border of the patch.
 * @returns undefined where the rule asks nothing: in no corner, near no wall, under no known ceiling
 */
export function marginAt(site: Site, rule: MarginRule, patch: AllowedPatch | undefined, p: PlanPoint): number | undefined {
  const { space, limits, at } = site;
  if (rule === 'all') return patch && withinPatch_m(patch, p);
  if (rule === 'N1') {
    const near = nearestClearanceFace(space, { ...p, z: at.z });
    return near && near.distance_m - limits.nozzleToWall_m;
  }
  const nozzle = standIn(site, p);
  switch (rule) {
    case 'N2': {
      if (nozzle.localCeiling_m === undefined) return undefined;
      const drop_m = nozzle.localCeiling_m - at.z;
      return Math.min(drop_m, limits.nozzleToCeiling_m - drop_m);
    }
    case 'N5': {
      const [worst] = cornerShotsOf(nozzle, limits.cornerZone_m);
      return worst && worst.off_rad - limits.cornerAngle_rad;
    }
    case 'N6': {
      const [worst] = nearWallShotsOf(nozzle, limits.nearWallZone_m, limits.cornerZone_m);
      return worst && limits.nearWallAngle_rad - worst.off_rad;
    }
    case 'N7': {
      const jets = jetsOf(nozzle);
      return jets.length > 0 ? Math.min(...jets.map(({ length_m }) => length_m)) - limits.freeJet_m : undefined;
    }
  }
}
