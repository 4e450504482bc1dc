import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DirectedEnd } from '#shared/geometry/bent-path';
import { layHose, outOfPlane_rad } from '#shared/geometry/lay-hose';
import type { PlanPoint3 } from '#shared/geometry/point';
import { shortestBentPath } from '#shared/geometry/shortest-bent-path';

const end = (x: number, y: number, z: number, a: number, b: number, c: number): DirectedEnd => {
  const length = Math.hypot(a, b, c);
  return { at: { x, y, z }, way: { x: a / length, y: b / length, z: c / length } };
};
const OUTLET = end(0, 0, 0, 1, 0, 0);
const BACK = end(0.25, 0, 0.3048, -1, 0, 0);
const UP = end(0.15, 0, 0.2048, 0, 0, 1);
const gap_m = (p: PlanPoint3, q: PlanPoint3): number => Math.hypot(p.x - q.x, p.y - q.y, p.z - q.z);
const drawn_m = (curve: readonly PlanPoint3[]): number => curve.reduce((sum, p, i) => sum + gap_m(p, curve[i - 1] ?? p), 0);
/** Radius of the circle through three places. */
function radiusThrough(a: PlanPoint3, b: PlanPoint3, c: PlanPoint3): number {
  const [u, v, w] = [gap_m(a, b), gap_m(b, c), gap_m(c, a)];
  const half = (u + v + w) / 2;
  const area = Math.sqrt(Math.max(0, half * (half - u) * (half - v) * (half - w)));
  return area < 1e-12 ? Infinity : (u * v * w) / (4 * area);
}

describe('a hose laid between two directed ends', () => {
  test.each([
    ['in a half turn', BACK, 0.75],
    ['hardly longer than it must be', BACK, 0.722],
    ['turned up a quarter, with a straight at either end', end(0.25, 0, 0.3, 0, 0, 1), 0.46],
    ['between ends in line, bowed out', end(1, 0, 0, 1, 0, 0), 1.05],
  ])('%s: drawn as long as it is, and bent no sharper than it may', (_, to, length_m) => {
    const { curve, radius_m, slack_m } = layHose(OUTLET, to, length_m, 0.15);
    expect(slack_m).toBe(0);
    expect(radius_m).toBeGreaterThanOrEqual(0.15);
    // Chords of arcs are up to 0.1 % short, and the length is met within half a millimetre.
    expect(drawn_m(curve)).toBeGreaterThan(length_m * 0.999 - 5e-4);
    expect(drawn_m(curve)).toBeLessThanOrEqual(length_m + 1e-6);
    const bends = curve.slice(2).map((c, i) => radiusThrough(curve[i] ?? c, curve[i + 1] ?? c, c));
    expect(Math.min(...bends)).toBeGreaterThan(0.15 * 0.99);
  });

  test('wider bends take up the slack of a half turn', () => {
    expect(layHose(OUTLET, BACK, 0.75, 0.15).radius_m).toBeGreaterThan(0.158);
    expect(layHose(OUTLET, BACK, 0.73, 0.15).radius_m).toBeLessThan(0.158);
  });

  test('too short for its bends it is drawn as sharply as it would have to bend; too short for its way, straight', () => {
    const sharp = layHose(OUTLET, BACK, 0.6, 0.15);
    expect(sharp.radius_m).toBeGreaterThan(0.1);
    expect(sharp.radius_m).toBeLessThan(0.15);
    expect(layHose(OUTLET, BACK, 0.3, 0.15)).toEqual({ curve: [OUTLET.at, BACK.at], radius_m: 0, slack_m: 0 });
  });

  test('slack for which there is no gentle way is told', () => {
    // The end is just a bend radius away, so that every way begins with the same quarter turn: 0.29 m and hardly more.
    expect(layHose(OUTLET, UP, 0.4, 0.15).slack_m).toBeGreaterThan(0.1);
    expect(layHose(OUTLET, end(0.2, 0, 0, 1, 0, 0), 0.22, 0.15).slack_m).toBeGreaterThan(0.01);
    expect(layHose(OUTLET, end(0.2, 0, 0, 1, 0, 0), 0.2, 0.15)).toMatchObject({ slack_m: 0, radius_m: Infinity });
  });

  test('it fits if and only if the shortest curve is no longer than it', () => {
    const component = fc.double({ min: -1, max: 1, noNaN: true });
    fc.assert(
      fc.property(component, component, fc.double({ min: 0, max: 6.28, noNaN: true }), fc.double({ min: 0.2, max: 1.5, noNaN: true }), (x, z, way, length_m) => {
        fc.pre(Math.hypot(x, z) > 0.05);
        const goal = end(x, 0, z, Math.cos(way), 0, Math.sin(way));
        const needed_m = shortestBentPath(OUTLET, goal, 0.15)?.length_m ?? Infinity;
        fc.pre(Math.abs(needed_m - length_m) > 1e-3);
        const { radius_m, curve } = layHose(OUTLET, goal, length_m, 0.15);
        expect(radius_m >= 0.15 - 1e-9).toBe(needed_m < length_m);
        expect(drawn_m(curve)).toBeLessThanOrEqual(Math.max(length_m, Math.hypot(x, z)) + 1e-6);
      }),
      { numRuns: 40 },
    );
  });
});

describe('how far two ends are from one plane', () => {
  test.each([
    ['a half turn', BACK, 0],
    ['a quarter turn', UP, 0],
    ['ends in line', end(1, 0, 0, 1, 0, 0), 0],
    ['an end turned aside by 10°, seen from the plane of the other', end(0.2, 0, 0.2, 0, Math.sin(Math.PI / 18), Math.cos(Math.PI / 18)), turnedAside(Math.PI / 18)],
    ['an outlet that points at the end, whatever way that has', end(1, 0, 0, 0, 1, 0), 0],
    ['an outlet that all but points at the end', end(1, 0.001, 0, 0, 0, 1), 0.001],
    ['ends in one place', end(0, 0, 0, 0, 1, 0), 0],
  ])('%s', (_, to, twist_rad) => {
    expect(outOfPlane_rad(OUTLET, to)).toBeCloseTo(twist_rad, 6);
  });
});

/** From the plane of chord (1, 0, 1) and outlet (1, 0, 0), which is y = 0, and from that of chord and end: the lesser. */
function turnedAside(aside: number): number {
  const [y, z] = [Math.sin(aside), Math.cos(aside)];
  // Normal (−y, −z, y) of chord and end; the outlet leans out of that plane by its first component.
  return Math.min(aside, Math.asin(y / Math.hypot(y, z, y)));
}
