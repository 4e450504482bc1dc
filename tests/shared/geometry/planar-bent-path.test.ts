import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Turn, planarWords } from '#shared/geometry/planar-bent-path';

const FULL = 2 * Math.PI;
interface Pose {
  readonly x: number;
  readonly y: number;
  readonly way: number;
}
/** Walks one piece of a curve of radius 1. */
function walked({ x, y, way }: Pose, turn: Turn, length: number): Pose {
  if (turn === 'S') return { x: x + Math.cos(way) * length, y: y + Math.sin(way) * length, way };
  const side = turn === 'L' ? 1 : -1;
  const next = way + side * length;
  return { x: x + side * (Math.sin(next) - Math.sin(way)), y: y - side * (Math.cos(next) - Math.cos(way)), way: next };
}
const shortest = (x: number, y: number, way: number) => planarWords(x, y, way).map((each) => ({ ...each, length: each.lengths.reduce((sum, piece) => sum + piece, 0) })).sort((a, b) => a.length - b.length)[0];
const anyPose = fc.record({ x: fc.double({ min: -6, max: 6, noNaN: true }), y: fc.double({ min: -6, max: 6, noNaN: true }), way: fc.double({ min: 0, max: 6.28, noNaN: true }) });

/** Left about (0, 1), right about (x, y − 1), joined by their inner tangent: by plain circle geometry. */
function sLength(x: number, y: number): number {
  const d = Math.hypot(x, y - 2);
  const turn = Math.atan2(y - 2, x) + Math.asin(2 / d);
  return Math.sqrt(d * d - 4) + 2 * turn;
}

describe('planar curves of bounded curvature', () => {
  test.each([
    ['straight on', 3, 0, 0, 3],
    ['a quarter turn', 1, 1, Math.PI / 2, Math.PI / 2],
    ['a half turn', 0, 2, Math.PI, Math.PI],
    ['a half turn that is wider than two radii', 0, 5, Math.PI, Math.PI + 3],
    ['an S to a place aside', 6, 2, 0, sLength(6, 2)],
    ['an S to a place little aside', 5, 0.3, 0, sLength(5, 0.3)],
  ])('%s', (_, x, y, way, length) => {
    expect(shortest(x, y, way)?.length).toBeCloseTo(length, 12);
  });

  test('turned about on the spot takes seven sixths of a circle (Dubins 1957)', () => {
    const best = shortest(0, 0, Math.PI);
    expect(best?.length).toBeCloseTo((7 * Math.PI) / 3, 12);
    expect(best?.lengths).toEqual([Math.PI / 3, (5 * Math.PI) / 3, Math.PI / 3].map((turn) => expect.closeTo(turn, 12)));
  });

  test('every curve leads where it should', () => {
    fc.assert(
      fc.property(anyPose, ({ x, y, way }) => {
        for (const { word, lengths } of planarWords(x, y, way)) {
          const end = word.reduce((pose, turn, i) => walked(pose, turn, lengths[i] ?? 0), { x: 0, y: 0, way: 0 } as Pose);
          expect(Math.hypot(end.x - x, end.y - y)).toBeLessThan(1e-7);
          expect(Math.abs(Math.sin((end.way - way) / 2))).toBeLessThan(1e-7);
          expect(Math.min(...lengths)).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  test('a fine search through all curves of three pieces finds none shorter', () => {
    const poses = fc.sample(anyPose, { numRuns: 4, seed: 5 });
    for (const goal of poses) {
      const length = shortest(goal.x, goal.y, goal.way)?.length ?? 0;
      let found = Infinity;
      for (const word of [['L', 'S', 'L'], ['R', 'S', 'R'], ['L', 'S', 'R'], ['R', 'S', 'L'], ['L', 'R', 'L'], ['R', 'L', 'R']] as const) {
        const [first, middle, last] = word;
        // The last arc is on the circle of the goal: what comes before must end on it, square to its radius.
        const side = last === 'L' ? 1 : -1;
        const centre = { x: goal.x - side * Math.sin(goal.way), y: goal.y + side * Math.cos(goal.way) };
        const most = middle === 'S' ? 14 : FULL;
        for (let t = 0; t < FULL; t += FULL / 1000) {
          const start = walked({ x: 0, y: 0, way: 0 }, first, t);
          for (let p = 0; p < most; p += most / 1400) {
            if (t + p >= found) break;
            const pose = walked(start, middle, p);
            const off = Math.hypot(pose.x - side * Math.sin(pose.way) - centre.x, pose.y + side * Math.cos(pose.way) - centre.y);
            if (off > 0.008) continue;
            const q = (((side * (goal.way - pose.way)) % FULL) + FULL) % FULL;
            found = Math.min(found, t + p + (q > FULL - 0.05 ? 0 : q));
          }
        }
      }
      expect(found).toBeGreaterThan(length - 0.15);
      expect(found).toBeLessThan(length + 0.1);
    }
  });
});
