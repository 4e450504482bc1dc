import RBush from 'rbush';
import { isInsideRegion } from '../geometry/inside.ts';
import type { Box } from '../geometry/outline.ts';
import type { PlanPoint, PlanPoint3 } from '../geometry/point.ts';
import { distance3_m, distance_m } from '../geometry/point.ts';
import { along3 } from '../geometry/segment3.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import { type Corner, type Enclosure, type Level, type RefOf, ringOf } from '../model/plan.ts';
import type { DerivedNetwork, DerivedPipe } from './derived.ts';
import { shapeOf } from './enclosure-shape.ts';
import { remembered, rememberedPart } from './remember.ts';

/** A wall face that a pipe goes through. */
export interface CrossedFace {
  readonly wall: RefOf<'wall'>;
  readonly enclosure: Enclosure;
  /** Along the wall from its corner [m]. */
  readonly along_m: number;
  readonly length_m: number;
}

/** A place where a pipe goes through a wall, with both faces of it where rooms lie on both sides; or through a slab. */
export interface Crossing {
  readonly pipe: DerivedPipe;
  readonly at: PlanPoint3;
  readonly through: { readonly kind: 'wall'; readonly faces: readonly CrossedFace[] } | { readonly kind: 'slab'; readonly enclosure: Enclosure; readonly side: 'floor' | 'ceiling' };
}

/** Two faces nearer than this along the pipe belong to one wall [m]: walls are thinner. */
const THICKEST_WALL_m = 0.6;

interface Hit {
  readonly share: number;
  readonly at: PlanPoint3;
  readonly face: CrossedFace;
}

/** Distance of a place from the line through a wall, left of it positive [m]. */
function sideOf(a: PlanPoint, b: PlanPoint, p: PlanPoint): number {
  const length_m = distance_m(a, b);
  return length_m === 0 ? 0 : ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length_m;
}

/** Lower face and top of an enclosure with its voids; what is not known hides no crossing. */
interface Reach {
  readonly floor_m: number;
  readonly topAt_m: (at: PlanPoint) => number;
}
function reachOf(enclosure: Enclosure, level: string): Reach {
  const { at_m } = shapeOf(enclosure, level).ceiling;
  return {
    floor_m: -(enclosure.underFloor?.depth_m ?? 0),
    topAt_m: (at) => (at_m(at) ?? Number.POSITIVE_INFINITY) + (enclosure.ceilingVoid?.depth_m ?? 0),
  };
}

/** An enclosure by where it lies on the plan. */
interface Around extends Box {
  readonly enclosure: Enclosure;
  readonly reach: Reach;
  readonly order: number;
}

/** Enclosures farther than this from a pipe on the plan are not looked at [m]: more than any slack. */
const BESIDE_m = 0.01;

const enclosuresOf = rememberedPart((enclosures: Level['enclosures'], level: string): RBush<Around> => {
  const index = new RBush<Around>();
  index.load(Object.values(enclosures).map((enclosure, order) => ({ ...shapeOf(enclosure, level).bounds, enclosure, reach: reachOf(enclosure, level), order })));
  return index;
});

/** The enclosures that a pipe may go through, in the order of the plan. */
function enclosuresAround({ from, to }: DerivedPipe, index: RBush<Around>): Around[] {
  return index
    .search({ minX: Math.min(from.x, to.x) - BESIDE_m, minY: Math.min(from.y, to.y) - BESIDE_m, maxX: Math.max(from.x, to.x) + BESIDE_m, maxY: Math.max(from.y, to.y) + BESIDE_m })
    .sort((a, b) => a.order - b.order);
}

/** Where pipe ends on a wall and goes on behind it: ends of the pipes that follow. */
function onwardOf({ pipes }: DerivedNetwork, pipe: DerivedPipe): PlanPoint3[] {
  return pipes.filter((next) => next !== pipe && distance3_m(next.from, pipe.to) <= SAME_PLACE_m).map(({ to }) => to);
}

function hitsOf(network: DerivedNetwork, pipe: DerivedPipe, enclosure: Enclosure, reach: Reach): Hit[] {
  const level = network.level.id;
  const hits: Hit[] = [];
  let onward: PlanPoint3[] | undefined;
  const goesOn = (corner: Corner, next: Corner, from_m: number): boolean => {
    onward ??= onwardOf(network, pipe);
    return onward.some((end) => sideOf(corner, next, end) * from_m < 0 && Math.abs(sideOf(corner, next, end)) > SAME_PLACE_m);
  };
  const take = (ring: readonly Corner[]): void => {
    for (const [i, corner] of ring.entries()) {
      const next = ring[(i + 1) % ring.length];
      if (!next) continue;
      const [from_m, to_m] = [sideOf(corner, next, pipe.from), sideOf(corner, next, pipe.to)];
      if (Math.abs(from_m) <= SAME_PLACE_m) continue;
      const isOn = Math.abs(to_m) <= SAME_PLACE_m;
      const goesBehind = isOn ? goesOn(corner, next, from_m) : from_m * to_m < 0;
      if (!goesBehind) continue;
      const share = isOn ? 1 : from_m / (from_m - to_m);
      const at = along3({ a: pipe.from, b: pipe.to }, share);
      const length_m = distance_m(corner, next);
      const along_m = ((at.x - corner.x) * (next.x - corner.x) + (at.y - corner.y) * (next.y - corner.y)) / length_m;
      if (along_m < -SAME_PLACE_m || along_m > length_m + SAME_PLACE_m) continue;
      if (at.z < reach.floor_m - SAME_PLACE_m || at.z > reach.topAt_m(at) + SAME_PLACE_m) continue;
      // Through a corner a pipe goes once.
      if (hits.some((hit) => Math.abs(hit.share - share) * pipe.length_m <= SAME_PLACE_m)) continue;
      hits.push({ share, at, face: { wall: { kind: 'wall', level, enclosure: enclosure.id, id: corner.id }, enclosure, along_m, length_m } });
    }
  };
  take(enclosure.outline);
  for (const hole of enclosure.holes) take(hole);
  return hits;
}

/** Hits that lie one behind the other in different enclosures and belong to one wall. */
function wallsOf(pipe: DerivedPipe, hits: readonly Hit[]): Crossing[] {
  const crossings: { at: PlanPoint3; share: number; faces: CrossedFace[] }[] = [];
  for (const { share, at, face } of [...hits].sort((a, b) => a.share - b.share)) {
    const last = crossings.at(-1);
    const isSameWall = last && (share - last.share) * pipe.length_m <= THICKEST_WALL_m && last.faces.every(({ wall }) => wall.enclosure !== face.wall.enclosure);
    if (isSameWall) last.faces.push(face);
    else crossings.push({ at, share, faces: [face] });
  }
  return crossings.map(({ at, faces }) => ({ pipe, at, through: { kind: 'wall', faces } }));
}

function slabsOf(pipe: DerivedPipe, enclosure: Enclosure, reach: Reach): Crossing[] {
  const through = (side: 'floor' | 'ceiling', over: (p: PlanPoint3) => number): Crossing[] => {
    const [from_m, to_m] = [over(pipe.from), over(pipe.to)];
    const isThrough = Number.isFinite(from_m) && Number.isFinite(to_m) && Math.min(from_m, to_m) < -SAME_PLACE_m && Math.max(from_m, to_m) > SAME_PLACE_m;
    if (!isThrough) return [];
    const at = along3({ a: pipe.from, b: pipe.to }, from_m / (from_m - to_m));
    return isInsideRegion(at, ringOf(enclosure.outline), enclosure.holes.map(ringOf)) ? [{ pipe, at, through: { kind: 'slab', enclosure, side } }] : [];
  };
  return [...through('floor', ({ z }) => z - reach.floor_m), ...through('ceiling', (p) => p.z - reach.topAt_m(p))];
}

/**
 * Where the pipes of a network go through a wall of an enclosure of their level, at their height between its floor and
 * ceiling or the voids beyond, and through the slab below or above it. A raised floor and a ceiling that hangs below a
 * void are no crossing. Pipe along a wall face, or one that ends at it, is none either.
 */
export const crossingsOf = remembered((network: DerivedNetwork): readonly Crossing[] => {
  const index = enclosuresOf(network.level.enclosures, network.level.id);
  return network.pipes.flatMap((pipe) => {
    const around = enclosuresAround(pipe, index);
    return [...wallsOf(pipe, around.flatMap(({ enclosure, reach }) => hitsOf(network, pipe, enclosure, reach))), ...around.flatMap(({ enclosure, reach }) => slabsOf(pipe, enclosure, reach))];
  });
});
