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

/** Whether anything stands there: a work place is only where people are, and nothing stops at it. */
export const isThere = ({ obstruction }: Solid): boolean => obstruction.kind !== 'work-place';

/** Solids of one level, with an index of their places. */
export interface SolidIndex {
  readonly solids: readonly Solid[];
  /** Solids whose box touches a box, in the order of the plan. */
  near(box: Box): Solid[];
}

interface SolidBox extends Box {
  readonly solid: Solid;
  readonly order: number;
}

const indexOf = (solids: readonly Solid[]): SolidIndex => {
  const tree = new RBush<SolidBox>();
  tree.load(solids.map((solid, order) => ({ ...solid.bounds, solid, order })));
  const inOrder = (found: readonly SolidBox[]): Solid[] => found.toSorted((a, b) => a.order - b.order).map(({ solid }) => solid);
  return { solids, near: (box) => inOrder(tree.search(box)) };
};

/** Derives the solids of a level. */
export const solidsOf = rememberedPart(
  (obstructions: Level['obstructions'], level: string): SolidIndex =>
    indexOf(Object.values(obstructions).map((obstruction) => solidOf(obstruction, level))),
);

/** Whether a ring and the floor inside an outline share a place; touching counts, lying wholly in a hole does not. */
export function touchesFloor(ring: Outline, outline: Outline, holes: readonly Outline[]): boolean {
  if (ring.some((p) => isInsideOrOn(p, outline) && !holes.some((hole) => isInsideOrOn(p, hole)))) return true;
  const bounds = [outline, ...holes];
  if (bounds.some((bound) => bound.some((corner) => isInsideOrOn(corner, ring)))) return true;
  const box = boundsOf(ring);
  const ringSides = sidesOf(ring);
  return bounds
    .flatMap(sidesOf)
    .some((side) => boxesTouch(box, boundsOf([side.a, side.b])) && ringSides.some((ringSide) => meetingOf(ringSide, side)));
}
