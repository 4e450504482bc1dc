import type { AllowedPatch } from './allowed-patch.ts';
import { reachOf } from './patch-reach.ts';

/** A strip no wider than this to either side is a way along a run, no room beside it [m]. */
const NARROW_m = 0.1;
/** Directions that are looked at, over half a turn. */
const WAYS = 36;

/** The way a nozzle can only slide along. */
export type Slide = 'east-west' | 'north-south' | 'slanted';

/**
 * Which way a nozzle can only slide, where a tee holds the run to it: its patch is a strip, ended on both sides since the run would
 * go askew (P1). Undefined where it has room to both sides, or where something else ends it there.
 */
export function slideOf(patch: AllowedPatch): Slide | undefined {
  if (!patch.holdsPlace) return undefined;
  const ways = Array.from({ length: WAYS }, (_, i) => {
    const direction_rad = (i * Math.PI) / WAYS;
    return { direction_rad, both: [reachOf(patch, direction_rad), reachOf(patch, direction_rad + Math.PI)] };
  });
  const longest = ways.reduce((best, each) => (lengthOf(each.both) > lengthOf(best.both) ? each : best));
  const across = [Math.PI / 2, -Math.PI / 2].map((turn_rad) => reachOf(patch, longest.direction_rad + turn_rad));
  if (!across.every(({ reach_m, endedBy }) => reach_m < NARROW_m && endedBy === 'P1') || lengthOf(longest.both) <= lengthOf(across)) return undefined;
  if (longest.direction_rad === 0) return 'east-west';
  return Math.abs(longest.direction_rad - Math.PI / 2) < 1e-9 ? 'north-south' : 'slanted';
}

const lengthOf = (both: readonly { readonly reach_m: number }[]): number => both.reduce((sum, { reach_m }) => sum + reach_m, 0);
