import type { Derived } from '../derived/derived.ts';
import { type Region, differenceOf, intersectionOf, partsOf } from '../derived/polygon-sums.ts';
import { remembered } from '../derived/remember.ts';
import { isInsideOrOn, sideOfOutline } from '../geometry/inside.ts';
import type { PlanPoint, PlanPoint3 } from '../geometry/point.ts';
import type { RefOf } from '../model/plan.ts';
import { refKey } from '../model/plan.ts';
import { beamPockets } from './beam-pockets.ts';
import { blownVents } from './blown-vents.ts';
import { clashing, liveNear } from './clashing.ts';
import { cornerShots } from './corner-shots.ts';
import { cornerZonesOf } from './corner-zones.ts';
import { longPaths } from './long-paths.ts';
import { lostFloor } from './lost-floor.ts';
import { movedPipesOf } from './moved-pipes.ts';
import { nearFaces } from './near-faces.ts';
import { nearNozzles } from './near-nozzles.ts';
import { motionOf } from './nozzle-motion.ts';
import { oddTurns } from './odd-turns.ts';
import { overEquipment } from './over-equipment.ts';
import { shortJets } from './short-jets.ts';
import { shortPieces } from './short-pieces.ts';
import { type Forbidden, type Site, siteOf } from './site.ts';
import { wallShots } from './wall-shots.ts';
import { wrongCeiling } from './wrong-ceiling.ts';

/** Where a nozzle may be put, everything else as drawn. */
export interface AllowedPatch {
  readonly isKnown: true;
  readonly nozzle: RefOf<'nozzle'>;
  readonly at: PlanPoint3;
  /** Level id. */
  readonly level: string;
  /** The parts that do not hang together, each as its outer ring with its holes; the one that holds the drawn place first. */
  readonly parts: readonly Region[];
  /** What each rule takes away. */
  readonly forbidden: readonly Forbidden[];
  /** Whether the drawn place lies in it. */
  readonly holdsPlace: boolean;
}

/** A patch, or why it cannot be told. */
export type PatchAnswer = AllowedPatch | { readonly isKnown: false; readonly nozzle: RefOf<'nozzle'>; readonly because: string };

/** Whether a place lies in a region; its sides count. */
export const isInRegion = (p: PlanPoint, [outer, ...holes]: Region): boolean => outer !== undefined && isInsideOrOn(p, outer) && holes.every((hole) => sideOfOutline(p, hole) !== 'inside');

/** Rules about the nozzle where it hangs, whatever pipe leads to it. */
function aboutPlace(site: Site): Forbidden[] {
  const zones = cornerZonesOf(site.space, site.limits.cornerZone_m);
  return [nearFaces(site), wrongCeiling(site), cornerShots(site, zones), wallShots(site, zones), shortJets(site), nearNozzles(site), beamPockets(site), overEquipment(site), blownVents(site)];
}

/** Rules about the pipe that follows it. */
function aboutPipe(site: Site): Forbidden[] | undefined {
  const motion = motionOf(site.derived.plan, site.nozzle.ref);
  if (!motion) return undefined;
  const moved = movedPipesOf(site.nozzle.network, motion);
  return [shortPieces(site, motion, moved), oddTurns(site, motion, moved), longPaths(site, motion, moved), clashing(site, motion, moved), liveNear(site, motion, moved)];
}

function patched(derived: Derived, ref: RefOf<'nozzle'>): PatchAnswer {
  const found = siteOf(derived, ref);
  const unknown = (because: string): PatchAnswer => ({ isKnown: false, nozzle: ref, because });
  if ('because' in found) return unknown(found.because);
  const { site } = found;
  const pipe = aboutPipe(site);
  if (!pipe) return unknown('its pipe cannot follow it from where it is drawn.');
  const first = [...aboutPlace(site), ...pipe];
  const open = differenceOf(site.floor, first.map(({ region }) => region));
  const floor = lostFloor(site, open);
  const parts = partsOf(differenceOf(open, [floor.region]));
  const isHere = (part: Region): boolean => isInRegion(site.at, part);
  return {
    isKnown: true,
    nozzle: ref,
    at: site.at,
    level: site.space.level.id,
    parts: [...parts.filter(isHere), ...parts.filter((part) => !isHere(part))],
    forbidden: [...first, floor].map(({ rule, region }) => ({ rule, region: intersectionOf(region, site.floor) })),
    holdsPlace: parts.some(isHere),
  };
}

const patchesOf = remembered((_: Derived) => new Map<string, PatchAnswer>());

/**
 * The region on the plan in which a nozzle may be put, everything else as drawn: its height and its holes stay, its drop goes
 * along, and the runs to it stretch at right angles as they do when it is dragged on the board. Where a tee holds the far end
 * of its last run, that run may go askew by the one degree that made fittings take up, and no farther: more asks for another
 * fitting, which is the designer's to draw. It never leaves the space that it serves. Its own rules are kept everywhere in it,
 * whether they are as drawn or not; of everything else nothing is stopped that is not stopped already, and where floor is
 * uncovered as drawn, no more of it is. It is made with the program's own move command, since what pipe does when a nozzle
 * is moved is told there and nowhere else.
 * Kept within it: distance to walls, ceiling, corner and near-wall shots and free jet (N1 to N7), no floor left uncovered
 * that only this nozzle covers (N9), distance to other nozzles and live parts (N12, N19), no jet at a beam, an air intake or a vent
 * (N14, N15, E11), room above equipment (N15), room for threads, turns that fittings are made for, path budgets, and no clash of the
 * pipe that follows (P1, P2, P3, P16, P27). What the warnings N12, N14, N15 and E11 say as drawn is no news elsewhere. Each rule takes away a region of straight sides that is never too small and no
 * more than a quarter of a millimetre too large round arcs; the sums run on a grid of 1 µm.
 */
export function allowedPatch(derived: Derived, ref: RefOf<'nozzle'>): PatchAnswer {
  const known = patchesOf(derived);
  const key = refKey(ref);
  const patch = known.get(key) ?? patched(derived, ref);
  known.set(key, patch);
  return patch;
}
