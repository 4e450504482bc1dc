/** A flat transform: x' = a·x + c·y + e, y' = b·x + d·y + f. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** Leaves every place where it is. */
export const IDENTITY: Matrix = [1, 0, 0, 1, 0, 0];

/** The transform that does `inner` first and `outer` after it. */
export const multiply = (outer: Matrix, inner: Matrix): Matrix => [
  outer[0] * inner[0] + outer[2] * inner[1],
  outer[1] * inner[0] + outer[3] * inner[1],
  outer[0] * inner[2] + outer[2] * inner[3],
  outer[1] * inner[2] + outer[3] * inner[3],
  outer[0] * inner[4] + outer[2] * inner[5] + outer[4],
  outer[1] * inner[4] + outer[3] * inner[5] + outer[5],
];

/** Shifts by x and y. */
export const shiftBy = (x: number, y: number): Matrix => [1, 0, 0, 1, x, y];

/** Stretches about the origin. */
export const scaleBy = (x: number, y: number): Matrix => [x, 0, 0, y, 0, 0];

/** Turns about the origin, counter-clockwise where y points up. */
export const turnBy = (angle_rad: number): Matrix => {
  const cos = Math.cos(angle_rad);
  const sin = Math.sin(angle_rad);
  return [cos, sin, -sin, cos, 0, 0];
};

/** Ratio of areas; negative where the transform mirrors. */
export const determinant = (m: Matrix): number => m[0] * m[3] - m[1] * m[2];

/** Coordinates (x and y in turn) carried through a transform into a new array. */
export function transformed(m: Matrix, places: ArrayLike<number>): Float64Array {
  const moved = new Float64Array(places.length);
  for (let i = 0; i + 1 < places.length; i += 2) {
    const x = places[i] ?? 0;
    const y = places[i + 1] ?? 0;
    moved[i] = m[0] * x + m[2] * y + m[4];
    moved[i + 1] = m[1] * x + m[3] * y + m[5];
  }
  return moved;
}
