import { Clipper64, ClipType, FillRule, type Path64, type Paths64 } from 'clipper2-ts';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { differenceOf, intersectionOf } from '#shared/derived/polygon-sums';
import { boxedOf, plainRing, untouched } from '#shared/derived/untouched-rings';
import { convexHull } from '#shared/geometry/convex-hull';
import { type Outline, rectangle } from '#shared/geometry/outline';
import { type PlanPoint, planPoint, polar } from '#shared/geometry/point';

const whole = (min: number, max: number) => fc.integer({ min, max });
const toGrid = (ring: Outline): Path64 => ring.map(({ x, y }) => ({ x: Math.round(x * 1e6), y: Math.round(y * 1e6) }));

/** What the polygon library makes of it. */
function byLibrary(kind: ClipType, subject: Paths64, clip: Paths64): Paths64 {
  const sums = new Clipper64();
  const solution: Paths64 = [];
  sums.addSubject(subject);
  if (clip.length > 0) sums.addClip(clip);
  sums.execute(kind, FillRule.NonZero, solution);
  return solution;
}
const bare = (paths: Paths64 | undefined) => paths?.map((path) => path.map(({ x, y }) => [x, y]));

const turnedRectangle = fc
  .record({ x: whole(0, 9000), y: whole(0, 9000), width: whole(1, 3000), depth: whole(1, 3000), turn: fc.oneof(fc.constantFrom(0, 90, 180, 270), whole(0, 359)), first: whole(0, 3) })
  .map(({ x, y, width, depth, turn, first }) => {
    const angle_rad = (turn * Math.PI) / 180;
    const corner = planPoint(x / 1000, y / 1000);
    const along = polar(corner, angle_rad, width / 1000);
    const ring = [corner, along, polar(along, angle_rad + Math.PI / 2, depth / 1000), polar(corner, angle_rad + Math.PI / 2, depth / 1000)];
    return [...ring.slice(first), ...ring.slice(0, first)];
  });
const hull = fc.array(fc.record({ x: whole(0, 12_000), y: whole(0, 12_000) }), { minLength: 3, maxLength: 14 }).map((places) => convexHull(places.map(({ x, y }) => planPoint(x / 1000, y / 1000))));
const convex: fc.Arbitrary<PlanPoint[]> = fc.oneof(turnedRectangle, hull);
const room = fc.constantFrom<readonly Outline[]>(
  [rectangle(14, 14, planPoint(-1, -1))],
  [[planPoint(-1, -2), planPoint(14, -1), planPoint(13, 13), planPoint(6, 8), planPoint(-2, 12)]],
  [rectangle(14, 14, planPoint(-1, -1)), rectangle(3, 3, planPoint(5, 5)).toReversed()],
);

describe('rings that nothing touches', () => {
  test('come back as the polygon library gives them: alone, and out of a room', () => {
    let known = 0;
    fc.assert(
      fc.property(fc.array(convex, { minLength: 1, maxLength: 6 }), room, (rings, around) => {
        const [subject, clip] = [rings.map(toGrid), around.map(toGrid)];
        for (const kind of [ClipType.Difference, ClipType.Intersection]) {
          const region = kind === ClipType.Intersection ? clip : [];
          const found = untouched(boxedOf(subject), boxedOf(region));
          if (!found) continue;
          known += 1;
          expect(bare(found)).toEqual(bare(byLibrary(kind, subject, region)));
        }
      }),
      { numRuns: 3000 },
    );
    expect(known).toBeGreaterThan(500);
  });

  test('are told from rings that turn in on themselves, the other way round, flat or thin', () => {
    expect(plainRing(toGrid(rectangle(1, 1)))).toHaveLength(4);
    expect(plainRing(toGrid(rectangle(1, 1).toReversed()))).toBeUndefined();
    expect(plainRing(toGrid(rectangle(1, 1e-4)))).toBeUndefined();
    expect(plainRing(toGrid([planPoint(0, 0), planPoint(2, 0), planPoint(1, 0.5), planPoint(1, 2)]))).toBeUndefined();
    const star = Array.from({ length: 5 }, (_, i) => polar(planPoint(0, 0), (i * 4 * Math.PI) / 5, 1));
    expect(plainRing(toGrid(star))).toBeUndefined();
  });
});

test('what lies far from an area takes no part in its sums', () => {
  const area = fc.oneof(convex, fc.constant([planPoint(0, 0), planPoint(6, 1), planPoint(6, 6), planPoint(3, 3), planPoint(0, 6)]));
  const far = convex.map((ring) => ring.map(({ x, y }) => planPoint(x + 40, y)));
  fc.assert(
    fc.property(area, fc.array(convex, { maxLength: 4 }), fc.array(far, { maxLength: 3 }), (first, near, others) => {
      const subject = [toGrid(first)];
      const clip = [...others, ...near].map(toGrid);
      const inMetres = (paths: Paths64) => paths.map((path) => path.map(({ x, y }) => ({ x: x / 1e6, y: y / 1e6 })));
      expect(differenceOf([first], [...others, ...near].map((ring) => [ring]))).toEqual(inMetres(byLibrary(ClipType.Difference, subject, clip)));
      expect(intersectionOf([first], [...others, ...near])).toEqual(inMetres(byLibrary(ClipType.Intersection, subject, clip)));
    }),
    { numRuns: 1000 },
  );
});
