import type { Derived } from '../derived/derived.ts';
import { type Region, intersectionOf, partsOf } from '../derived/polygon-sums.ts';
import { remembered } from '../derived/remember.ts';
import { type PlanPoint, distance_m, planPoint } from '../geometry/point.ts';
import { poleOf } from '../geometry/pole.ts';
import type { RefOf } from '../model/plan.ts';
import { refKey } from '../model/plan.ts';
import type { Finding } from '../rules/finding.ts';
import { type AllowedPatch, type PatchAnswer, allowedPatch, isInRegion } from './allowed-patch.ts';
import { carve } from './carve.ts';
import { isSound, placeTrials } from './trial.ts';

/** A warning that appears somewhere in a patch and is not there as drawn. */
export interface PatchWarning {
  readonly finding: Finding;
  readonly at: PlanPoint;
}

/** A patch that was tried with every rule. */
export interface ProvenPatch extends AllowedPatch {
  readonly warnings: readonly PatchWarning[];
  /** Rules for which there is no border in closed form and that took something away: found by trying places, on the small side. */
  readonly alsoBroken: readonly Finding[];
}

/** Corners of a patch are tried this far within it [m]. */
const WITHIN_m = 0.001;
/** Corners that are tried, and questions that a rule without a border of its own may cost. */
const CORNERS = 10;
const QUESTIONS = 120;
const FINE_m = 0.002;

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

function proven(derived: Derived, patch: AllowedPatch): ProvenPatch {
  const tried = placeTrials(derived.plan, patch.nozzle, patch.at.z);
  const warnings = new Map<string, PatchWarning>();
  const broken = new Map<string, Finding>();
  const parts = patch.parts.flatMap((part): Region[] => {
    let isWhole = true;
    for (const at of triedOf(part)) {
      const trial = tried(at);
      for (const finding of trial.warnings) if (!warnings.has(finding.rule)) warnings.set(finding.rule, { finding, at });
      for (const finding of trial.stops) broken.set(finding.rule, finding);
      isWhole &&= isSound(trial);
    }
    if (isWhole) return [part];
    return partsOf(intersectionOf(part, carve(part, (at) => isSound(tried(at)), QUESTIONS, FINE_m)));
  });
  const isHere = (part: Region): boolean => isInRegion(patch.at, part);
  return { ...patch, parts: [...parts.filter(isHere), ...parts.filter((part) => !isHere(part))], holdsPlace: parts.some(isHere), warnings: [...warnings.values()], alsoBroken: [...broken.values()] };
}

export type ProvenAnswer = ProvenPatch | Extract<PatchAnswer, { isKnown: false }>;

const provenOf = remembered((_: Derived) => new Map<string, ProvenAnswer>());

/**
 * The allowed patch with every rule of the catalogue tried on it: at its middle and its corners the whole plan is worked out
 * and checked with the nozzle there. Where a rule that has no border of its own stops something, that is carved out on the
 * small side. Left out is what only a run of the discharge tells (orifices, shares, thrust): the sheet and the window say so.
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
