import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutLengthTopic } from '#shared/calculations/cut-length';
import { cutLength_m } from '#shared/calculations/formulas/cut-length';
import { threadDepth_m, threadEngagement_m } from '#shared/calculations/formulas/pipe-threads';
import { fittingReach_m } from '#shared/calculations/formulas/threaded-fittings';
import { numberOf, runTopic } from '../../support/run-topic.ts';

const INCH_m = 0.0254;

const cut_in = (input: Readonly<Record<string, unknown>>): number => numberOf(runTopic(cutLengthTopic, { from: 'elbow-90', to: 'elbow-90', centreToCentre_in: 120, ...input }), 'cutLength_m') / INCH_m;

describe('cut length', () => {
  // Computed by hand from the lengths of ASME B16.3 (memory for Class 300) and shop engagement.
  test.each([
    ['NPS 3/4 Class 300', { nominalSize: '3/4', fittingClass: '300' }, 118.245],
    ['NPS 3/4 Class 300, engagement of ASME B1.20.1', { nominalSize: '3/4', fittingClass: '300', engagement: 'standard' }, 118.227],
    ['NPS 3/4 Class 150', { nominalSize: '3/4', fittingClass: '150' }, 118.505],
    ['NPS 1/2 Class 300', { nominalSize: '1/2', fittingClass: '300' }, 118.5],
    ['NPS 1 Class 300', { nominalSize: '1', fittingClass: '300' }, 118.115],
    ['45° offset of 12 in, NPS 1 Class 300', { nominalSize: '1', fittingClass: '300', from: 'elbow-45', to: 'elbow-45', centreToCentre_in: 12 * Math.SQRT2 }, 15.726],
  ])('worked: %s', (_, input, expected) => {
    expect(cut_in(input)).toBeCloseTo(expected, 3);
  });

  test('worked: 120 in are 3003.4 mm of NPS 3/4 Class 300', () => {
    expect(cut_in({ nominalSize: '3/4', fittingClass: '300' }) * 25.4).toBeCloseTo(3003.4, 1);
  });

  test('a numeral is taken for a size and class as well', () => {
    expect(cut_in({ nominalSize: 1, fittingClass: 300 })).toBeCloseTo(118.115, 3);
  });

  test('an open end takes nothing off', () => {
    expect(cut_in({ nominalSize: '1', fittingClass: '300', from: 'open', to: 'open' })).toBeCloseTo(120, 9);
    expect(cut_in({ nominalSize: '1', fittingClass: '300', to: 'open' })).toBeCloseTo(120 - 1.63 + 0.6875, 9);
  });

  test('fittings that would touch are refused', () => {
    expect(() => cut_in({ nominalSize: '1', fittingClass: '300', centreToCentre_in: 3.2 })).toThrow('too short');
    expect(() => cutLength_m(Number.NaN, [0, 0], [0, 0])).toThrow('centreToCentre_m');
  });

  test('units in any form give the same answer, and the cut grows as the run does', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 100, noNaN: true }), (length_m) => {
        const at = (key: string, value: number): number => numberOf(runTopic(cutLengthTopic, { nominalSize: '2', fittingClass: '150', from: 'tee', to: 'coupling', [key]: value }), 'cutLength_m');
        const cut_m = at('centreToCentre_m', length_m);
        expect(at('centreToCentre_mm', length_m * 1000)).toBeCloseTo(cut_m, 9);
        expect(at('centreToCentre_ft', length_m / 0.3048)).toBeCloseTo(cut_m, 9);
        expect(at('centreToCentre_in', length_m / INCH_m)).toBeCloseTo(cut_m, 9);
        expect(at('centreToCentre_m', length_m + 1) - cut_m).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('threads of ASME B1.20.1', () => {
  // L1 + L3 [mm], shop engagement [in] and thread depth [in]; turns of L3 from memory.
  test.each([
    ['1/4', 10.02, 0.375, 0.04444],
    ['3/8', 10.33, 0.375, 0.04444],
    ['1/2', 13.57, 0.5, 0.05714],
    ['3/4', 14.05, 0.5625, 0.05714],
    ['1', 16.79, 0.6875, 0.06957],
    ['1-1/4', 17.29, 0.6875, 0.06957],
    ['1-1/2', 17.29, 0.6875, 0.06957],
    ['2', 17.7, 0.75, 0.06957],
    ['2-1/2', 23.67, 0.9375, 0.1],
    ['3', 25.81, 1, 0.1],
    ['4', 27.79, 1.125, 0.1],
  ] as const)('NPS %s', (size, standard_mm, shop_in, depth_in) => {
    expect(Math.abs(threadEngagement_m(size, 'standard') * 1000 - standard_mm)).toBeLessThanOrEqual(0.01);
    expect(threadEngagement_m(size, 'shop') / INCH_m).toBeCloseTo(shop_in, 9);
    expect(threadDepth_m(size) / INCH_m).toBeCloseTo(depth_in, 5);
    // A shop's allowance follows the standard within 0.06 in.
    expect(Math.abs(threadEngagement_m(size, 'standard') - threadEngagement_m(size, 'shop')) / INCH_m).toBeLessThan(0.06);
  });
});

describe('fittings of ASME B16.3', () => {
  // Class 150 A read in a pipe-trade table; all other columns from memory. Inches: A, C, W of Class 150 and of Class 300.
  test.each([
    ['1/4', [0.81, 0.73, 1.06], [0.94, 0.81, 1.37]],
    ['3/8', [0.95, 0.8, 1.16], [1.06, 0.88, 1.62]],
    ['1/2', [1.12, 0.88, 1.34], [1.25, 1, 1.87]],
    ['3/4', [1.31, 0.98, 1.52], [1.44, 1.13, 2.12]],
    ['1', [1.5, 1.12, 1.67], [1.63, 1.31, 2.37]],
    ['1-1/4', [1.75, 1.29, 1.93], [1.94, 1.5, 2.87]],
    ['1-1/2', [1.94, 1.43, 2.15], [2.13, 1.69, 2.87]],
    ['2', [2.25, 1.68, 2.53], [2.5, 2, 3.62]],
    ['2-1/2', [2.7, 1.95, 2.88], [2.94, 2.25, 4.12]],
    ['3', [3.08, 2.17, 3.18], [3.38, 2.5, 4.12]],
  ] as const)('NPS %s', (size, class150, class300) => {
    for (const [fittingClass, expected] of [
      ['150', class150],
      ['300', class300],
    ] as const) {
      const [a, c, w] = expected;
      const reach_in = (end: 'elbow-90' | 'elbow-45' | 'tee' | 'coupling'): number => fittingReach_m(size, fittingClass, end) / INCH_m;
      for (const [actual, each] of [
        [reach_in('elbow-90'), a],
        [reach_in('tee'), a],
        [reach_in('elbow-45'), c],
        [2 * reach_in('coupling'), w],
      ] as const)
        expect(actual).toBeCloseTo(each, 6);
    }
  });

  test('a fitting outside the table is refused', () => {
    expect(() => fittingReach_m('4', '150', 'tee')).toThrow('nominalSize 4');
  });
});
