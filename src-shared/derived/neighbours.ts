import { momentsOf } from '../geometry/moments.ts';
import { type Box, area_m2, boundsOf, boxesTouch } from '../geometry/outline.ts';
import { SLIVER_m2 } from '../geometry/tolerance.ts';
import { type Adjoining, type Enclosure, type Level, type Plan, type Ref, type RefOf, refKey } from '../model/plan.ts';
import { type EnclosureShape, shapeOf } from './enclosure-shape.ts';
import { type Region, fillOf, intersectionOf } from './polygon-sums.ts';
import { rememberedPart, sameList } from './remember.ts';
import { type Beyond, type WallStretch, sharedWallsOf } from './shared-walls.ts';

/** A drawn space that touches an enclosure. */
export interface Neighbour {
  readonly beyond: Beyond;
  readonly side: 'beside' | 'below' | 'above';
  /** Walls that they share; none where only floor or ceiling lies between them, or where one is drawn over the other. */
  readonly stretches: readonly WallStretch[];
}

/** Slab and beams between two levels are no thicker than this [m]. */
const THICKEST_SLAB_m = 1;
/** Levels whose heights overlap by no more than this were measured loosely [m]. */
const LOOSE_m = 0.3;
/** Footprints that overlap by less touch at their edges only [m²]. */
const EDGE_m2 = 0.01;

interface Standing {
  readonly ref: RefOf<'enclosure'>;
  readonly enclosure: Enclosure;
  readonly shape: EnclosureShape;
  /** Under its raised floor, and over the void above its ceiling, above the finished floor of its level [m]; no top while its height is unknown. */
  readonly bottom_m: number;
  readonly top_m: number | undefined;
}

const standingOf = rememberedPart((enclosure: Enclosure, level: string): Standing => {
  const shape = shapeOf(enclosure, level);
  const { tallest_m } = shape.ceiling;
  return {
    ref: { kind: 'enclosure', level, id: enclosure.id },
    enclosure,
    shape,
    bottom_m: -(enclosure.underFloor?.depth_m ?? 0),
    top_m: tallest_m === undefined ? undefined : tallest_m + (enclosure.ceilingVoid?.depth_m ?? 0),
  };
});

/** The box that a region is; undefined for any other. */
function boxOf(region: Region): Box | undefined {
  const [ring] = region;
  if (region.length !== 1 || ring?.length !== 4) return undefined;
  const box = boundsOf(ring);
  return Math.abs(area_m2(ring) - (box.maxX - box.minX) * (box.maxY - box.minY)) < SLIVER_m2 ? box : undefined;
}

/** Two boxes that overlap by more than this do so whatever the grid of the polygon sums makes of them [m²]. */
const PLAIN_m2 = 2 * EDGE_m2 + 2 * SLIVER_m2;

function overlap(one: Region, other: Region): boolean {
  const [mine, theirs] = [boxOf(one), boxOf(other)];
  if (mine && theirs) {
    const [across_m, up_m] = [Math.min(mine.maxX, theirs.maxX) - Math.max(mine.minX, theirs.minX), Math.min(mine.maxY, theirs.maxY) - Math.max(mine.minY, theirs.minY)];
    if (across_m > 0 && up_m > 0 && across_m * up_m > PLAIN_m2) return true;
  }
  return momentsOf(intersectionOf(one, other)).area_m2 > EDGE_m2;
}

const boundsOfAdjoining = rememberedPart((adjoining: Adjoining): Box => boundsOf(adjoining.outline));

/** On which side of an enclosure a space lies whose footprint overlaps its own; undefined where a storey or more is between them. */
function sideOf({ bottom_m, top_m }: Standing, floor_m: number): Neighbour['side'] | undefined {
  if (floor_m < bottom_m) return 'below';
  if (top_m === undefined || floor_m < top_m - LOOSE_m) return 'beside';
  return floor_m - top_m <= THICKEST_SLAB_m ? 'above' : undefined;
}

/** What touches an enclosure on its own level. */
function onLevel(standing: Standing, stretches: readonly WallStretch[], adjoining: readonly Adjoining[]): Neighbour[] {
  const bySpace = new Map<string, WallStretch[]>();
  for (const each of stretches) {
    if (each.beyond.kind === 'adjoining' && standing.top_m !== undefined && each.beyond.adjoining.floor_m >= standing.top_m) continue;
    const key = refKey(each.beyond.ref);
    bySpace.set(key, [...(bySpace.get(key) ?? []), each]);
  }
  const beside = [...bySpace.values()].flatMap((shared): Neighbour[] => (shared[0] ? [{ beyond: shared[0].beyond, side: 'beside', stretches: shared }] : []));
  const over = adjoining.flatMap((space): Neighbour[] => {
    if (!boxesTouch(boundsOfAdjoining(space), standing.shape.bounds)) return [];
    const ref = { kind: 'adjoining', level: standing.ref.level, id: space.id } as const;
    const side = sideOf(standing, space.floor_m);
    if (!side || (side === 'beside' && bySpace.has(refKey(ref)))) return [];
    if (!overlap(fillOf([space.outline]), standing.shape.floor)) return [];
    return [{ beyond: { kind: 'adjoining', ref, adjoining: space }, side, stretches: [] }];
  });
  return [...beside, ...over];
}

type Touching = ReadonlyMap<string, readonly Neighbour[]>;

/** What touches the enclosures of a level on it, by enclosure id. */
const besideOf = rememberedPart((enclosures: Level['enclosures'], adjoining: Level['adjoining'], level: string): Touching => {
  const shared = sharedWallsOf(enclosures, adjoining, level);
  const spaces = Object.values(adjoining);
  return new Map(Object.values(enclosures).map((enclosure) => [enclosure.id, onLevel(standingOf(enclosure, level), shared.get(enclosure.id) ?? [], spaces)]));
});

/** Pairs of enclosures that lie over each other on two levels, with a slab between them, by the key of each. */
function stackedOf(levels: readonly Level[]): Touching {
  const found = new Map<string, Neighbour[]>();
  const add = (ref: Ref, { enclosure, ref: other }: Standing, side: 'below' | 'above'): void => {
    found.set(refKey(ref), [...(found.get(refKey(ref)) ?? []), { beyond: { kind: 'enclosure', ref: other, enclosure }, side, stretches: [] }]);
  };
  const inOrder = [...levels].sort((a, b) => a.floorElevation_m - b.floorElevation_m).map((level) => ({ level, rooms: Object.values(level.enclosures).map((enclosure) => standingOf(enclosure, level.id)) }));
  for (const [i, lower] of inOrder.entries()) {
    for (const upper of inOrder.slice(i + 1)) {
      const rise_m = upper.level.floorElevation_m - lower.level.floorElevation_m;
      if (rise_m <= 0) continue;
      for (const below of lower.rooms) {
        for (const above of upper.rooms) {
          const gap_m = below.top_m === undefined ? 0 : rise_m + above.bottom_m - below.top_m;
          if (gap_m < -LOOSE_m || gap_m > THICKEST_SLAB_m || !boxesTouch(below.shape.bounds, above.shape.bounds) || !overlap(below.shape.floor, above.shape.floor)) continue;
          add(below.ref, above, 'above');
          add(above.ref, below, 'below');
        }
      }
    }
  }
  return found;
}

let last: { readonly parts: readonly unknown[]; readonly touching: Touching } | undefined;

/**
 * Every drawn space that touches an enclosure through wall, floor or ceiling, by the enclosure's `refKey`: enclosures and
 * adjoining spaces of its level, and enclosures of the levels below and above. Answers the very same map while no
 * enclosure and no adjoining space changes.
 */
export function neighboursByEnclosure(levels: Plan['levels']): Touching {
  const each = Object.values(levels);
  const parts = sameList(last?.parts, each.flatMap(({ id, enclosures, adjoining, floorElevation_m }) => [id, enclosures, adjoining, floorElevation_m]));
  const isFrozen = each.every(({ enclosures, adjoining }) => Object.isFrozen(enclosures) && Object.isFrozen(adjoining));
  if (isFrozen && last && parts === last.parts) return last.touching;
  const stacked = stackedOf(each);
  const touching: Touching = new Map(
    each.flatMap((level) =>
      [...besideOf(level.enclosures, level.adjoining, level.id)].map(([id, beside]): [string, readonly Neighbour[]] => {
        const key = refKey({ kind: 'enclosure', level: level.id, id });
        const over = stacked.get(key);
        return [key, over ? [...beside, ...over] : beside];
      }),
    ),
  );
  if (isFrozen) last = { parts, touching };
  return touching;
}

/** Name of a neighbour as the user knows it. */
export const neighbourName = ({ beyond }: Pick<Neighbour, 'beyond'>): string => (beyond.kind === 'enclosure' ? beyond.enclosure.name : beyond.adjoining.name || 'an adjoining space');
