import { normalAngle_rad } from './angle.ts';

/** A turn to the left or to the right, or a straight. */
export type Turn = 'L' | 'S' | 'R';

/** A curve in a plane: three pieces, each with its length in radii. */
export interface PlanarWord {
  readonly word: readonly [Turn, Turn, Turn];
  readonly lengths: readonly [number, number, number];
}

const word = (a: Turn, b: Turn, c: Turn, t: number, p: number, q: number): PlanarWord => ({ word: [a, b, c], lengths: [normalAngle_rad(t), p, normalAngle_rad(q)] });
/** A turn of all but nothing of a full one is none: noise of the angles. */
const settled = ({ word: [a, b, c], lengths: [t, p, q] }: PlanarWord): PlanarWord => {
  const still = (turn: number): number => (turn > 2 * Math.PI - 1e-9 ? 0 : turn);
  return { word: [a, b, c], lengths: [still(t), b === 'S' ? p : still(p), still(q)] };
};

/**
 * The curves of arcs of one radius and a straight, or of three arcs, that lead in a plane from the origin along the
 * first axis to a place and direction; the shortest curve of bounded curvature is among them.
 *
 * @param x      along the first direction, in radii
 * @param y      to its left, in radii
 * @param way_rad  direction at the end against the first direction [rad], counter-clockwise
 * @returns every curve that exists, unordered; two of them always do
 * Source: L. E. Dubins, On Curves of Minimal Length with a Constraint on Average Curvature, Amer. J. Math. 79 (1957);
 * closed forms after Shkel and Lumelsky, Classification of the Dubins set, Robotics and Autonomous Systems 34 (2001), from memory.
 */
export function planarWords(x: number, y: number, way_rad: number): PlanarWord[] {
  const d = Math.hypot(x, y);
  const bearing = d > 0 ? Math.atan2(y, x) : 0;
  const a = normalAngle_rad(-bearing);
  const b = normalAngle_rad(way_rad - bearing);
  const [sa, sb, ca, cb, cab] = [Math.sin(a), Math.sin(b), Math.cos(a), Math.cos(b), Math.cos(a - b)];
  const found: PlanarWord[] = [];
  const root = (square: number): number | undefined => (square >= 0 ? Math.sqrt(square) : square > -1e-12 ? 0 : undefined);

  const lsl = root(2 + d * d - 2 * cab + 2 * d * (sa - sb));
  if (lsl !== undefined) {
    const heading = lsl > 1e-9 ? Math.atan2(cb - ca, d + sa - sb) : a;
    found.push(word('L', 'S', 'L', heading - a, lsl, b - heading));
  }
  const rsr = root(2 + d * d - 2 * cab + 2 * d * (sb - sa));
  if (rsr !== undefined) {
    const heading = rsr > 1e-9 ? Math.atan2(ca - cb, d - sa + sb) : a;
    found.push(word('R', 'S', 'R', a - heading, rsr, heading - b));
  }
  const lsr = root(-2 + d * d + 2 * cab + 2 * d * (sa + sb));
  if (lsr !== undefined) {
    const heading = Math.atan2(-ca - cb, d + sa + sb) - Math.atan2(-2, lsr);
    found.push(word('L', 'S', 'R', heading - a, lsr, heading - b));
  }
  const rsl = root(-2 + d * d + 2 * cab - 2 * d * (sa + sb));
  if (rsl !== undefined) {
    const heading = Math.atan2(ca + cb, d - sa - sb) - Math.atan2(2, rsl);
    found.push(word('R', 'S', 'L', a - heading, rsl, b - heading));
  }
  const rlr = (6 - d * d + 2 * cab + 2 * d * (sa - sb)) / 8;
  if (Math.abs(rlr) <= 1) {
    const p = normalAngle_rad(2 * Math.PI - Math.acos(rlr));
    const t = a - Math.atan2(ca - cb, d - sa + sb) + p / 2;
    found.push(word('R', 'L', 'R', t, p, a - b - t + p));
  }
  const lrl = (6 - d * d + 2 * cab + 2 * d * (sb - sa)) / 8;
  if (Math.abs(lrl) <= 1) {
    const p = normalAngle_rad(2 * Math.PI - Math.acos(lrl));
    const t = -a + Math.atan2(cb - ca, d + sa - sb) + p / 2;
    found.push(word('L', 'R', 'L', t, p, b - a - t + p));
  }
  return found.map(settled);
}
