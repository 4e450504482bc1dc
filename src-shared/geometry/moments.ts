import type { Outline } from './outline.ts';

/** Integrals of 1, x and y over the inside of a ring, negative for a ring that winds clockwise. */
export interface Moments {
  readonly area_m2: number;
  readonly x_m3: number;
  readonly y_m3: number;
}

/** Area and first moments of the rings together (Green's theorem); a clockwise ring counts as a hole. */
export function momentsOf(rings: readonly Outline[]): Moments {
  let area_m2 = 0;
  let x_m3 = 0;
  let y_m3 = 0;
  for (const ring of rings) {
    for (let i = 0; i < ring.length; i += 1) {
      const a = ring[i];
      const b = ring[i + 1] ?? ring[0];
      if (!a || !b) continue;
      const cross = a.x * b.y - b.x * a.y;
      area_m2 += cross / 2;
      x_m3 += (cross * (a.x + b.x)) / 6;
      y_m3 += (cross * (a.y + b.y)) / 6;
    }
  }
  return { area_m2, x_m3, y_m3 };
}
