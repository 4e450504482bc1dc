import type { Derived } from '../derived/derived.ts';
import { type Region, differenceOf, partsOf } from '../derived/polygon-sums.ts';
import { remembered } from '../derived/remember.ts';
import { boundsOf, isInside } from '../geometry/outline.ts';
import { momentsOf } from '../geometry/moments.ts';
import { type PlanPoint, distance_m, planPoint } from '../geometry/point.ts';
import { poleOf } from '../geometry/pole.ts';
import type { RefOf } from '../model/plan.ts';
import { refKey } from '../model/plan.ts';
import type { Finding } from '../rules/finding.ts';
import { RULES } from '../rules/index.ts';
import type { Rule } from '../rules/rule.ts';
import { type AllowedPatch, type PatchAnswer, allowedPatch, isInRegion } from './allowed-patch.ts';
import { grazedFloor } from './grazed-floor.ts';
import { siteOf } from './site.ts';
import { BORDERLESS, OF_SUPPORTS } from './stopping-rules.ts';
import { tracedWithin } from './traced.ts';
import { isSound, placeTrials } from './trial.ts';

/** A patch that was tried with every rule. */
export interface ProvenPatch extends AllowedPatch {
  /** What else would break within the borders in closed form, by check: found by trying places, and left out. */
  readonly alsoBroken: readonly Finding[];
}

/** Corners of a patch are tried this far within it [m]. */
const WITHIN_m = 0.001;
/** Corners that are tried with the whole catalogue. */
const CORNERS = 10;
/** Checks without a border of their own are tried at about so many places, and the border of those that break in about so many boxes, as far apart as this [m]. */
const PLACES = 60;
const BOXES = 150;
const NEAREST_m = 0.03;
const FARTHEST_m = 0.3;

/** So many of a list, spread evenly over it. */
const spread = <T>(list: readonly T[], most: number): T[] => (list.length <= most ? [...list] : Array.from({ length: most }, (_, i) => list[Math.floor((i * list.length) / most)] as T));

/** Places of a part that are tried: its middle, and its corners a little within. */
function triedOf(part: Region): PlanPoint[] {
  const middle = poleOf(part).at;
  const corners = spread(part[0] ?? [], CORNERS).flatMap((corner) => {
    const away_m = distance_m(corner, middle);
    const share = away_m > 2 * WITHIN_m ? WITHIN_m / away_m : 0.5;
    const at = planPoint(corner.x + (middle.x - corner.x) * share, corner.y + (middle.y - corner.y) * share);
    return isInRegion(at, part) ? [at] : [];
  });
  return [middle, ...corners];
}

/** Places all over a region, so far apart, and the corners of its border. */
function placesOver(region: Region, apart_m: number): PlanPoint[] {
  const { minX, minY, maxX, maxY } = boundsOf(region.flat());
  const places: PlanPoint[] = [];
  for (let x = minX + apart_m / 2; x < maxX; x += apart_m) for (let y = minY + apart_m / 2; y < maxY; y += apart_m) if (region.filter((ring) => isInside(planPoint(x, y), ring)).length % 2 === 1) places.push(planPoint(x, y));
  return [...places, ...partsOf(region).flatMap(triedOf)];
}

/** Rules that break at one of some places, with what they say there. */
function brokenAt(derived: Derived, patch: AllowedPatch, places: readonly PlanPoint[], rules?: readonly Rule[]): ReadonlyMap<string, Finding> {
  const tried = placeTrials(derived.plan, patch.nozzle, patch.at.z, rules);
  const isCounted = ({ rule }: Finding): boolean => !OF_SUPPORTS.has(rule);
  return new Map(places.flatMap((at) => tried(at).broken.filter(isCounted).map((finding) => [finding.rule, finding])));
}

/** The part of a region in which some rules are kept. */
function keptBy(derived: Derived, patch: AllowedPatch, region: Region, broken: ReadonlyMap<string, Finding>, box_m: number): Region {
  if (broken.size === 0) return region;
  const tried = placeTrials(derived.plan, patch.nozzle, patch.at.z, RULES.filter(({ id }) => broken.has(id)));
  return tracedWithin(region, (at) => isSound(tried(at)), { box_m });
}

function proven(derived: Derived, patch: AllowedPatch): ProvenPatch {
  const found = siteOf(derived, patch.nozzle);
  if (!('site' in found)) return { ...patch, alsoBroken: [] };
  const { site } = found;
  const others = patch.forbidden.filter(({ rule }) => rule !== 'N9').map(({ region }) => region);
  const grazed = grazedFloor(site, differenceOf(site.floor, others), patch.parts.flat());
  const { area_m2 } = momentsOf(grazed);
  const apart_m = (count: number): number => Math.min(FARTHEST_m, Math.max(NEAREST_m, Math.sqrt(area_m2 / count)));
  const box_m = apart_m(BOXES);
  const first = brokenAt(derived, patch, placesOver(grazed, apart_m(PLACES)), BORDERLESS);
  const bordered = keptBy(derived, patch, grazed, first, box_m);
  const more = brokenAt(derived, patch, partsOf(bordered).flatMap(triedOf));
  const kept = keptBy(derived, patch, bordered, more, box_m);
  const broken = new Map([...first, ...more]);
  const parts = partsOf(kept);
  const isHere = (part: Region): boolean => isInRegion(patch.at, part);
  const [only] = broken.values();
  const cut = differenceOf(grazed, [kept]);
  return {
    ...patch,
    parts: [...parts.filter(isHere), ...parts.filter((part) => !isHere(part))],
    holdsPlace: parts.some(isHere),
    forbidden: [
      ...patch.forbidden.map(({ rule, region }) => ({ rule, region: rule === 'N9' ? differenceOf(region, [grazed]) : region })),
      ...(cut.length > 0 ? [{ rule: broken.size === 1 && only ? only.rule : 'other', region: cut }] : []),
    ],
    alsoBroken: [...broken.values()],
  };
}

export type ProvenAnswer = ProvenPatch | Extract<PatchAnswer, { isKnown: false }>;

const provenOf = remembered((_: Derived) => new Map<string, ProvenAnswer>());

/**
 * The allowed patch with every rule of the catalogue tried on it, told to within 2 mm. Floor of which only a sliver is lost, that
 * check N9 takes for noise, is taken in. Checks without a border of their own (reach, voids, crossings, headroom, even
 * paths and others) are tried at places all over it, the plan worked out and checked with the nozzle there, and what breaks is
 * left out along a border found by halving; a pocket narrower than the places lie apart
 * (3 to 30 cm) may be passed over. At its middle and its corners the whole catalogue is tried. A place where a warning appears that is not there as drawn is not
 * kept, nor is one where something can no longer be checked. Left out is what only a run of the discharge tells (orifices, shares,
 * thrust), and supports, which whoever shifts a nozzle sees to: the sheet and the window say so.
 */
export function provenPatch(derived: Derived, ref: RefOf<'nozzle'>): ProvenAnswer {
  const known = provenOf(derived);
  const key = refKey(ref);
  let answer = known.get(key);
  if (!answer) {
    const patch = allowedPatch(derived, ref);
    answer = patch.isKnown ? proven(derived, patch) : patch;
    known.set(key, answer);
  }
  return answer;
}
