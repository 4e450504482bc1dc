import type { Derived, DerivedNozzle, Space } from '../derived/derived.ts';
import { type Region, differenceOf, fillOf } from '../derived/polygon-sums.ts';
import { rectangle } from '../geometry/outline.ts';
import { type PlanPoint3, planPoint } from '../geometry/point.ts';
import type { RefOf } from '../model/plan.ts';
import { isSameRef } from '../model/plan.ts';
import { LIMIT_CATALOGUE, type LimitKey } from '../profile/limit-catalogue.ts';

/** Limits without which nothing can be said about where a nozzle may stand. */
const NEEDED = ['nozzleToWall_m', 'nozzleToCeiling_m', 'cornerZone_m', 'cornerAngle_rad', 'nearWallZone_m', 'nearWallAngle_rad', 'freeJet_m'] as const satisfies readonly LimitKey[];
type Needed = (typeof NEEDED)[number];

/** A nozzle where it hangs, with all that tells where else it could hang. Everything in base SI. */
export interface Site {
  readonly derived: Derived;
  readonly nozzle: DerivedNozzle;
  readonly at: PlanPoint3;
  readonly space: Space;
  /** Floor of its space, shafts left out, and rooms within it that a nozzle there would belong to. */
  readonly floor: Region;
  /** Figures of its manual. */
  readonly limits: Readonly<Record<Needed, number>>;
}

/** Borders are drawn this much to the safe side, so that the grid of the polygon sums never puts a place past a limit [m], and as an angle [rad]. */
export const HAIR_m = 2e-6;
export const HAIR_rad = 2e-6;

/** A part of the plan where a nozzle breaks a rule; never too small. */
export interface Forbidden {
  /** Catalogue id. */
  readonly rule: string;
  readonly region: Region;
}

/** A box well around the space: beyond it nothing is asked. */
export function windowOf({ space: { bounds } }: Pick<Site, 'space'>): Region {
  const { minX, minY, maxX, maxY } = bounds;
  return [rectangle(maxX - minX + 2, maxY - minY + 2, planPoint(minX - 1, minY - 1))];
}

/** The longest way within a space [m]. */
export const acrossOf_m = ({ bounds: { minX, minY, maxX, maxY } }: Space): number => Math.hypot(maxX - minX, maxY - minY) + 1;

/** Rooms drawn within this one that are smaller: a nozzle there serves them. */
const roomsWithin = ({ spaces }: Derived, space: Space): Region[] =>
  spaces.filter((other) => other.kind === 'room' && other.level.id === space.level.id && other.enclosure.id !== space.enclosure.id && other.area_m2 <= space.area_m2).map(({ outline }) => fillOf([outline]));

/** What is needed to say where a nozzle may stand, or why that cannot be said. */
export function siteOf(derived: Derived, ref: RefOf<'nozzle'>): { readonly site: Site } | { readonly because: string } {
  const nozzle = derived.nozzles.find((each) => isSameRef(each.ref, ref));
  if (!nozzle) return { because: 'the nozzle is no longer in the plan.' };
  const { at, space, profile } = nozzle;
  if (!at || !space) return { because: 'it hangs in no enclosure.' };
  if (nozzle.holes_rad.length === 0) return { because: 'its holes are not drawn.' };
  const blank = NEEDED.find((key) => !profile?.limits[key]);
  if (blank) return { because: profile ? `“${LIMIT_CATALOGUE[blank].label}” is blank in the unit profile “${profile.name}”.` : 'the network has no unit profile.' };
  if (!profile?.footprint) return { because: 'the coverage of one nozzle is blank in the unit profile.' };
  const limits = Object.fromEntries(NEEDED.map((key) => [key, profile.limits[key]?.value ?? 0])) as Record<Needed, number>;
  const inner = nozzle.nozzle.serves ? [] : roomsWithin(derived, space);
  return { site: { derived, nozzle, at, space, limits, floor: differenceOf(fillOf([space.outline]), [fillOf(space.holes), ...inner]) } };
}
