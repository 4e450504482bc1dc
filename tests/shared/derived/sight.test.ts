import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { coverageOf } from '#shared/derived/coverage';
import { derivePlan } from '#shared/derived/derive-plan';
import { dividesSpace } from '#shared/derived/dividing-solid';
import { type Outline, distanceToOutline_m, isInside, rectangle } from '#shared/geometry/outline';
import { type PlanPoint, type PlanPoint3, distance_m, planPoint, polar } from '#shared/geometry/point';
import type { Obstruction, Plan } from '#shared/model/plan';
import { planBuilder } from '../../support/plan-builder.ts';

const WIDE = { shape: 'rectangle', length_m: 60, width_m: 60, source: '' } as const;

function covered(plan: Plan, index = 0) {
  for (const profile of Object.values(plan.profiles)) profile.footprint ??= WIDE;
  const { spaces, nozzles } = derivePlan(plan);
  const space = spaces[index];
  if (!space) throw new Error('The plan has no such space.');
  const serving = nozzles.filter((nozzle) => nozzle.space?.key === space.key);
  const coverage = coverageOf(space, serving);
  return { ...coverage, space, nozzles: serving, gap_m2: coverage.uncovered.reduce((sum, region) => sum + region.area_m2, 0) };
}
const hall = (height_m: number, change = {}) => {
  const built = planBuilder().room(10, 8, height_m, planPoint(0, 0), change);
  for (const profile of Object.values(built.plan.profiles)) profile.footprint = WIDE;
  return built;
};
const ACROSS = rectangle(0.2, 8, planPoint(6, 0));

describe('bays between beams', () => {
  test.each([
    ['below an orifice in its plane', 2.5, 3, 2.8, 3, 3.8 * 8],
    ['below an orifice that is above what is drawn of it', 2.3, 2.6, 2.7, 3, 3.8 * 8],
    ['that leaves just less than 18 in to the ceiling', 2.3, 2.6, 2.7, 3.0571, 3.8 * 8],
    ['that leaves 18 in to the ceiling', 2.3, 2.6, 2.7, 3.0572, 0],
    ['with its underside at the orifice', 2.7, 3, 2.7, 3, 0],
    ['above the orifice', 2.8, 3, 2.7, 3, 0],
  ])('a beam %s', (_, bottom_m, top_m, orifice_m, ceiling_m, gap_m2) => {
    expect(covered(hall(ceiling_m).obstruction('beam', ACROSS, bottom_m, top_m).nozzle(3, 4, orifice_m).plan).gap_m2).toBeCloseTo(gap_m2, 4);
  });

  test('each is seen by its own nozzle only', () => {
    const built = hall(3).obstruction('beam', ACROSS, 2.5, 3).nozzle(3, 4, 2.8).nozzle(8, 4, 2.8);
    expect(covered(built.plan).gap_m2).toBe(0);
    const areas = covered(built.plan).perNozzle.map(({ seen }) => Math.max(...seen.flat().map(({ x }) => x)) - Math.min(...seen.flat().map(({ x }) => x)));
    expect(areas[0]).toBeCloseTo(6.2, 4);
    expect(areas[1]).toBeCloseTo(4, 4);
  });

  test('a ceiling of unknown height: the beam counts up to it', () => {
    expect(covered(hall(3, { height_m: null }).obstruction('beam', ACROSS, 2.3, 2.6).nozzle(3, 4, 2.7).plan).gap_m2).toBeCloseTo(3.8 * 8, 4);
  });

  test('in a ceiling void a beam through it parts it too', () => {
    const built = hall(2.7, { ceilingVoid: { depth_m: 0.6, isProtected: true, exclusion: null } }).obstruction('beam', ACROSS, 2.5, 3.3).nozzle(3, 4, 3);
    expect(covered(built.plan, 1).gap_m2).toBeCloseTo(3.8 * 8, 4);
    expect(covered(built.nozzle(8, 4, 3).plan, 1).gap_m2).toBe(0);
  });

  test('under a raised floor a duct on the slab as high as the void parts it, a lower one does not', () => {
    const at = (top_m: number) => covered(hall(2.7, { underFloor: { depth_m: 0.5, isProtected: true, exclusion: null } }).obstruction('duct', ACROSS, -0.5, top_m).nozzle(3, 4, -0.1).plan, 1).gap_m2;
    expect(at(0)).toBeCloseTo(3.8 * 8, 4);
    expect(at(-0.2)).toBe(0);
  });
});

describe('partitions', () => {
  const open = (bottom_m: number, top_m: number, kind: Obstruction['kind'] = 'partition', change = {}) => hall(3, change).obstruction(kind, ACROSS, bottom_m, top_m).nozzle(3, 4, 2.9);
  test.each([
    ['just less than 18 in', 0, 2.5429, 'partition', true, 3.8 * 8],
    ['18 in', 0, 2.5428, 'partition', false, 0],
    ['more', 0, 2, 'partition', false, 0],
    ['less, but as much under it', 0.4572, 2.8, 'partition', false, 0],
    // Under its near edge the line to the floor reaches 3 · 2.9 / 2.8 m from the nozzle.
    ['less, and a little under it', 0.1, 2.8, 'partition', true, (7 - (3 * 2.9) / 2.8) * 8],
    ['less, but it is a rack', 0, 2.7, 'rack', false, 0],
  ] as const)('one that leaves %s', (_, bottom_m, top_m, kind, divides, expected_m2) => {
    const { space, gap_m2 } = covered(open(bottom_m, top_m, kind).plan);
    const [solid] = space.solids;
    expect(solid && dividesSpace(space, solid)).toBe(divides);
    expect(gap_m2).toBeCloseTo(expected_m2, 4);
  });

  test('one under a ceiling of unknown height divides', () => {
    const { space } = covered(open(0, 2, 'partition', { height_m: null }).plan);
    expect(space.solids[0] && dividesSpace(space, space.solids[0])).toBe(true);
  });
});

describe('a part of the ceiling that hangs lower than the orifice', () => {
  const lowEast = (at_m: number) =>
    hall(3, { ceilingZones: { z: { id: 'z', name: 'Low', outline: rectangle(4, 8, planPoint(6, 0)), height_m: 2.4 } } }).nozzle(at_m, 4, 2.7);

  test('is passed under as far as a straight line from the orifice reaches the floor', () => {
    expect(covered(lowEast(4).plan).gap_m2).toBe(0);
    // (2.7 − 2.4) / 2.7 of the way is at the edge: 0.25 m before it, 2.25 m are seen.
    expect(covered(lowEast(5.75).plan).gap_m2).toBeCloseTo(2 * 8, 4);
  });

  test('so does the ceiling round a raised part', () => {
    const raised = hall(2.4, { ceilingZones: { z: { id: 'z', name: 'Raised', outline: rectangle(4, 8, planPoint(2, 0)), height_m: 3 } } }).nozzle(5.75, 4, 2.7);
    expect(covered(raised.plan).gap_m2).toBeCloseTo(2 * 8, 4);
  });

  test('two that meet are one', () => {
    const zone = (id: string, x: number) => ({ id, name: id, outline: rectangle(2, 8, planPoint(x, 0)), height_m: 2.4 });
    expect(covered(hall(3, { ceilingZones: { a: zone('a', 6), b: zone('b', 8) } }).nozzle(4, 4, 2.7).plan).gap_m2).toBe(0);
  });
});

/** A box in space. */
interface Block {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly depth: number;
  readonly bottom: number;
  readonly top: number;
}

/** Whether a straight line passes through the inside of a box: by the shares of the way between its three pairs of faces. */
function meets(from: PlanPoint3, to: PlanPoint3, { x, y, width, depth, bottom, top }: Block): boolean {
  let [first, last] = [0, 1];
  for (const [a, b, low, high] of [[from.x, to.x, x, x + width], [from.y, to.y, y, y + depth], [from.z, to.z, bottom, top]] as const) {
    if (a === b) {
      if (a <= low || a >= high) return false;
      continue;
    }
    const [one, other] = [(low - a) / (b - a), (high - a) / (b - a)];
    first = Math.max(first, Math.min(one, other));
    last = Math.min(last, Math.max(one, other));
  }
  return last - first > 1e-9;
}

const isIn = (at: PlanPoint, rings: readonly Outline[]): boolean => rings.filter((ring) => isInside(at, ring)).length % 2 === 1;

describe('against rays in space', () => {
  const CEILING = 3;
  const UP = 99;
  const dm = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 10);
  const block = (bottom: fc.Arbitrary<number>, top: fc.Arbitrary<number>) => fc.record({ x: dm(0, 110), y: dm(0, 80), width: dm(1, 30), depth: dm(1, 30), bottom, top });
  const layout = fc.record({
    racks: fc.array(block(fc.constant(0), dm(10, 29)), { maxLength: 3 }),
    beams: fc.array(block(dm(20, 25), dm(26, 30)), { maxLength: 3 }),
    ducts: fc.array(block(dm(18, 24), dm(25, 30)), { maxLength: 2 }),
    partitions: fc.array(block(dm(0, 5), dm(20, 30)), { maxLength: 2 }),
    low: fc.array(block(dm(22, 26), fc.constant(UP)), { maxLength: 2 }),
    nozzles: fc.array(fc.record({ x: dm(1, 119), y: dm(1, 89), z: dm(24, 29) }), { minLength: 1, maxLength: 3 }),
    picks: fc.array(fc.tuple(fc.nat(100_000), fc.nat(100_000)), { minLength: 60, maxLength: 60 }),
  });

  type Drawn = typeof layout extends fc.Arbitrary<infer T> ? T : never;

  /** What stops a straight line from a height: what that height cuts; beams below it and partitions with less than 18 in over and under them up to the ceiling; low ceilings. */
  const stoppers = ({ racks, beams, ducts, partitions, low }: Drawn, z: number): Block[] => {
    const ceilingOver = ({ x, y, width, depth }: Block): number =>
      Math.min(CEILING, ...low.filter((zone) => zone.x <= x + width && x <= zone.x + zone.width && zone.y <= y + depth && y <= zone.y + zone.depth).map(({ bottom }) => bottom));
    const isShut = (each: Block): boolean => ceilingOver(each) - each.top < 0.4572 - 1e-9;
    return [
      ...[...racks, ...ducts].filter(({ bottom, top }) => bottom < z && z < top),
      ...beams.filter(({ bottom, top }) => bottom < z && z < top),
      ...beams.filter((each) => each.bottom < z && isShut(each)).map((each) => ({ ...each, top: UP })),
      ...partitions.filter((each) => each.bottom < z && z < each.top),
      ...partitions.filter((each) => each.bottom < 0.4572 && isShut(each)).map((each) => ({ ...each, top: UP })),
      ...low.filter(({ bottom }) => bottom < z),
    ];
  };

  test('nothing is called covered that no straight line to the floor, or to a height over it, reaches', () => {
    let [asked, seen] = [0, 0];
    fc.assert(
      fc.property(layout, (drawn) => {
        const built = planBuilder().room(12, 9, CEILING, planPoint(0, 0), {
          ceilingZones: Object.fromEntries(drawn.low.map(({ x, y, width, depth, bottom }, i) => [`z${i}`, { id: `z${i}`, name: `Z${i}`, outline: rectangle(width, depth, planPoint(x, y)), height_m: bottom }])),
        });
        for (const [kind, blocks] of [['rack', drawn.racks], ['beam', drawn.beams], ['duct', drawn.ducts], ['partition', drawn.partitions]] as const) {
          for (const { x, y, width, depth, bottom, top } of blocks) built.obstruction(kind, rectangle(width, depth, planPoint(x, y)), bottom, top);
        }
        // Off the decimetres on which everything else stands.
        const eyes = drawn.nozzles.map(({ x, y, z }) => ({ x: x + 0.0137, y: y + 0.0071, z: z + 0.013 }));
        for (const { x, y, z } of eyes) built.nozzle(x, y, z);
        for (const profile of Object.values(built.plan.profiles)) profile.footprint = { shape: 'circle', radius_m: 4, source: '' };
        const { uncovered, space } = covered(built.plan);
        const isBuried = (at: PlanPoint): boolean => space.solids.some(({ footprint }) => isInside(at, footprint) && distanceToOutline_m(at, footprint) < 1e-4) || space.solids.some(({ footprint, bottom_m }) => bottom_m <= 0.001 && isInside(at, footprint));
        const inSight = (at: PlanPoint): boolean =>
          eyes.some((eye) => {
            if (distance_m(eye, at) > 4) return false;
            const blocks = stoppers(drawn, eye.z);
            if (blocks.some(({ x, y, width, depth }) => eye.x > x && eye.x < x + width && eye.y > y && eye.y < y + depth)) return false;
            return [0, 0.25, 0.5, 0.75, 1].some((share) => !blocks.some((each) => meets(eye, { x: at.x, y: at.y, z: eye.z * share }, each)));
          });
        const isCalled = (at: PlanPoint): boolean => !isBuried(at) && isIn(at, [space.outline]) && !uncovered.some(({ rings }) => isIn(at, rings));
        for (const [u, v] of drawn.picks) {
          const at = planPoint((u / 100_000) * 12, (v / 100_000) * 9);
          if (!isCalled(at) || uncovered.some(({ rings }) => rings.some((ring) => distanceToOutline_m(at, ring) < 1e-4))) continue;
          asked += 1;
          if (inSight(at)) {
            seen += 1;
            continue;
          }
          // Gaps below 1 cm² are left out on purpose: one missed place counts only with others around it.
          const around = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => polar(at, (i * Math.PI) / 4, 0.02)).filter((p) => isCalled(p) && !inSight(p));
          expect(around.length).toBeLessThanOrEqual(2);
        }
      }),
      { numRuns: 120 },
    );
    expect(asked).toBeGreaterThan(500);
    expect(seen / asked).toBeGreaterThan(0.99);
  });
});
