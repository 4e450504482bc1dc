import { SYMBOL_OUTLET_m } from '../elevation/elevations-of.ts';
import type { WallCylinder } from '../elevation/elevation.ts';

/** Heights and widths of a cylinder's silhouette [m]; only outlet and diameter are known, the rest is how cylinders look. */
const VALVE_UP_m = 0.035;
const VALVE_WIDTH_m = 0.06;
const NECK_m = 0.09;
const NECK_WIDTH_m = 0.085;
const FOOT_ROUND_m = 0.03;
/** Height of the dome over the radius of the cylinder. */
const DOME = 0.8;
const DOME_STEPS = 6;

/** A cylinder from the side: closed runs of places, way from its axis and height in turn [m]. */
export interface CylinderShape {
  /** Body with its dome. */
  readonly body: readonly number[];
  readonly neck: readonly number[];
  readonly valve: readonly number[];
  /** Top of the straight part of the body. */
  readonly shoulder_m: number;
  readonly top_m: number;
}

/** The silhouette of a cylinder to the scale of its diameter and outlet height; a symbol where these are not known. */
export function cylinderShape({ radius_m, outlet_m = SYMBOL_OUTLET_m }: Pick<WallCylinder, 'radius_m' | 'outlet_m'>): CylinderShape {
  const neckTop = outlet_m - VALVE_UP_m;
  const domeTop = Math.max(outlet_m * 0.5, neckTop - NECK_m);
  const neck = Math.min(NECK_WIDTH_m / 2, radius_m * 0.6);
  const shoulder = domeTop - radius_m * DOME;
  const dome = (side: 1 | -1): number[][] =>
    Array.from({ length: DOME_STEPS + 1 }, (_, i) => {
      const turn = (i / DOME_STEPS) * Math.acos(neck / radius_m);
      return [side * radius_m * Math.cos(turn), shoulder + (radius_m * DOME * Math.sin(turn)) / Math.sin(Math.acos(neck / radius_m))];
    });
  const round = Math.min(FOOT_ROUND_m, radius_m / 3);
  const body = [
    [-radius_m + round, 0],
    [radius_m - round, 0],
    [radius_m, round],
    ...dome(1),
    ...dome(-1).reverse(),
    [-radius_m, round],
  ].flat();
  const valve = Math.min(VALVE_WIDTH_m / 2, neck);
  return {
    body,
    neck: [-neck, domeTop, neck, domeTop, neck, neckTop, -neck, neckTop],
    valve: [-valve, neckTop, valve, neckTop, valve, outlet_m + VALVE_UP_m, -valve, outlet_m + VALVE_UP_m],
    shoulder_m: shoulder,
    top_m: outlet_m + VALVE_UP_m,
  };
}
