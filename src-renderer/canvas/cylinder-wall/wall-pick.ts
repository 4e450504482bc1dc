import { type Command, sequence } from '#shared/commands/command';
import { editCylinder } from '#shared/commands/edit-cylinder';
import type { Elevation, WallCylinder } from '#shared/elevation/elevation';
import { SYMBOL_OUTLET_m } from '#shared/elevation/elevations-of';
import type { Ref, RefOf } from '#shared/model/plan';
import type { ElevationLayout } from '#shared/sheets/elevation-frame';
import { type Px, gap_px } from '../pen.ts';
import { PX_PER_mm, type WallView, wallPx } from './wall-view.ts';

/** Something of the wall whose height can be dragged: a rail or a restraint with all cylinders that it holds, or one gauge. */
export interface WallHandle {
  readonly kind: 'rail' | 'restraint' | 'gauge';
  readonly cylinders: readonly WallCylinder[];
  readonly z_m: number;
  /** Where it reaches along the wall [m]. */
  readonly from_m: number;
  readonly to_m: number;
}

/** Heights that are the same to a tenth of a millimetre are one restraint. */
const SAME_m = 1e-4;

/** Everything of a wall whose height can be dragged, gauges first. */
export function wallHandles({ cylinders, rails }: Elevation): WallHandle[] {
  const gauges = cylinders.flatMap((each): WallHandle[] => (each.gauge ? [{ kind: 'gauge', cylinders: [each], z_m: each.gauge.height_m, from_m: each.at.s, to_m: each.at.s }] : []));
  const restraints: WallHandle[] = [];
  for (const each of cylinders) {
    for (const z_m of each.cylinder.restraints_m) {
      const at = restraints.findIndex((other) => Math.abs(other.z_m - z_m) < SAME_m);
      const known = restraints[at];
      const [from_m, to_m] = [each.at.s - each.radius_m, each.at.s + each.radius_m];
      if (known) restraints[at] = { ...known, cylinders: [...known.cylinders, each], from_m: Math.min(known.from_m, from_m), to_m: Math.max(known.to_m, to_m) };
      else restraints.push({ kind: 'restraint', cylinders: [each], z_m, from_m, to_m });
    }
  }
  return [...gauges, ...rails.map((rail): WallHandle => ({ kind: 'rail', cylinders: rail.cylinders, z_m: rail.height_m, from_m: rail.from_m, to_m: rail.to_m })), ...restraints];
}

const WORDS = { rail: 'Move rail', restraint: 'Move restraint', gauge: 'Move gauge' } as const;

/** The command that brings a handle to a height above the finished floor [m], in one step for all that it holds. */
export const wallCommand = ({ kind, cylinders, z_m }: WallHandle, to_m: number): Command =>
  sequence(
    WORDS[kind],
    cylinders.map(({ ref, cylinder }) => {
      if (kind === 'rail') return editCylinder(ref, { railHeight_m: to_m });
      if (kind === 'gauge') return editCylinder(ref, cylinder.gauge ? { gauge: { ...cylinder.gauge, height_m: to_m } } : {});
      return editCylinder(ref, { restraints_m: cylinder.restraints_m.map((each) => (Math.abs(each - z_m) < SAME_m ? to_m : each)) });
    }),
  );

/** The handle under the pointer: a gauge before a rail before a restraint. */
export function wallHandleAt(elevation: Elevation, view: WallView, layout: ElevationLayout, p: Px, reach_px: number): WallHandle | undefined {
  return wallHandles(elevation).find(({ kind, z_m, from_m, to_m }) => {
    const [a, b] = [wallPx(view, layout, { s: from_m, z: z_m }), wallPx(view, layout, { s: to_m, z: z_m })];
    if (kind === 'gauge') return gap_px(a, p) <= reach_px;
    return Math.abs(p.y - a.y) <= reach_px * 0.6 && p.x >= a.x - reach_px && p.x <= b.x + reach_px;
  });
}

/** Distance from a place to a straight piece [px]. */
function beside_px(p: Px, a: Px, b: Px): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const length2 = dx * dx + dy * dy;
  const t = length2 === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / length2));
  return gap_px(p, { x: a.x + dx * t, y: a.y + dy * t });
}

/** The thing of the plan under the pointer, on the wall or on the strip below it. */
export function wallThingAt(elevation: Elevation, view: WallView, layout: ElevationLayout, p: Px, reach_px: number): Ref | undefined {
  const px = (s: number, z: number): Px => wallPx(view, layout, { s, z });
  const isIn = (from_m: number, to_m: number, bottom_m: number, top_m: number): boolean => {
    const [low, high] = [px(from_m, bottom_m), px(to_m, top_m)];
    return p.x >= low.x && p.x <= high.x && p.y <= low.y && p.y >= high.y;
  };
  const support = elevation.supports.find(({ at }) => gap_px(px(at.s, at.z), p) <= reach_px);
  if (support) return support.support.ref;
  const pipe = elevation.pipes.find(({ from, to }) => beside_px(p, px(from.s, from.z), px(to.s, to.z)) <= reach_px * 0.7);
  if (pipe) return pipe.pipe.ref;
  const cylinder = elevation.cylinders.find(({ at, radius_m, outlet_m = SYMBOL_OUTLET_m }) => isIn(at.s - radius_m, at.s + radius_m, 0, outlet_m + 0.05));
  if (cylinder) return cylinder.ref;
  const below = elevation.cylinders.find(({ at, radius_m }) => gap_px(p, stripPx(view, layout, at)) <= Math.max(reach_px, radius_m * view.scale_px_m));
  if (below) return below.ref;
  const hose = elevation.pieces.find(({ places }) => places.some((place, i) => i > 0 && beside_px(p, px(places[i - 1]?.s ?? 0, places[i - 1]?.z ?? 0), px(place.s, place.z)) <= reach_px * 0.7));
  if (hose) {
    const network = elevation.network.ref.id;
    return hose.piece.cylinder === null ? { kind: 'network', id: network } : ({ kind: 'cylinder', network, id: hose.piece.cylinder } satisfies RefOf<'cylinder'>);
  }
  const solid = elevation.solids.find(({ from_m, to_m, solid: { bottom_m, top_m } }) => isIn(from_m, to_m, bottom_m, top_m));
  if (solid) return solid.solid.ref;
  return elevation.openings.find(({ from_m, to_m, bottom_m, top_m }) => isIn(from_m, to_m, bottom_m, top_m))?.ref;
}

/** Board place of a place of the floor strip. */
export const stripPx = (view: WallView, layout: ElevationLayout, { s, off }: { readonly s: number; readonly off: number }): Px => ({
  x: view.x + layout.frame.x(s) * PX_PER_mm,
  y: view.y + (layout.strip_mm + layout.frame.mm(off)) * PX_PER_mm,
});
