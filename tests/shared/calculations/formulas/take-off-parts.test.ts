import { describe, expect, test } from 'vitest';
import { cutLength_m } from '#shared/calculations/formulas/cut-length';
import { FORGED_CLASSES } from '#shared/calculations/formulas/fitting-rating';
import { forgedReach_m } from '#shared/calculations/formulas/forged-fittings';
import { nippleOf } from '#shared/calculations/formulas/nipples';
import { fittingLegWeight_kg, materialWeight_kg_m } from '#shared/calculations/formulas/part-weights';
import { threadEngagement_m } from '#shared/calculations/formulas/pipe-threads';
import { pipeWeight_kg_m } from '#shared/calculations/formulas/pipe-weight';
import { fittingReach_m } from '#shared/calculations/formulas/threaded-fittings';
import { sealantPaste_m3, sealantTape_m } from '#shared/calculations/formulas/thread-sealant';
import { PIPE_SIZES, type PipeSize } from '#shared/profile/pipe-table';

const INCH_m = 0.0254;
const SIZES: readonly PipeSize[] = ['1/4', '3/8', '1/2', '3/4', '1', '1-1/4', '1-1/2', '2'];

describe('forged threaded fittings', () => {
  // ASME B16.11, inch columns, memory: both columns are rounded by themselves, to 1 mm and 0.01 in.
  test.each([
    ['1/4', 0.97, 0.75],
    ['3/8', 1.12, 0.88],
    ['1/2', 1.31, 1],
    ['3/4', 1.5, 1.12],
    ['1', 1.75, 1.31],
    ['1-1/4', 2, 1.38],
    ['1-1/2', 2.38, 1.69],
    ['2', 2.5, 1.72],
  ] as const)('Class 3000, NPS %s: A %d in, C %d in', (size, square_in, half_in) => {
    expect(Math.abs(forgedReach_m(size, '3000', 'elbow-90') / INCH_m - square_in)).toBeLessThan(0.04);
    expect(Math.abs(forgedReach_m(size, '3000', 'elbow-45') / INCH_m - half_in)).toBeLessThan(0.04);
  });

  test('a forging serves two classes: Class 3000 is as long as Class 2000 of the next size, Class 6000 as Class 3000 of the next', () => {
    for (const [i, size] of SIZES.entries()) {
      const next = SIZES[i + 1];
      if (!next) continue;
      expect(forgedReach_m(next, '2000', 'tee')).toBe(forgedReach_m(size, '3000', 'tee'));
      expect(forgedReach_m(next, '3000', 'cross')).toBe(forgedReach_m(size, '6000', 'elbow-90'));
    }
  });

  test('longer with size and class; a 45° elbow is the shortest; couplings of Class 3000 and 6000 are alike', () => {
    for (const size of SIZES) {
      const [a = 0, b = 0, c = 0] = FORGED_CLASSES.map((each) => forgedReach_m(size, each, 'elbow-90'));
      expect(a < b && b < c).toBe(true);
      for (const each of FORGED_CLASSES) expect(forgedReach_m(size, each, 'elbow-45')).toBeLessThan(forgedReach_m(size, each, 'elbow-90'));
      expect(forgedReach_m(size, '6000', 'coupling')).toBe(forgedReach_m(size, '3000', 'coupling'));
    }
  });

  test('what is not remembered surely, and what the standard does not have, is refused', () => {
    for (const size of PIPE_SIZES.filter((each) => !SIZES.includes(each))) expect(() => forgedReach_m(size, '3000', 'tee')).toThrow(RangeError);
    expect(() => forgedReach_m('1', '2000', 'coupling')).toThrow(RangeError);
  });
});

// Computed by hand from the lengths of ASME B16.3 and the engagements of the shop: 120 in between two 90° elbows.
test.each([
  ['150', '3/4', 'shop', 118.505],
  ['300', '3/4', 'shop', 118.245],
  ['300', '3/4', 'standard', 118.227],
  ['300', '1/2', 'shop', 118.5],
  ['300', '1', 'shop', 118.115],
] as const)('worked: Class %s, NPS %s, %s engagement is cut to %d in', (fittingClass, size, engagement, expected_in) => {
  const reach_m = fittingReach_m(size, fittingClass, 'elbow-90');
  const engaged_m = threadEngagement_m(size, engagement);
  expect(cutLength_m(120 * INCH_m, [reach_m, reach_m], [engaged_m, engaged_m]) / INCH_m).toBeCloseTo(expected_in, 3);
});

test('worked: a 45° offset of 12 in, NPS 1, Class 300: travel 16.971 in, cut 15.726 in', () => {
  const travel_in = 12 * Math.SQRT2;
  const reach_m = fittingReach_m('1', '300', 'elbow-45');
  const engaged_m = threadEngagement_m('1', 'shop');
  expect(travel_in).toBeCloseTo(16.971, 3);
  expect(cutLength_m(travel_in * INCH_m, [reach_m, reach_m], [engaged_m, engaged_m]) / INCH_m).toBeCloseTo(15.726, 3);
});

describe('nipples', () => {
  test('at, inside and outside the lengths sold', () => {
    expect([0.0277, 0.0278, 1.375 * INCH_m, 1.376 * INCH_m, 2 * INCH_m, 2.01 * INCH_m, 6 * INCH_m, 6.01 * INCH_m].map((length_m) => nippleOf('3/4', length_m))).toEqual([null, 'close', 'close', 'short', 'short', 'long', 'long', null]);
    expect(() => nippleOf('1', 0)).toThrow(RangeError);
  });

  test('in every size a close nipple is shorter than a short one, and holds its two threads', () => {
    for (const size of PIPE_SIZES) {
      const kinds = Array.from({ length: 600 }, (_, i) => nippleOf(size, (i + 1) * 0.01 * INCH_m));
      const first = (kind: string): number => kinds.indexOf(kind as (typeof kinds)[number]);
      expect(first('close')).toBeGreaterThan(0);
      expect(first('close') < first('short') && first('short') < first('long')).toBe(true);
    }
  });
});

describe('sealant', () => {
  test('NPS 3/4 by hand: three turns around 26.67 mm, one width of tape', () => {
    expect(sealantTape_m('3/4')).toBeCloseTo(3 * Math.PI * 0.02667, 9);
    // L2 0.5457 in less two threads of 1/14 in, thread 0.05714 in deep, half of it valley.
    expect(sealantPaste_m3('3/4')).toBeCloseTo(Math.PI * 1.05 * (0.5457 - 2 / 14) * 0.05714 * 0.5 * INCH_m ** 3, 9);
  });

  test('more for every larger size', () => {
    const tapes = PIPE_SIZES.map(sealantTape_m);
    const pastes = PIPE_SIZES.map(sealantPaste_m3);
    for (const list of [tapes, pastes]) for (const [i, value] of list.entries()) if (i > 0) expect(value).toBeGreaterThan(list[i - 1] ?? 0);
  });
});

describe('weights', () => {
  test('stainless pipe by its density, the others as carbon steel', () => {
    expect(materialWeight_kg_m('2', '80', 'stainless-steel') / pipeWeight_kg_m('2', '80')).toBeCloseTo(8 / 7.85, 12);
    expect(materialWeight_kg_m('2', '80', 'galvanized-steel')).toBe(pipeWeight_kg_m('2', '80'));
    // By hand: a ring of 60.325 mm outside and 3.9116 mm wall, 8.0 kg/dm³.
    expect(materialWeight_kg_m('2', '40', 'stainless-steel')).toBeCloseTo(8000 * (Math.PI / 4) * (0.060325 ** 2 - (0.060325 - 2 * 0.0039116) ** 2), 3);
  });

  test('a leg of a fitting by hand: a sleeve around NPS 1, 0.25 in thick, 1.63 in long', () => {
    const ring_m2 = (Math.PI / 4) * ((1.315 + 0.5) ** 2 - 1.315 ** 2) * INCH_m ** 2;
    expect(fittingLegWeight_kg('1', 1.63 * INCH_m)).toBeCloseTo(7850 * ring_m2 * 1.63 * INCH_m, 6);
    expect(fittingLegWeight_kg('1', 0)).toBe(0);
    expect(() => fittingLegWeight_kg('1', -1)).toThrow(RangeError);
  });
});
