import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type BentPath, type DirectedEnd, onBentPath, placesAlong } from '#shared/geometry/bent-path';
import { curvesInSpace } from '#shared/geometry/csc-in-space';
import { shortestBentPath } from '#shared/geometry/shortest-bent-path';

type V = readonly [number, number, number];
const end = (at: V, way: V): DirectedEnd => {
  const length = Math.hypot(...way);
  return { at: { x: at[0], y: at[1], z: at[2] }, way: { x: way[0] / length, y: way[1] / length, z: way[2] / length } };
};
const lengthOf = (from: DirectedEnd, to: DirectedEnd, radius_m: number): number => shortestBentPath(from, to, radius_m)?.length_m ?? Number.NaN;
const ORIGIN = end([0, 0, 0], [1, 0, 0]);

const anyWay = fc.tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0, max: 6.28, noNaN: true })).map(([z, a]): V => [Math.sqrt(1 - z * z) * Math.cos(a), Math.sqrt(1 - z * z) * Math.sin(a), z]);
const anyAt = (most: number) => fc.tuple(...([0, 1, 2].map(() => fc.double({ min: -most, max: most, noNaN: true })) as [fc.Arbitrary<number>, fc.Arbitrary<number>, fc.Arbitrary<number>])).map((at): V => at);
const anyEnd = (most: number) => fc.tuple(anyAt(most), anyWay).map(([at, way]) => end(at, way));

/**
 * The shortest of arc, straight and arc by search alone: every direction of the straight on a fine net of the sphere,
 * either way round; how far it misses the far end is brought to nothing by halving a net about each near miss.
 */
function searched_m(from: DirectedEnd, to: DirectedEnd, radius: number): number {
  const dot = (a: V, b: V): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const sum = (a: V, k: number, b: V): V => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]];
  const of = ({ x, y, z }: { x: number; y: number; z: number }): V => [x, y, z];
  const [d0, d1, gap] = [of(from.way), of(to.way), sum(of(to.at), -1, of(from.at))];
  const arc = (d: V, t: V, isLong: boolean): { off: V; turn: number } => {
    const turn = Math.acos(Math.max(-1, Math.min(1, dot(d, t))));
    const tangent = radius * Math.tan(turn / 2) * (isLong ? -1 : 1);
    return { off: sum([tangent * d[0], tangent * d[1], tangent * d[2]], tangent, t), turn: isLong ? 2 * Math.PI - turn : turn };
  };
  let best = Infinity;
  for (const [long0, long1] of [[false, false], [true, false], [false, true], [true, true]] as const) {
    const rate = (z: number, a: number): { miss: number; length: number } => {
      const flat = Math.sqrt(Math.max(0, 1 - z * z));
      const t: V = [flat * Math.cos(a), flat * Math.sin(a), z];
      const [first, last] = [arc(d0, t, long0), arc(d1, t, long1)];
      const rest = sum(sum(gap, -1, first.off), -1, last.off);
      const straight = dot(rest, t);
      return { miss: Math.hypot(...sum(rest, -straight, t)) + Math.max(0, -straight), length: radius * (first.turn + last.turn) + straight };
    };
    const [rows, columns] = [60, 120];
    const net: { z: number; a: number; miss: number; length: number }[][] = Array.from({ length: rows }, (_, i) => Array.from({ length: columns }, (__, k) => {
      const [z, a] = [-1 + (2 * (i + 0.5)) / rows, (2 * Math.PI * k) / columns];
      return { z, a, ...rate(z, a) };
    }));
    for (const [i, row] of net.entries()) {
      for (const [k, here] of row.entries()) {
        const around = [net[i - 1]?.[k], net[i + 1]?.[k], row[(k + 1) % columns], row[(k + columns - 1) % columns]];
        if (here.length > best + 1 || around.some((each) => each && each.miss < here.miss)) continue;
        let at = here;
        for (let step = 2 / rows; step > 1e-12; step /= 2) {
          for (let isBetter = true, left = 40; isBetter && left > 0; left -= 1) {
            isBetter = false;
            for (const [dz, da] of [[1, 0], [-1, 0], [0, 1], [0, -1], [1, 1], [-1, -1], [1, -1], [-1, 1]] as const) {
              const [z, a] = [at.z + dz * step, at.a + da * step];
              if (Math.abs(z) > 1) continue;
              const next = rate(z, a);
              if (next.miss < at.miss) {
                at = { z, a, ...next };
                isBetter = true;
              }
            }
          }
        }
        if (at.miss < 1e-8) best = Math.min(best, at.length);
      }
    }
  }
  return best;
}

/** A path is what it says: where it should end, and nowhere bent sharper. */
function expectSound(path: BentPath | undefined, to: DirectedEnd, radius_m: number): void {
  if (!path) throw new Error('No curve was found.');
  const last = onBentPath(path, path.length_m);
  if (!last) throw new Error('The curve has no end.');
  expect(Math.hypot(last.at.x - to.at.x, last.at.y - to.at.y, last.at.z - to.at.z)).toBeLessThan(1e-6);
  expect(Math.hypot(last.way.x - to.way.x, last.way.y - to.way.y, last.way.z - to.way.z)).toBeLessThan(1e-6);
  const step = path.length_m / 400;
  for (let s = 0; s + step <= path.length_m; s += step) {
    const [a, b] = [onBentPath(path, s), onBentPath(path, s + step)];
    if (!a || !b) throw new Error('The curve has a gap.');
    const turn = 2 * Math.asin(Math.min(1, Math.hypot(a.way.x - b.way.x, a.way.y - b.way.y, a.way.z - b.way.z) / 2));
    expect(turn).toBeLessThanOrEqual(step / radius_m + 1e-6);
    expect(Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y, a.at.z - b.at.z)).toBeLessThanOrEqual(step + 1e-9);
  }
}

describe('shortest curve between two directed ends', () => {
  test.each([
    ['straight on', end([2, 0, 0], [1, 0, 0]), 0.3, 2],
    ['a quarter turn up', end([0.5, 0, 0.5], [0, 0, 1]), 0.5, Math.PI / 4],
    ['a half turn back in an upright plane', end([0, 0, 0.6], [-1, 0, 0]), 0.3, 0.3 * Math.PI],
    ['straight on and then a half turn', end([0.25, 0, 0.3048], [-1, 0, 0]), 0.1524, 0.25 + Math.PI * 0.1524],
    // First a quarter in the level, then a straight, then a quarter up: closed form.
    ['two quarters in two planes', end([0.2, 0.2 + 0.7 + 0.2, 0.2], [0, 0, 1]), 0.2, 0.7 + 0.2 * Math.PI],
  ])('%s', (_, to, radius_m, length_m) => {
    expect(lengthOf(ORIGIN, to, radius_m)).toBeCloseTo(length_m, 9);
  });

  test('in space it is the one that a fine search finds, within a millionth', () => {
    const ends = fc.sample(fc.tuple(anyEnd(0.4), anyEnd(0.4)), { numRuns: 8, seed: 11 });
    const off_m = ends.map(([from, to]) => lengthOf(from, to, 0.15) - searched_m(from, to, 0.15));
    // The search now and then misses the shortest; what is shorter than it finds is sound all the same, as the next test asks.
    expect(Math.max(...off_m)).toBeLessThan(1e-6);
    expect(off_m.filter((off) => Math.abs(off) < 1e-6).length).toBeGreaterThanOrEqual(6);
  });

  test('it ends as it should and bends nowhere sharper than it may', () => {
    fc.assert(
      fc.property(anyEnd(1), anyEnd(1), fc.double({ min: 0.05, max: 0.5, noNaN: true }), (from, to, radius_m) => {
        fc.pre(Math.hypot(from.at.x - to.at.x, from.at.y - to.at.y, from.at.z - to.at.z) > 1e-3);
        expectSound(shortestBentPath(from, to, radius_m), to, radius_m);
      }),
      { numRuns: 40 },
    );
  });

  test('walked the other way it is as long', () => {
    fc.assert(
      fc.property(anyEnd(1), anyEnd(1), (from, to) => {
        const back = ({ at, way }: DirectedEnd): DirectedEnd => ({ at, way: { x: -way.x, y: -way.y, z: -way.z } });
        expect(lengthOf(back(to), back(from), 0.2)).toBeCloseTo(lengthOf(from, to, 0.2), 6);
      }),
      { numRuns: 40 },
    );
  });

  test('in a plane no way past a third place is shorter, and a sharper bend is never longer', () => {
    const planar = fc.tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0, max: 6.28, noNaN: true })).map(([x, z, a]) => end([x, 0.3, z], [Math.cos(a), 0, Math.sin(a)]));
    fc.assert(
      fc.property(planar, planar, planar, (from, past, to) => {
        expect(lengthOf(from, to, 0.2)).toBeLessThanOrEqual(lengthOf(from, past, 0.2) + lengthOf(past, to, 0.2) + 1e-6);
        expect(lengthOf(from, to, 0.15)).toBeLessThanOrEqual(lengthOf(from, to, 0.2) + 1e-6);
      }),
    );
  });

  test('ends that leave a plane by a hair are as long as those in it', () => {
    const to = end([0.25, 0, 0.3048], [-1, 0, 0]);
    const aside = end([0.25, 1e-5, 0.3048], [-1, 1e-6, 0]);
    expect(lengthOf(ORIGIN, aside, 0.15)).toBeCloseTo(lengthOf(ORIGIN, to, 0.15), 4);
    expect(Math.min(...curvesInSpace(ORIGIN, to, 0.15).map(({ length_m }) => length_m))).toBeCloseTo(lengthOf(ORIGIN, to, 0.15), 6);
  });

  test('its places follow it closely', () => {
    const path = shortestBentPath(ORIGIN, end([0, 0, 0.6], [-1, 0, 0]), 0.3);
    const places = path ? placesAlong(path) : [];
    for (const { x, z } of places) expect(Math.hypot(x, z - 0.3)).toBeCloseTo(0.3, 9);
    expect(places.length).toBeGreaterThanOrEqual(25);
  });
});
