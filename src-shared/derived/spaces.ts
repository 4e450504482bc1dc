import { boxesTouch } from '../geometry/outline.ts';
import type { PlanPoint } from '../geometry/point.ts';
import type { Enclosure, Level } from '../model/plan.ts';
import type { Solid, Space } from './derived.ts';
import { type EnclosureShape, shapeOf } from './enclosure-shape.ts';
import { remembered, rememberedPart, sameList } from './remember.ts';
import { type SolidIndex, touchesFloor } from './solids.ts';

/** A space before the level around it and the solids in it are known. */
type SpaceShape = Omit<Space, 'level' | 'solids'>;

/** The room of an enclosure, then its under-floor and its ceiling void where it has them. */
const spaceShapesOf = rememberedPart((enclosure: Enclosure, level: string): readonly SpaceShape[] => {
  const { floor: _, ceiling, ...shape }: EnclosureShape = shapeOf(enclosure, level);
  const common = { ...shape, enclosureRef: { kind: 'enclosure', level, id: enclosure.id } as const, enclosure };
  const spaces: SpaceShape[] = [
    {
      ...common,
      key: `${enclosure.id}/room`,
      kind: 'room',
      name: enclosure.name,
      floor_m: 0,
      ceilingAt_m: ceiling.at_m,
      tallest_m: ceiling.tallest_m,
      grossVolume_m3: ceiling.volume_m3,
      isProtected: true,
    },
  ];
  if (enclosure.underFloor) {
    const { depth_m, isProtected } = enclosure.underFloor;
    spaces.push({
      ...common,
      key: `${enclosure.id}/under-floor`,
      kind: 'under-floor',
      name: `${enclosure.name}, under floor`,
      floor_m: -depth_m,
      ceilingAt_m: () => 0,
      tallest_m: 0,
      grossVolume_m3: shape.area_m2 * depth_m,
      isProtected,
    });
  }
  if (enclosure.ceilingVoid) {
    const { depth_m, isProtected } = enclosure.ceilingVoid;
    const raised = (height_m: number | undefined): number | undefined => (height_m === undefined ? undefined : height_m + depth_m);
    spaces.push({
      ...common,
      key: `${enclosure.id}/ceiling-void`,
      kind: 'ceiling-void',
      name: `${enclosure.name}, ceiling void`,
      floor_m: ceiling.lowest_m ?? 0,
      ceilingAt_m: (at) => raised(ceiling.at_m(at)),
      tallest_m: raised(ceiling.tallest_m),
      grossVolume_m3: shape.area_m2 * depth_m,
      isProtected,
    });
  }
  return spaces;
});

/** Whether a solid stands on, in or over the floor of a space. */
const isOverFloor = remembered((solid: Solid, shape: SpaceShape): boolean => touchesFloor(solid.footprint, shape.outline, shape.holes));

const lastSolids = new WeakMap<SpaceShape, readonly Solid[]>();
const solidsIn = remembered((shape: SpaceShape, index: SolidIndex): readonly Solid[] => {
  const found = index
    .near(shape.bounds)
    .filter((solid) => solid.top_m > shape.floor_m && solid.bottom_m < (shape.tallest_m ?? Infinity) && boxesTouch(solid.bounds, shape.bounds))
    .filter((solid) => isOverFloor(solid, shape));
  const solids = sameList(lastSolids.get(shape), found);
  lastSolids.set(shape, solids);
  return solids;
});

const spaceOf = remembered((shape: SpaceShape, level: Level, solids: readonly Solid[]): Space => ({ ...shape, level, solids }));

/**
 * Derives the spaces of a level: each enclosure's room, then its voids.
 * An under-floor void reaches from its depth below the finished floor up to it; a ceiling void from the room's ceiling
 * up by its depth, its `floor_m` being the lowest ceiling of the room, or 0 while that is unknown.
 */
export const spacesOf = rememberedPart(
  (enclosures: Level['enclosures'], level: Level, index: SolidIndex): readonly Space[] =>
    Object.values(enclosures)
      .flatMap((enclosure) => spaceShapesOf(enclosure, level.id))
      .map((shape) => spaceOf(shape, level, solidsIn(shape, index))),
);

/**
 * Lower face of a space at a place [m above the finished floor]; undefined while unknown.
 * That of a ceiling void follows the room's ceiling.
 */
export function floorAt_m(space: Space, at: PlanPoint): number | undefined {
  if (space.kind !== 'ceiling-void' || !space.enclosure.ceilingVoid) return space.floor_m;
  const top_m = space.ceilingAt_m(at);
  return top_m === undefined ? undefined : top_m - space.enclosure.ceilingVoid.depth_m;
}
