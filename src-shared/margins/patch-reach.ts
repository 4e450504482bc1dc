import type { Region } from '../derived/polygon-sums.ts';
import { isInside, sidesOf } from '../geometry/outline.ts';
import { type PlanPoint, polar } from '../geometry/point.ts';
import { rayHit_m } from '../geometry/segment.ts';
import type { AllowedPatch } from './allowed-patch.ts';

/** How far a nozzle may be shifted one way, and what ends it there. */
export interface Reach {
  readonly direction_rad: number;
  /** [m], ≥ 0. */
  readonly reach_m: number;
  /** Catalogue id of a rule that is broken just beyond; undefined where the floor of its space ends. */
  readonly endedBy: string | undefined;
}

/** Just beyond a border [m]. */
const BEYOND_m = 5e-4;

/** Whether a place lies in a region: in an odd number of its rings, for regions from sums do not overlap themselves. */
const isIn = (p: PlanPoint, region: Region): boolean => region.filter((ring) => isInside(p, ring)).length % 2 === 1;

/** How far a nozzle may be shifted straight one way from where it is drawn. Nothing outside its patch. */
export function reachOf({ at, parts, forbidden, holdsPlace }: AllowedPatch, direction_rad: number): Reach {
  const [here] = parts;
  const ends = holdsPlace && here ? here.flatMap(sidesOf).flatMap((side) => rayHit_m(at, direction_rad, side) ?? []) : [];
  // A place on the border goes nowhere across it, and along it as far as the next corner.
  const reach_m = ends.length > 0 ? Math.min(...ends) : 0;
  const beyond = polar(at, direction_rad, reach_m + BEYOND_m);
  return { direction_rad, reach_m, endedBy: forbidden.find(({ region }) => isIn(beyond, region))?.rule };
}

const QUARTER = Math.PI / 2;

/** The same for east, north, west and south, turned by an angle. */
export const reachesOf = (patch: AllowedPatch, turn_rad = 0): readonly Reach[] => [0, 1, 2, 3].map((quarter) => reachOf(patch, turn_rad + quarter * QUARTER));

/** A box around the drawn place: shifts along two square axes that may be used up together [m], all ≥ 0. */
export interface PatchBox {
  readonly minus1_m: number;
  readonly plus1_m: number;
  readonly minus2_m: number;
  readonly plus2_m: number;
}

/** Widths that are tried to either side. */
const WIDTHS = 24;

/**
 * The largest box around the drawn place that lies within its patch, of those whose sides to the left and right end at one of 24
 * even parts of the way to the border: whatever shift along the first axis is used, any along the second is still allowed.
 * @param axis_rad  direction of the first axis; the second is square to it, counter-clockwise
 */
export function patchBoxOf(patch: AllowedPatch, axis_rad: number): PatchBox {
  const none: PatchBox = { minus1_m: 0, plus1_m: 0, minus2_m: 0, plus2_m: 0 };
  const [here] = patch.parts;
  if (!patch.holdsPlace || !here) return none;
  const [cos, sin] = [Math.cos(axis_rad), Math.sin(axis_rad)];
  const turned = (p: PlanPoint): PlanPoint => ({ x: (p.x - patch.at.x) * cos + (p.y - patch.at.y) * sin, y: (p.y - patch.at.y) * cos - (p.x - patch.at.x) * sin });
  const sides = here.map((ring) => ring.map(turned)).flatMap(sidesOf);
  const most = { left_m: reachOf(patch, axis_rad + Math.PI).reach_m, right_m: reachOf(patch, axis_rad).reach_m };
  let best = none;
  let most_m2 = -1;
  for (let i = 0; i <= WIDTHS; i += 1) {
    for (let j = 0; j <= WIDTHS; j += 1) {
      const [left_m, right_m] = [(most.left_m * i) / WIDTHS, (most.right_m * j) / WIDTHS];
      let [up_m, down_m] = [Infinity, Infinity];
      for (const { a, b } of sides) {
        const [first, last] = a.x <= b.x ? [a, b] : [b, a];
        if (last.x <= -left_m || first.x >= right_m) continue;
        const yAt = (x: number): number => (last.x === first.x ? first.y : first.y + ((last.y - first.y) * (x - first.x)) / (last.x - first.x));
        for (const y of last.x === first.x ? [first.y, last.y] : [yAt(Math.max(first.x, -left_m)), yAt(Math.min(last.x, right_m))]) {
          if (y >= 0) up_m = Math.min(up_m, y);
          if (y <= 0) down_m = Math.min(down_m, -y);
        }
      }
      const area_m2 = (left_m + right_m) * (up_m + down_m);
      if (Number.isFinite(area_m2) && area_m2 > most_m2) {
        most_m2 = area_m2;
        best = { minus1_m: left_m, plus1_m: right_m, minus2_m: down_m, plus2_m: up_m };
      }
    }
  }
  return best;
}
