import { type PlanPoint, type PlanPoint3, planPoint } from '../geometry/point.ts';
import type { Outline } from '../geometry/outline.ts';
import type { Obstruction } from '../model/plan.ts';

/** Depth of the working space in front of an electrical panel, up to 150 V to ground [m]: 36 in, NEC 110.26(A)(1), memory. */
export const PANEL_DEPTH_m = 0.9144;
/** Least width of that space [m]: 30 in, or the panel's where it is wider, NEC 110.26(A)(2), memory. */
export const PANEL_LEAST_WIDTH_m = 0.762;
/** Height of that space from the floor, or the panel's where it is taller [m]: 6 ft 6 in, NEC 110.26(A)(3), memory. */
export const PANEL_HEIGHT_m = 1.9812;

/** The working space of an electrical panel, in a frame of its own: `u` out of its front, `v` to the left of that. */
export interface PanelSpace {
  /** Middle of the panel's front. */
  readonly at: PlanPoint;
  readonly front_rad: number;
  readonly panelWidth_m: number;
  readonly width_m: number;
  readonly depth_m: number;
  readonly height_m: number;
}

/** The space in front of a panel; undefined while nobody said where its front is, or for anything else. */
export function findPanelSpace({ kind, front_rad, footprint, bottom_m, top_m }: Obstruction): PanelSpace | undefined {
  if (kind !== 'panel' || front_rad === null) return undefined;
  const [cos, sin] = [Math.cos(front_rad), Math.sin(front_rad)];
  const u = footprint.map(({ x, y }) => x * cos + y * sin);
  const v = footprint.map(({ x, y }) => y * cos - x * sin);
  const [front, left, right] = [Math.max(...u), Math.max(...v), Math.min(...v)];
  const middle = (left + right) / 2;
  return {
    at: planPoint(front * cos - middle * sin, front * sin + middle * cos),
    front_rad,
    panelWidth_m: left - right,
    width_m: Math.max(PANEL_LEAST_WIDTH_m, left - right),
    depth_m: PANEL_DEPTH_m,
    height_m: Math.max(PANEL_HEIGHT_m, bottom_m, top_m),
  };
}

const placeIn = ({ at, front_rad }: PanelSpace, { x, y }: PlanPoint | PlanPoint3): { readonly u: number; readonly v: number } => ({
  u: (x - at.x) * Math.cos(front_rad) + (y - at.y) * Math.sin(front_rad),
  v: (y - at.y) * Math.cos(front_rad) - (x - at.x) * Math.sin(front_rad),
});

/** The working space on the plan, its width taken to both sides of the panel alike: a closed ring. */
export function panelZone(space: PanelSpace): Outline {
  const { at, front_rad, depth_m, width_m } = space;
  const place = (u: number, v: number): PlanPoint => planPoint(at.x + u * Math.cos(front_rad) - v * Math.sin(front_rad), at.y + u * Math.sin(front_rad) + v * Math.cos(front_rad));
  return [place(0, -width_m / 2), place(depth_m, -width_m / 2), place(depth_m, width_m / 2), place(0, width_m / 2)];
}

/** A thing that may stand in a working space: everything within a radius of a straight piece. */
export interface Standing {
  readonly name: string;
  readonly a: PlanPoint3;
  readonly b: PlanPoint3;
  readonly radius_m: number;
}

/** From where to where across the panel a thing lies in the depth and height of its space [m]; undefined beside both. */
function across({ a, b, radius_m }: Standing, space: PanelSpace): readonly [number, number] | undefined {
  const [from, to] = [placeIn(space, a), placeIn(space, b)];
  let [start, end] = [0, 1];
  /** Keeps the part of the piece where a value that runs straight along it lies between two bounds. */
  const keep = (first: number, last: number, least: number, most: number): void => {
    const delta = last - first;
    if (Math.abs(delta) < 1e-12) {
      if (first <= least || first >= most) end = -1;
      return;
    }
    const [p, q] = [(least - first) / delta, (most - first) / delta];
    start = Math.max(start, Math.min(p, q));
    end = Math.min(end, Math.max(p, q));
  };
  const noise = 1e-9;
  keep(a.z, b.z, -radius_m + noise, space.height_m + radius_m - noise);
  keep(from.u, to.u, -radius_m + noise, space.depth_m + radius_m - noise);
  if (end < start) return undefined;
  const at = (t: number) => ({ u: from.u + (to.u - from.u) * t, v: from.v + (to.v - from.v) * t });
  const ends = [at(start), at(end)];
  // A thing that stands upright is round on the plan: beside the depth it reaches less far across.
  const isUpright = Math.hypot(to.u - from.u, to.v - from.v) < 1e-9;
  const beside = isUpright ? Math.max(0, -from.u, from.u - space.depth_m) : 0;
  const half_m = Math.sqrt(Math.max(0, radius_m ** 2 - beside ** 2));
  return [Math.min(...ends.map(({ v }) => v)) - half_m, Math.max(...ends.map(({ v }) => v)) + half_m];
}

/** What of a working space is free, and what takes it. */
export interface FreeWidth {
  /** Width that is free in front of the panel and includes it [m]; 0 when something stands right before it. */
  readonly width_m: number;
  /** The things on both sides, or before it. */
  readonly by: readonly string[];
}

/**
 * How wide the space in front of a panel is free to its whole depth and height. The width need not lie evenly before
 * the panel, but must take in all of it. Pieces that lie aslant are taken as wide as their ends, which errs toward reporting.
 */
export function freeWidthOf(space: PanelSpace, things: readonly Standing[]): FreeWidth {
  const half_m = space.panelWidth_m / 2;
  const noise = 1e-9;
  let [right, left] = [-Infinity, Infinity];
  let [rightBy, leftBy] = ['', ''];
  for (const thing of things) {
    const found = across(thing, space);
    if (!found) continue;
    const [low, high] = found;
    if (low < half_m - noise && high > -half_m + noise) return { width_m: 0, by: [thing.name] };
    if (high <= -half_m + noise && high > right) [right, rightBy] = [high, thing.name];
    if (low >= half_m - noise && low < left) [left, leftBy] = [low, thing.name];
  }
  return { width_m: left - right, by: [rightBy, leftBy].filter((name) => name !== '') };
}
