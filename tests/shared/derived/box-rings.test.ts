import { Clipper64, ClipType, FillRule, type Path64, type Paths64 } from 'clipper2-ts';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { boxesInBox, leavesNothing } from '#shared/derived/box-rings';
import { derivePlan } from '#shared/derived/derive-plan';
import { placedFootprint } from '#shared/derived/footprint';
import { isRectangular } from '#shared/derived/polygon-sums';
import { seenOf } from '#shared/derived/sight';
import { boxedOf } from '#shared/derived/untouched-rings';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { at3, layout } from '../../support/layout.ts';

const whole = (min: number, max: number) => fc.integer({ min, max });

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

/** Boxes on a coarse grid, so that sides coincide often. */
const box = fc.record({ x: whole(0, 9), y: whole(0, 9), w: whole(1, 6), d: whole(1, 6), first: whole(0, 3) }).map(({ x, y, w, d, first }): Path64 => {
  const ring = rectangle(w * 1000, d * 1000, planPoint(x * 1000, y * 1000)).map((p) => ({ ...p }));
  return [...ring.slice(first), ...ring.slice(0, first)];
});

test('boxes within a box come back as the polygon library gives them', () => {
  let known = 0;
  fc.assert(
    fc.property(fc.array(box, { minLength: 1, maxLength: 4 }), box, (boxes, around) => {
      const found = boxesInBox(boxedOf(boxes), boxedOf([around]));
      if (!found) return;
      known += 1;
      expect(bare(found)).toEqual(bare(byLibrary(ClipType.Intersection, boxes, [around])));
    }),
    { numRuns: 3000 },
  );
  expect(known).toBeGreaterThan(500);
});

test('a box is plainly covered only where the polygon library leaves nothing of it', () => {
  let covered = 0;
  fc.assert(
    fc.property(box, fc.array(box, { maxLength: 8 }), (first, others) => {
      const isCovered = leavesNothing(boxedOf([first]), boxedOf(others));
      if (isCovered) covered += 1;
      expect(isCovered).toBe(byLibrary(ClipType.Difference, [first], others).length === 0);
    }),
    { numRuns: 3000 },
  );
  expect(covered).toBeGreaterThan(50);
});

test('a bare rectangular room is seen as far as the footprint goes, as by casting the shadow of every wall', () => {
  const metres = (least: number, most: number) => fc.oneof(fc.double({ min: least, max: most, noNaN: true }), whole(Math.ceil(least), Math.floor(most)));
  fc.assert(
    fc.property(metres(-40, 40), metres(-40, 40), metres(1, 12), metres(1, 12), fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), whole(0, 3), metres(1, 20), (x, y, width_m, depth_m, alongX, alongY, quarters, length_m) => {
      const outline = rectangle(width_m, depth_m, planPoint(x, y));
      // A fifth corner on a straight wall: no bare room, and the same floor.
      const withCorner = [...outline, planPoint(x, y + depth_m / 2)];
      const at = at3(x + 0.02 + (width_m - 0.04) * alongX, y + 0.02 + (depth_m - 0.04) * alongY, 2.5);
      const footprint = placedFootprint({ shape: 'rectangle', length_m, width_m: 7, source: 'test' }, at, (quarters * Math.PI) / 2);
      expect(isRectangular(outline) && isRectangular(footprint.ring)).toBe(true);
      const [bareRoom, other] = [outline, withCorner].map((room) => {
        const [space] = derivePlan(layout({ room, height_m: 3 })).spaces;
        return space && seenOf({ at, space, blockers: [] }, footprint);
      });
      const far = (p: { x: number; y: number }) => Math.min(...(other?.flat() ?? []).map((q) => Math.hypot(p.x - q.x, p.y - q.y)));
      expect(bareRoom).toHaveLength(1);
      for (const p of bareRoom?.flat() ?? []) expect(far(p)).toBeLessThan(5e-6);
    }),
    { numRuns: 200 },
  );
});
