import { type DirectedEnd, dot3 } from '../geometry/bent-path.ts';
import { type LaidHose, layHose, outOfPlane_rad } from '../geometry/lay-hose.ts';
import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { shortestBentPath } from '../geometry/shortest-bent-path.ts';
import type { Direction3 } from '../geometry/vector3.ts';
import type { AssemblyPart, Cylinder } from '../model/plan.ts';
import { rememberedPart } from './remember.ts';

/** The hose of one cylinder in space. */
export interface Hose extends LaidHose {
  readonly part: AssemblyPart;
  readonly from: DirectedEnd;
  readonly to: DirectedEnd;
  /** Straight from outlet to end [m]. */
  readonly reach_m: number;
  /** Hose that it takes at the least bend radius of the manual [m]; undefined while that is blank. */
  readonly needed_m: number | undefined;
  /** How far its ends are from lying in one plane [rad]. */
  readonly twist_rad: number;
}

/**
 * The hose of a cylinder from its outlet, which it leaves level, to its end, which it meets in the direction of the
 * rigid part that follows.
 * @param outlet_m  height of the valve outlet [m]
 * @param least_m   least bend radius [m]; undefined while it is blank in the manual
 * @param x, y, z   direction at its end, of length 1
 * @returns undefined while the direction of the outlet or the end is not known
 */
export const hoseOf = rememberedPart((cylinder: Cylinder, part: AssemblyPart, outlet_m: number, least_m: number | undefined, x: number, y: number, z: number): Hose | undefined => {
  if (cylinder.outlet_rad === null || cylinder.hoseEnd === null) return undefined;
  const begin: PlanPoint3 = { ...cylinder.at, z: outlet_m };
  const from: DirectedEnd = { at: begin, way: { x: Math.cos(cylinder.outlet_rad), y: Math.sin(cylinder.outlet_rad), z: 0 } };
  const way: Direction3 = { x, y, z };
  const to: DirectedEnd = { at: cylinder.hoseEnd, way };
  if (Math.abs(dot3(way, way) - 1) > 1e-6) return undefined;
  const reach_m = distance3_m(begin, cylinder.hoseEnd);
  const needed_m = least_m === undefined || least_m <= 0 ? undefined : shortestBentPath(from, to, least_m)?.length_m;
  // Its length is not entered yet: drawn as short as the manual lets it be.
  const length_m = part.length_m > 0 ? part.length_m : (needed_m ?? reach_m);
  return { part, from, to, reach_m, needed_m, twist_rad: outOfPlane_rad(from, to), ...layHose(from, to, length_m, least_m) };
});
