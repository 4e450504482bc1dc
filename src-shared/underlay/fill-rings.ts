import { ringArea, ringOf } from './line-work.ts';

/** How rings inside rings count: every second one is a hole, or those that wind the other way. */
export type FillRule = 'evenodd' | 'nonzero';

/** Rings and corners that are compared with each other: beyond that, working out the holes takes too long. */
const MOST_RINGS = 6000;
const MOST_CORNERS_COMPARED = 30_000_000;

interface Loop {
  readonly ring: Float64Array;
  readonly area: number;
  readonly box: readonly [number, number, number, number];
}

const loopOf = (ring: Float64Array): Loop => {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < ring.length; i += 2) {
    minX = Math.min(minX, ring[i] ?? 0);
    maxX = Math.max(maxX, ring[i] ?? 0);
    minY = Math.min(minY, ring[i + 1] ?? 0);
    maxY = Math.max(maxY, ring[i + 1] ?? 0);
  }
  return { ring, area: ringArea(ring), box: [minX, minY, maxX, maxY] };
};

/** Counts corners that were looked at. */
interface Effort {
  corners: number;
}

function holds(outer: Loop, x: number, y: number, effort: Effort): boolean {
  const { ring, box } = outer;
  if (x < box[0] || x > box[2] || y < box[1] || y > box[3]) return false;
  effort.corners += ring.length / 2;
  let inside = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const yi = ring[i + 1] ?? 0;
    const yj = ring[j + 1] ?? 0;
    const xi = ring[i] ?? 0;
    const xj = ring[j] ?? 0;
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) inside = !inside;
  }
  return inside;
}

/** Whether `inner` lies in `outer`: most of a few of its corners do, so that a shared corner decides nothing. */
function isWithin(inner: Loop, outer: Loop, effort: Effort): boolean {
  if (Math.abs(outer.area) <= Math.abs(inner.area)) return false;
  const corners = inner.ring.length / 2;
  const step = Math.max(1, Math.floor(corners / 5));
  let votes = 0;
  let asked = 0;
  for (let i = 0; i < corners; i += step) {
    const next = (i + 1) % corners;
    asked += 1;
    const x = ((inner.ring[2 * i] ?? 0) + (inner.ring[2 * next] ?? 0)) / 2;
    const y = ((inner.ring[2 * i + 1] ?? 0) + (inner.ring[2 * next + 1] ?? 0)) / 2;
    if (holds(outer, x, y, effort)) votes += 1;
  }
  return votes * 2 > asked;
}

const reversed = (ring: Float64Array): Float64Array => {
  const turned = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    turned[i] = ring[ring.length - 2 - i] ?? 0;
    turned[i + 1] = ring[ring.length - 1 - i] ?? 0;
  }
  return turned;
};

/** One ring that runs around the outer ring and then around each hole, there and back along the same seam. */
function joined(outer: Loop, holes: readonly Loop[]): Float64Array {
  if (holes.length === 0) return outer.ring;
  const run: number[] = Array.from(outer.ring);
  const x = outer.ring[0] ?? 0;
  const y = outer.ring[1] ?? 0;
  run.push(x, y);
  for (const hole of holes) {
    for (const value of hole.area > 0 === outer.area > 0 ? reversed(hole.ring) : hole.ring) run.push(value);
    // Back to where the hole began, then home.
    run.push(run[run.length - hole.ring.length] ?? 0, run[run.length - hole.ring.length + 1] ?? 0, x, y);
  }
  return Float64Array.from(run.slice(0, -2));
}

/**
 * Rings that may each be filled for itself, whatever rule the painter follows, from the loops of one filled path.
 * @param loops x and y in turn, closed, last corner repeated or not
 * @returns nothing when there are too many loops to find the holes: a room must not be painted over
 */
export function fillRings(loops: readonly ArrayLike<number>[], rule: FillRule): Float64Array[] {
  const sound = loops.map(ringOf).filter((ring) => ring !== undefined).map(loopOf);
  if (sound.length <= 1) return sound.map(({ ring }) => ring);
  if (sound.length > MOST_RINGS) return [];
  sound.sort((a, b) => Math.abs(b.area) - Math.abs(a.area));
  const outers: { loop: Loop; holes: Loop[] }[] = [];
  const effort: Effort = { corners: 0 };
  const around: Loop[][] = [];
  for (const [i, loop] of sound.entries()) {
    around.push(sound.slice(0, i).filter((other) => isWithin(loop, other, effort)));
    if (effort.corners > MOST_CORNERS_COMPARED) return [];
  }
  sound.forEach((loop, i) => {
    const parents = around[i] ?? [];
    const windingOutside = parents.reduce((sum, { area }) => sum + Math.sign(area), 0);
    const windingInside = windingOutside + Math.sign(loop.area);
    const filledOutside = rule === 'evenodd' ? parents.length % 2 === 1 : windingOutside !== 0;
    const filledInside = rule === 'evenodd' ? parents.length % 2 === 0 : windingInside !== 0;
    if (filledInside && !filledOutside) outers.push({ loop, holes: [] });
    if (!filledInside && filledOutside) {
      // The smallest filled ring around it was added last.
      const owners = outers.filter((outer) => parents.includes(outer.loop));
      owners[owners.length - 1]?.holes.push(loop);
    }
  });
  return outers.map(({ loop, holes }) => joined(loop, holes));
}
