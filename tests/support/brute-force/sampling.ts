/** Plain geometry by sampling, for the brute-force checker alone: nothing here is shared with the program. Lengths [m], angles [rad]. */

export interface Spot {
  readonly x: number;
  readonly y: number;
}
export interface Spot3 extends Spot {
  readonly z: number;
}
/** An upright body: footprint from bottom to top. */
export interface Body {
  readonly ring: readonly Spot[];
  /** Places on its border, 2 cm apart at most. */
  readonly border: readonly Spot[];
  readonly bottom: number;
  readonly top: number;
}

export const far = (a: Spot, b: Spot): number => Math.sqrt((a.x - b.x) * (a.x - b.x) + (a.y - b.y) * (a.y - b.y));
export const far3 = (a: Spot3, b: Spot3): number => Math.sqrt(far(a, b) ** 2 + (a.z - b.z) ** 2);

/** Crossing count of a ray to the east. */
export function isIn(p: Spot, ring: readonly Spot[]): boolean {
  let crossings = 0;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length] as Spot;
    if (a.y <= p.y !== b.y <= p.y && p.x < a.x + ((p.y - a.y) / (b.y - a.y)) * (b.x - a.x)) crossings += 1;
  });
  return crossings % 2 === 1;
}

/** Places on a straight line, no farther apart than `step`, ends included. */
export function along(a: Spot3, b: Spot3, step: number): Spot3[] {
  const count = Math.max(1, Math.ceil(far3(a, b) / step));
  return Array.from({ length: count + 1 }, (_, i) => ({ x: a.x + ((b.x - a.x) * i) / count, y: a.y + ((b.y - a.y) * i) / count, z: a.z + ((b.z - a.z) * i) / count }));
}

/** Places on the border of a ring. */
export const border = (ring: readonly Spot[], step: number): Spot[] =>
  ring.flatMap((a, i) => along({ ...a, z: 0 }, { ...(ring[(i + 1) % ring.length] as Spot), z: 0 }, step));

/** Least distance from a place to a list of places. */
export const nearest = (p: Spot, places: readonly Spot[]): number => places.reduce((least, place) => Math.min(least, far(p, place)), Infinity);

/** Distance from a place in space to an upright body by way of its height range and its border. */
export function toBody(p: Spot3, body: Body): number {
  const over = Math.max(0, p.z - body.top, body.bottom - p.z);
  const beside = isIn(p, body.ring) ? 0 : nearest(p, body.border);
  return Math.sqrt(over * over + beside * beside);
}

/** Whether a place in space lies in a body. */
export const isInBody = (p: Spot3, body: Body): boolean => p.z > body.bottom && p.z < body.top && isIn(p, body.ring);

/** Smallest turn between two directions, 0 to π. */
export function turnBetween(a: number, b: number): number {
  const turn = Math.abs(a - b) % (2 * Math.PI);
  return turn > Math.PI ? 2 * Math.PI - turn : turn;
}
