import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type JetCone, alongCone_m, findConeHit } from '#shared/derived/jet-cone';
import { isInside, rectangle } from '#shared/geometry/outline';
import { type PlanPoint, planPoint } from '#shared/geometry/point';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
/** Blows east from 2.5 m up. */
const east = (reach_m: number, half_rad = rad(12)): JetCone => ({ azimuth_rad: 0, from: { x: 0, y: 0, z: 2.5 }, half_rad, reach_m });
const box = (x: number, y: number, width_m: number, depth_m: number, bottom_m: number, top_m: number) => ({ footprint: rectangle(width_m, depth_m, planPoint(x, y)), bottom_m, top_m });

describe('where the cone of a jet comes to a solid', () => {
  // By hand: a cone of 12° drops 0.5 m after 0.5 / tan 12° = 2.3523 m.
  const drop_m = 0.5 / Math.tan(rad(12));
  test.each([
    ['a top half a metre below, reached', box(0, -1, 4, 2, 0, 2), 3, drop_m],
    ['on the end of the jet', box(0, -1, 4, 2, 0, 2), drop_m, drop_m],
    ['the jet is spent a hair before', box(0, -1, 4, 2, 0, 2), drop_m - 1e-6, undefined],
    ['a top that ends a hair before it is reached', box(0, -1, drop_m - 1e-6, 2, 0, 2), 3, undefined],
    ['behind the nozzle', box(-4, -1, 3, 2, 0, 3), 3, undefined],
    ['on the axis', box(1.5, -1, 1, 2, 0, 3), 3, 1.5],
    ['beside the axis, its face 0.3 m off', box(0.5, 0.3, 4, 2, 0, 3), 3, 0.3 / Math.tan(rad(12))],
    ['overhead by half a metre', box(0, -1, 4, 2, 3, 3.2), 3, drop_m],
  ])('%s', (_, solid, reach_m, along_m) => {
    const hit = findConeHit(east(reach_m), solid);
    if (along_m === undefined) expect(hit).toBeUndefined();
    else expect(hit?.along_m).toBeCloseTo(along_m, 9);
  });

  test('beside and below at once: the way of both counts', () => {
    const hit = findConeHit(east(3), box(0, 0.3, 4, 2, 0, 2.1));
    expect(hit?.along_m).toBeCloseTo(Math.hypot(0.3, 0.4) / Math.tan(rad(12)), 9);
    expect(hit?.at).toMatchObject({ y: expect.closeTo(0.3, 9), z: 2.1 });
  });

  test('whatever it is asked, a fine search of the solid finds no nearer place, and finds one where it answers', () => {
    const spot = fc.record({ x: fc.double({ min: -3, max: 4, noNaN: true }), y: fc.double({ min: -2, max: 2, noNaN: true }) });
    fc.assert(
      fc.property(spot, spot, spot, fc.double({ min: 1, max: 3, noNaN: true }), fc.double({ min: 5, max: 25, noNaN: true }), fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }), (a, b, c, top_m, half_deg, azimuth_rad) => {
        const footprint: PlanPoint[] = [a, b, c];
        const cone: JetCone = { azimuth_rad, from: { x: 0, y: 0, z: 2.5 }, half_rad: rad(half_deg), reach_m: 3 };
        const hit = findConeHit(cone, { footprint, bottom_m: 0, top_m });
        const z = Math.min(2.5, top_m);
        let nearest = Infinity;
        for (let i = 0; i < 60; i += 1) {
          for (let j = 0; j < 60; j += 1) {
            const p = { x: -3 + (7 * (i + 0.5)) / 60, y: -2 + (4 * (j + 0.5)) / 60, z };
            if (isInside(p, footprint)) nearest = Math.min(nearest, alongCone_m(cone, p) ?? Infinity);
          }
        }
        if (nearest < Infinity) expect(hit?.along_m).toBeLessThanOrEqual(nearest + 1e-9);
        if (hit) {
          expect(alongCone_m(cone, hit.at)).toBeCloseTo(hit.along_m, 6);
          expect(hit.along_m).toBeLessThanOrEqual(3 + 1e-9);
        }
      }),
      { numRuns: 60 },
    );
  });
});
