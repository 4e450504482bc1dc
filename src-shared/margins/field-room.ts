import type { Command } from '../commands/command.ts';
import { setNozzleHeight } from '../commands/set-nozzle-height.ts';
import { datumsOf } from '../derived/datum.ts';
import type { Derived, DerivedNozzle } from '../derived/derived.ts';
import { remembered } from '../derived/remember.ts';
import type { Arc } from '../derived/turn-intervals.ts';
import { turnTo_rad } from '../geometry/angle.ts';
import type { PlanPoint } from '../geometry/point.ts';
import { refKey } from '../model/plan.ts';
import type { AllowedPatch } from './allowed-patch.ts';
import type { HeightRange } from './height-range.ts';
import { movedTo } from './nozzle-motion.ts';
import { type PatchBox, patchBoxOf } from './patch-reach.ts';
import { provenPatch } from './proven-patch.ts';
import { siteOf } from './site.ts';
import { BORDERLESS, STOPPING } from './stopping-rules.ts';
import { type Trial, aroundLevel, isSound, trialsOn } from './trial.ts';
import { turnRangeOf } from './turn-range.ts';

/** What a fitter may shift, raise and turn a nozzle without a call, along the dimensions of the sheet. */
export interface FieldRoom {
  readonly patch: AllowedPatch;
  /** Shifts that may be used up together: off the first datum face and off the second, − toward the face, + away from it. */
  readonly box: PatchBox;
  readonly heights: HeightRange;
  /** Directions that its first hole may take around the one that it has; null where it may not turn. */
  readonly turn: Arc | null;
}

export type FieldRoomAnswer = { readonly isKnown: true; readonly room: FieldRoom } | { readonly isKnown: false; readonly because: string };

/** Corners of the box are tried so far within it, as a share: on its border float noise would decide. */
const WITHIN = 0.999;

/** Shares of the way to the end that the ceiling sets, the first that breaks nothing counts. */
const SHARES = [0.999, 0.5, 0.25, 0.125];

type Tries = (change: Command) => Trial;
/** The trials of a level: all its nozzles share what was found of it as drawn. */
const byLevel = remembered((_: Derived) => new Map<string, { readonly shifts: Tries; readonly heights: Tries }>());

function trialsOf(derived: Derived, level: string): { readonly shifts: Tries; readonly heights: Tries } {
  const known = byLevel(derived);
  const around = aroundLevel(derived.plan, level);
  const trials = known.get(level) ?? { shifts: trialsOn(around, BORDERLESS), heights: trialsOn(around, STOPPING) };
  known.set(level, trials);
  return trials;
}

function roomOf(derived: Derived, nozzle: DerivedNozzle, axis_rad: number, isMirrored: boolean): FieldRoomAnswer {
  const patch = provenPatch(derived, nozzle.ref);
  if (!patch.isKnown) return patch;
  if (!patch.holdsPlace) return { isKnown: false, because: 'as drawn a check stops it: mend that first.' };
  const box = patchBoxOf(patch, axis_rad);
  const tried = trialsOf(derived, nozzle.network.level.id);
  const [x, y] = [Math.cos(axis_rad), Math.sin(axis_rad)];
  const corner = (first_m: number, second_m: number): PlanPoint => ({ x: patch.at.x + WITHIN * (first_m * x - second_m * y), y: patch.at.y + WITHIN * (first_m * y + second_m * x) });
  const corners = [corner(-box.minus1_m, -box.minus2_m), corner(box.plus1_m, -box.minus2_m), corner(box.plus1_m, box.plus2_m), corner(-box.minus1_m, box.plus2_m)];
  for (const at of corners) {
    const trial = tried.shifts((around) => movedTo(around, nozzle.ref, at, patch.at.z));
    if (!isSound(trial)) return { isKnown: false, because: `a shift to its border breaks “${trial.broken[0]?.title ?? 'the pipe'}”: ask the designer.` };
  }
  const drop_m = nozzle.profile?.limits.nozzleToCeiling_m?.value ?? 0;
  const { z } = patch.at;
  const top_m = nozzle.localCeiling_m ?? z;
  const isKept = (height_m: number): boolean => isSound(tried.heights(setNozzleHeight(nozzle.ref, height_m)));
  // Not the last millimetre: the whole way that the ceiling gives, or half, a quarter or an eighth of it.
  const kept = (way_m: number): number => z + way_m * (way_m === 0 ? 0 : (SHARES.find((share) => isKept(z + way_m * share)) ?? 0));
  const heights: HeightRange = { drawn_m: z, least_m: kept(Math.min(0, top_m - drop_m - z)), greatest_m: kept(Math.max(0, top_m - z)) };
  const found = siteOf(derived, nozzle.ref);
  const turn = 'site' in found ? turnRangeOf(found.site) : null;
  return { isKnown: true, room: { patch, box: isMirrored ? { ...box, minus2_m: box.plus2_m, plus2_m: box.minus2_m } : box, heights, turn } };
}

const lastRooms = new WeakMap<Derived, ReadonlyMap<string, FieldRoomAnswer>>();

/** More nozzles than this are not worked out: printing would take many minutes. */
const MOST_NOZZLES = 100;

/**
 * The room of every nozzle by its key, along the two datum faces of its space. Borders tell exactly what they stand for; at the four
 * corners of the printed box every other check that can stop a moved nozzle is tried, and at the ends of the heights all of them, but
 * for what a discharge would have to be run for. Where one of them stops anything the sheet sends the fitter to the designer.
 * @param report  told before each nozzle: it takes seconds
 */
export function fieldRooms(derived: Derived, report: (done: number, all: number) => void = () => undefined): ReadonlyMap<string, FieldRoomAnswer> {
  const known = lastRooms.get(derived);
  if (known) return known;
  const datums = datumsOf(derived);
  const { nozzles } = derived;
  const rooms = new Map(
    nozzles.map((nozzle, i): [string, FieldRoomAnswer] => {
      report(i, nozzles.length);
      if (i >= MOST_NOZZLES) return [refKey(nozzle.ref), { isKnown: false, because: `it is worked out for ${MOST_NOZZLES} nozzles of a set: ask the designer.` }];
      const faces = nozzle.space && datums.get(nozzle.space.key)?.faces;
      const axis_rad = faces?.[0].inward_rad ?? 0;
      return [refKey(nozzle.ref), roomOf(derived, nozzle, axis_rad, faces !== undefined && turnTo_rad(axis_rad, faces[1].inward_rad) < 0)];
    }),
  );
  lastRooms.set(derived, rooms);
  return rooms;
}
