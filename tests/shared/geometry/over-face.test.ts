import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { distanceToOutline_m, isInside, rectangle } from '#shared/geometry/outline';
import { type OverFace, belowPlane_m, faceHeight_m, passesOver, segmentToOverFace_m } from '#shared/geometry/over-face';
import { type PlanPoint3, planPoint, polar } from '#shared/geometry/point';
import { type Segment3, along3 } from '#shared/geometry/segment3';
import { place3 as p } from '../../support/plan-builder.ts';

const flat: OverFace = { rings: [rectangle(4, 4), rectangle(1, 1, planPoint(1, 1))], at: p(0, 0, 3), east: 0, north: 0 };
/** Rises 3 in 4 toward the east from 1 m: square to it a drop counts four fifths. */
const sloped: OverFace = { rings: [rectangle(8, 4)], at: p(0, 0, 1), east: 0.75, north: 0 };

describe('distance to the solid above a face', () => {
  test.each([
    ['below a level face', flat, p(2.5, 2.5, 2), p(3.5, 3.5, 2.5), 0.5],
    ['touching it from below', flat, p(2.5, 2.5, 2), p(3.5, 3.5, 3), 0],
    ['along it', flat, p(2.5, 2.5, 3), p(3.5, 3.5, 3), 0],
    ['through it', flat, p(3, 3, 1), p(3, 3, 9), 0],
    ['wholly above it', flat, p(2.5, 2.5, 5), p(3.5, 3.5, 5), 0],
    ['upright in its hole', flat, p(1.5, 1.75, 0), p(1.5, 1.75, 9), 0.25],
    ['beside it, above its height', flat, p(5, 1, 8), p(6, 2, 8), 1],
    ['beside it, below its height', flat, p(7, 1, -1), p(8, 2, -1), 5],
    ['passing over it from outside to outside', flat, p(-1, 3, 4), p(5, 3, 4), 0],
    ['passing below it from outside to outside', flat, p(-1, 3, 2.9), p(5, 3, 2.9), 0.1],
    ['below a slope, square to it', sloped, p(2, 2, 1.5), p(2, 2, 1), 0.8],
    ['below a slope, along it', sloped, p(2, 2, 1.5), p(6, 2, 4.5), 0.8],
    ['into a slope', sloped, p(2, 2, 1.5), p(2, 2, 2.6), 0],
    ['level into a slope from its high side', sloped, p(9, 2, 2), p(1, 2, 2), 0],
    ['of no length', sloped, p(2, 2, 1.5), p(2, 2, 1.5), 0.8],
  ])('%s', (_, face, a, b, distance_m) => {
    expect(segmentToOverFace_m({ a, b }, face)).toBeCloseTo(distance_m, 12);
    expect(segmentToOverFace_m({ a: b, b: a }, { ...face, rings: face.rings.map((ring) => ring.toReversed()) })).toBeCloseTo(distance_m, 12);
  });
});

test('what passes over a part of the plan', () => {
  expect(passesOver({ a: planPoint(-1, 3), b: planPoint(5, 3) }, flat.rings)).toBe(true);
  expect(passesOver({ a: planPoint(3, 3), b: planPoint(3, 3) }, flat.rings)).toBe(true);
  expect(passesOver({ a: planPoint(1.2, 1.2), b: planPoint(1.8, 1.4) }, flat.rings)).toBe(false);
  expect(passesOver({ a: planPoint(-1, -1), b: planPoint(5, -1) }, flat.rings)).toBe(false);
});

const mm = (min: number, max: number) => fc.integer({ min: min * 1000, max: max * 1000 }).map((n) => n / 1000);
const place = fc.record({ x: mm(-4, 4), y: mm(-4, 4), z: mm(-4, 4) });
const anyFace = fc
  .record({ arms: fc.array(mm(1, 3), { minLength: 3, maxLength: 7 }), hasHole: fc.boolean(), z: mm(-2, 3), east: mm(-1, 1), north: mm(-1, 1), isFlat: fc.boolean() })
  .map(({ arms, hasHole, z, east, north, isFlat }): OverFace => {
    const ring = arms.map((arm, i) => polar(planPoint(0, 0), (2 * Math.PI * i) / arms.length, arm));
    // A smaller ring around the same middle lies wholly inside.
    const hole = ring.map((corner) => planPoint(corner.x * 0.4, corner.y * 0.4));
    return { rings: hasHole ? [ring, hole] : [ring], at: p(0.3, -0.2, z), east: isFlat ? 0 : east, north: isFlat ? 0 : north };
  });

const isOver = (at: { x: number; y: number }, face: OverFace): boolean => face.rings.filter((ring) => isInside(at, ring)).length % 2 === 1;

/**
 * Distance of one place to the solid by searching the plan for the nearest place of it: at each, the solid is straight
 * beside, or higher by what the face is above. First along every side, where the distance has one dip, then over the part.
 */
function searched_m(at: PlanPoint3, face: OverFace): number {
  const near = (x: number, y: number): number => Math.hypot(x - at.x, y - at.y, Math.max(0, faceHeight_m(face, { x, y }) - at.z));
  const far = (x: number, y: number): number => (isOver({ x, y }, face) ? near(x, y) : Infinity);
  let best = { x: at.x, y: at.y, d: far(at.x, at.y) };
  let onSides_m = Infinity;
  for (const ring of face.rings) {
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length] ?? a;
      const along = (share: number): number => near(a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share);
      let [from, to] = [0, 1];
      for (let k = 0; k < 80; k += 1) {
        const [one, other] = [from + (to - from) / 3, to - (to - from) / 3];
        if (along(one) < along(other)) to = other;
        else from = one;
      }
      onSides_m = Math.min(onSides_m, along((from + to) / 2));
    }
  }
  for (let i = -20; i <= 20; i += 1) for (let j = -20; j <= 20; j += 1) {
    const [x, y] = [i * 0.16, j * 0.16];
    const d = far(x, y);
    if (d < best.d) best = { x, y, d };
  }
  for (let step = 0.16; step > 1e-8; step /= 1.5) {
    const from = best;
    for (let k = 0; k < 12; k += 1) {
      const x = from.x + step * Math.cos((k * Math.PI) / 6);
      const y = from.y + step * Math.sin((k * Math.PI) / 6);
      const d = far(x, y);
      if (d < best.d) best = { x, y, d };
    }
  }
  return Math.min(best.d, onSides_m);
}

describe('against a search that knows nothing of faces and edges', () => {
  test('of a place', () => {
    fc.assert(
      fc.property(place, anyFace, (at, face) => {
        const found_m = segmentToOverFace_m({ a: at, b: at }, face);
        const tried_m = searched_m(at, face);
        expect(found_m).toBeLessThanOrEqual(tried_m + 1e-9);
        expect(found_m).toBeGreaterThanOrEqual(tried_m - 1e-6);
      }),
      { numRuns: 2000 },
    );
  });

  test('of a segment: the least of its places, found to a millionth', () => {
    fc.assert(
      fc.property(place, place, anyFace, (a, b, face) => {
        const axis: Segment3 = { a, b };
        const far = (share: number): number => {
          const at = along3(axis, share);
          return segmentToOverFace_m({ a: at, b: at }, face);
        };
        let best = 0;
        for (let i = 0; i <= 100; i += 1) if (far(i / 100) < far(best)) best = i / 100;
        for (let step = 1 / 100; step > 1e-9; step /= 2) {
          for (const share of [best - step, best + step]) if (share >= 0 && share <= 1 && far(share) < far(best)) best = share;
        }
        const found_m = segmentToOverFace_m(axis, face);
        expect(found_m).toBeLessThanOrEqual(far(best) + 1e-9);
        expect(found_m).toBeGreaterThanOrEqual(far(best) - 1e-6);
        expect(found_m).toBeGreaterThanOrEqual(belowPlane_m(axis, face) - 1e-9);
      }),
      { numRuns: 2000 },
    );
  });

  test('a level face over a simple part is what its sides and its height say', () => {
    fc.assert(
      fc.property(place, anyFace, (at, { rings, at: on }) => {
        const face: OverFace = { rings, at: on, east: 0, north: 0 };
        const aside_m = isOver(at, face) ? 0 : Math.min(...rings.map((ring) => distanceToOutline_m(at, ring)));
        expect(segmentToOverFace_m({ a: at, b: at }, face)).toBeCloseTo(Math.hypot(aside_m, Math.max(0, on.z - at.z)), 9);
      }),
    );
  });
});
