import RBush from 'rbush';
import { type Box, type Outline, boundsOf, boxesTouch, sidesOf } from '../geometry/outline.ts';
import { isInsideOrOn } from '../geometry/inside.ts';
import { counterClockwise } from '../geometry/ring-order.ts';
import { meetingOf } from '../geometry/segment.ts';
import type { Level, Obstruction } from '../model/plan.ts';
import type { Solid } from './derived.ts';
import { rememberedPart } from './remember.ts';

/** The solid that an obstruction of a level is. */
const solidOf = rememberedPart((obstruction: Obstruction, level: string): Solid => {
  const footprint = counterClockwise(obstruction.footprint.map(({ x, y }) => ({ x, y })));
  return {
    ref: { kind: 'obstruction', level, id: obstruction.id },
    obstruction,
    footprint,
    bounds: boundsOf(footprint),
    bottom_m: Math.min(obstruction.bottom_m, obstruction.top_m),
    top_m: Math.max(obstruction.bottom_m, obstruction.top_m),
  };
});

/** All solids of a level, with an index of their places. */
export interface SolidIndex {
  readonly solids: readonly Solid[];
  /** Solids whose box touches a box, in the order of the plan. */
  near(box: Box): Solid[];
}

class SolidTree extends RBush<{ readonly solid: Solid; readonly order: number }> {
  override toBBox({ solid }: { readonly solid: Solid }): Box {
    return solid.bounds;
  }
  override compareMinX(a: { readonly solid: Solid }, b: { readonly solid: Solid }): number {
    return a.solid.bounds.minX - b.solid.bounds.minX;
  }
  override compareMinY(a: { readonly solid: Solid }, b: { readonly solid: Solid }): number {
    return a.solid.bounds.minY - b.solid.bounds.minY;
  }
}

/** Derives the solids of a level. */
export const solidsOf = rememberedPart((obstructions: Level['obstructions'], level: string): SolidIndex => {
  const solids = Object.values(obstructions).map((obstruction) => solidOf(obstruction, level));
  const tree = new SolidTree();
  tree.load(solids.map((solid, order) => ({ solid, order })));
  return {
    solids,
    near: (box) =>
      tree
        .search(box)
        .sort((a, b) => a.order - b.order)
        .map(({ solid }) => solid),
  };
});

/** Whether a ring and the floor inside an outline share a place; touching counts, lying wholly in a hole does not. */
export function touchesFloor(ring: Outline, outline: Outline, holes: readonly Outline[]): boolean {
  const box = boundsOf(ring);
  if (!boxesTouch(box, boundsOf(outline))) return false;
  const onFloor = (p: { readonly x: number; readonly y: number }): boolean =>
    isInsideOrOn(p, outline) && holes.every((hole) => !isInsideOrOn(p, hole));
  if (ring.some(onFloor)) return true;
  const ringSides = sidesOf(ring);
  for (const bound of [outline, ...holes]) {
    if (bound.some((corner) => isInsideOrOn(corner, ring))) return true;
    for (const side of sidesOf(bound)) {
      if (!boxesTouch(box, boundsOf([side.a, side.b]))) continue;
      if (ringSides.some((ringSide) => meetingOf(ringSide, side))) return true;
    }
  }
  return false;
}
