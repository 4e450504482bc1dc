import { type Box, type Outline, area_m2, boundsOf } from '../geometry/outline.ts';
import type { OverFace } from '../geometry/over-face.ts';
import { momentsOf } from '../geometry/moments.ts';
import { SLIVER_m2 } from '../geometry/tolerance.ts';
import type { Enclosure } from '../model/plan.ts';
import type { Space } from './derived.ts';
import { differenceOf, fillOf, intersectionOf } from './polygon-sums.ts';
import { rememberedPart } from './remember.ts';

/** What bounds the pipe of a room from above. */
export interface SolidCeiling {
  readonly enclosure: Enclosure;
  /** Outline and holes of the room. */
  readonly rings: readonly Outline[];
  readonly bounds: Box;
  readonly faces: readonly OverFace[];
  /** The height of a part of it is not known, so that nothing can be said of pipe there. */
  readonly isUnknown: boolean;
}

const facesOf = rememberedPart((enclosure: Enclosure, outline: Outline, holes: readonly Outline[]): SolidCeiling => {
  const { height_m, slope, ceilingVoid } = enclosure;
  const lift_m = ceilingVoid?.depth_m ?? 0;
  const zones = Object.values(enclosure.ceilingZones);
  const rings = [outline, ...holes];
  const room = { enclosure, rings, bounds: boundsOf(outline) };
  // Outlines are kept as they are drawn wherever a sum, which runs on a grid, would give them back alike.
  const floor = differenceOf(fillOf([outline]), [fillOf(holes)]);
  const level = (of: readonly Outline[], z: number): OverFace => ({ rings: of, at: { x: 0, y: 0, z: z + lift_m }, east: 0, north: 0 });
  const faces = zones.map((zone): OverFace => {
    const inRoom = intersectionOf(fillOf([zone.outline]), floor);
    return level(Math.abs(momentsOf(inRoom).area_m2 - area_m2(zone.outline)) <= SLIVER_m2 ? [zone.outline] : inRoom, zone.height_m);
  });
  const isBelowSlab = (zone: (typeof zones)[number]): boolean =>
    height_m !== null && (slope ? zone.outline.every((p) => zone.height_m <= slab(p)) : zone.height_m <= height_m);
  const slab = (p: { readonly x: number; readonly y: number }): number =>
    (height_m ?? 0) + (slope ? slope.rise * ((p.x - slope.at.x) * Math.cos(slope.direction_rad) + (p.y - slope.at.y) * Math.sin(slope.direction_rad)) : 0);
  const higher = zones.filter((zone) => !isBelowSlab(zone));
  const open = higher.length === 0 ? rings : differenceOf(floor, higher.map((zone) => fillOf([zone.outline])));
  if (height_m === null) return { ...room, faces, isUnknown: momentsOf(open).area_m2 > SLIVER_m2 };
  if (!slope) return { ...room, faces: [...faces, level(open, height_m)], isUnknown: false };
  const sloped: OverFace = {
    rings: open,
    at: { ...slope.at, z: height_m + lift_m },
    east: slope.rise * Math.cos(slope.direction_rad),
    north: slope.rise * Math.sin(slope.direction_rad),
  };
  return { ...room, faces: [...faces, sloped], isUnknown: false };
});

/**
 * The ceiling that no pipe passes: each zone and the slab or slope beside them, as far up as the ceiling void where there
 * is one, since pipe may pass the suspended ceiling below a void, and the raised floor over one.
 */
export const solidCeilingOf = ({ enclosure, outline, holes }: Space): SolidCeiling => facesOf(enclosure, outline, holes);
