import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { parsePlan } from '#shared/model/parse-plan';
import { printPlan } from '#shared/model/print-plan';
import { layoutIsometric } from '#shared/isometric/layout-isometric';
import { effectiveThread_m } from '#shared/calculations/formulas/pipe-threads';
import type { PipeSize } from '#shared/profile/pipe-table';
import { type Piece, STOCK_LENGTH_m, USUAL_TAKE_OFF, piecesOf } from '#shared/take-off/pieces-of';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';
import { anyPipePlan, firstNetwork } from './any-network.ts';

const INCH_m = 0.0254;
const inches = (length_m: number | null): number => (length_m ?? Number.NaN) / INCH_m;
const p_in = (x: number, y: number, z: number) => place3(x * INCH_m, y * INCH_m, z * INCH_m);
const labels = ({ from, to }: Piece): string => `${from.label}–${to.label}`;
const takenOff_m = ({ from, to }: Piece): number => [from, to].reduce((sum, { takeOff }) => sum + (takeOff.isKnown ? takeOff.takeOff_m : Number.NaN), 0);

/** A run between two 90° elbows, one drop at each end. */
const betweenElbows = (length_in: number, size: PipeSize) =>
  firstNetwork(planBuilder().room(40, 40, 5).network().run([p_in(0, 0, 60), p_in(0, 0, 100), p_in(length_in, 0, 100), p_in(length_in, 0, 60)], size).nozzle(length_in * INCH_m, 0, 60 * INCH_m).plan);

describe('cut lengths', () => {
  // Computed by hand from the lengths of ASME B16.3 Class 300 (memory) and shop engagement.
  test.each([
    ['1/2', 118.5],
    ['3/4', 118.245],
    ['1', 118.115],
  ] as const)('worked: NPS %s, 120 in between two 90° elbows, is cut to %d in', (size, expected_in) => {
    expect(inches(piecesOf(betweenElbows(120, size))[1]?.cut_m ?? null)).toBeCloseTo(expected_in, 9);
  });

  test('worked: the same by the engagement of ASME B1.20.1 is 118.227 in', () => {
    expect(inches(piecesOf(betweenElbows(120, '3/4'), { ...USUAL_TAKE_OFF, engagement: 'standard' })[1]?.cut_m ?? null)).toBeCloseTo(118.227, 3);
  });

  test('worked: a 45° offset of 12 in, NPS 1, is cut to 15.726 in', () => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([p_in(0, 0, 100), p_in(60, 0, 100), p_in(72, 12, 100), p_in(132, 12, 100)], '1').nozzle(132 * INCH_m, 12 * INCH_m, 100 * INCH_m);
    expect(inches(piecesOf(firstNetwork(plan))[1]?.cut_m ?? null)).toBeCloseTo(15.726, 3);
  });

  test('F1 by hand: 14, 87, 48 and 4 in between centres, 0.8775 in off at each of three elbows', async () => {
    const pieces = piecesOf(firstNetwork((await buildDemo('F1')).plan));
    expect(pieces.map(labels)).toEqual(['1–2', '2–3', '3–4', '4–5']);
    const table = [
      ['open', 'elbow-90', 14, 13.1225],
      ['elbow-90', 'elbow-90', 87, 85.245],
      ['elbow-90', 'elbow-90', 48, 46.245],
      ['elbow-90', 'nozzle', 4, 3.1225],
    ] as const;
    for (const [i, [from, to, between_in, cut_in]] of table.entries()) {
      const piece = pieces[i];
      expect([piece?.from.kind, piece?.to.kind, piece?.threads, piece?.isTooShort]).toEqual([from, to, 2, false]);
      expect(inches(piece?.centreToCentre_m ?? null)).toBeCloseTo(between_in, 9);
      expect(inches(piece?.cut_m ?? null)).toBeCloseTo(cut_in, 9);
    }
  });
});

test.each(['F1', 'F2', 'F3'] as const)('%s: ends carry the numbers of the isometric', async (name) => {
  for (const network of derivePlan((await buildDemo(name)).plan).networks) {
    const numbers = new Map(layoutIsometric(network).nodes.map(({ id, number }) => [id, String(number)]));
    const ends = piecesOf(network).flatMap(({ from, to }) => [from, to]).filter(({ node }) => node !== null);
    expect(ends.map(({ label }) => label)).toEqual(ends.map(({ node }) => numbers.get(node ?? '')));
  }
});

describe('what is not known', () => {
  test('a reducing tee never takes the length of a straight one: no leg of it has a cut length', () => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(5, 5, 3), place3(9, 5, 3)], '1').run([place3(5, 5, 3), place3(5, 9, 3)], '3/4').nozzle(9, 5, 3).nozzle(5, 9, 3);
    const pieces = piecesOf(firstNetwork(plan));
    expect(pieces.map(({ cut_m }) => cut_m)).toEqual([null, null, null]);
    for (const { because } of pieces) expect(because.join()).toContain('fitting’s maker');
  });

  test.each([
    ['welded', { joint: 'welded' as const }],
    ['grooved', { joint: 'grooved' as const }],
  ])('%s pipe has no cut length at an elbow and no threads', (word, change) => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(5, 5, 3), place3(5, 9, 3)], '1', change).nozzle(5, 9, 3);
    const pieces = piecesOf(firstNetwork(plan));
    expect(pieces.map(({ cut_m, threads }) => [cut_m, threads])).toEqual([[null, 0], [null, 0]]);
    expect(pieces[0]?.because.join()).toContain(word);
  });

  test.each([[null, 'blank'], ['3000', 'Class 3000']] as const)('fittings of class %s are not in the table', (fittingClass, words) => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(5, 5, 3), place3(5, 9, 3)], '1').nozzle(5, 9, 3);
    for (const profile of Object.values(plan.profiles)) profile.fittingClass = fittingClass;
    const pieces = piecesOf(firstNetwork(plan));
    expect(pieces.map(({ cut_m }) => cut_m)).toEqual([null, null]);
    expect(pieces[0]?.because.join()).toContain(words);
  });
});

describe('short pieces', () => {
  // By ASME B1.20.1 the effective thread of NPS 1-1/4, 0.7068 in, is longer than what shops let it go in, 11/16 in.
  const NPS = '1-1/4';
  const close_in = (2 * effectiveThread_m(NPS)) / INCH_m;
  const takeOff_in = 2 * (1.94 - 0.6875);

  test.each([
    ['just long enough for a close nipple', close_in + takeOff_in + 1e-6, false, true],
    ['just under a close nipple', close_in + takeOff_in - 1e-6, true, false],
  ])('%s', (_, between_in, isTooShort, isFree) => {
    const piece = piecesOf(betweenElbows(between_in, NPS))[1];
    expect([piece?.isTooShort, piece?.because.length === 0]).toEqual([isTooShort, isFree]);
  });

  test('fittings that would touch leave no length, and none below 0', () => {
    const piece = piecesOf(betweenElbows(2, NPS))[1];
    expect(piece).toMatchObject({ cut_m: null, isTooShort: true, because: ['the fittings would touch'] });
  });
});

describe('couplings', () => {
  test('a run longer than the stock gets whole lengths first and the rest last', () => {
    const pieces = piecesOf(betweenElbows(600, '3/4'));
    // By hand: 600 − 2·0.8775 = 598.245 in; two couplings part the pipes by 2·(1.06 − 0.5625) = 0.995 in each.
    expect(pieces.map(labels)).toEqual(['1–2', '2–3a', '3a–3b', '3b–3', '3–4']);
    expect(pieces.slice(1, 4).map(({ cut_m }) => Number(inches(cut_m).toFixed(6)))).toEqual([252, 252, 92.255]);
  });

  test('a stub at the end is shared between the last two', () => {
    const [, a, b] = piecesOf(betweenElbows(252 + 2 * 0.8775 + 0.995 + 0.5, '3/4'));
    expect(inches(a?.cut_m ?? null)).toBeCloseTo(126.25, 6);
    expect(inches(b?.cut_m ?? null)).toBeCloseTo(126.25, 6);
  });

  test('a run that just fits the stock needs none', () => {
    expect(piecesOf(betweenElbows(252 + 2 * 0.8775, '3/4'))).toHaveLength(3);
    expect(piecesOf(betweenElbows(252 + 2 * 0.8775 + 1e-4, '3/4'))).toHaveLength(4);
  });

  test('pipe drawn in several straight lengths is one piece', () => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(2, 5, 3), place3(4, 5, 3)]).nozzle(4, 5, 3);
    expect(piecesOf(firstNetwork(plan))).toMatchObject([{ centreToCentre_m: 3, cut_m: 3, pipes: { length: 2 } }]);
  });

  test('another schedule straight on takes a coupling', () => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(2, 5, 3)]).run([place3(2, 5, 3), place3(4, 5, 3)], '3/4', { schedule: '80' }).nozzle(4, 5, 3);
    expect(piecesOf(firstNetwork(plan)).map(({ from, to }) => [from.kind, to.kind])).toEqual([['open', 'coupling'], ['coupling', 'nozzle']]);
  });
});

describe('any network', () => {
  test('pieces and take-offs add up to the developed length, none below 0 or over the stock', () => {
    fc.assert(
      fc.property(anyPipePlan, (plan) => {
        const network = firstNetwork(plan);
        const pieces = piecesOf(network);
        expect(pieces.reduce((sum, { centreToCentre_m }) => sum + centreToCentre_m, 0)).toBeCloseTo(network.totalLength_m, 9);
        for (const piece of pieces) {
          if (piece.cut_m === null) expect(piece.because).not.toEqual([]);
          else {
            expect(piece.cut_m).toBeGreaterThan(0);
            expect(piece.cut_m).toBeLessThanOrEqual(STOCK_LENGTH_m + 1e-9);
            expect(Math.abs(piece.cut_m + takenOff_m(piece) - piece.centreToCentre_m)).toBeLessThan(1e-9);
          }
        }
      }),
      { numRuns: 1000 },
    );
  });

  test('as many ends meet at every node as pipes meet at its fitting', () => {
    fc.assert(
      fc.property(anyPipePlan, (plan) => {
        const network = firstNetwork(plan);
        const ends = piecesOf(network).flatMap(({ from, to }) => [from, to]);
        for (const { node, kind, pipes } of network.fittings) {
          if (kind === 'reducer' || kind === 'odd-bend') continue;
          const here = ends.filter((end) => end.node === node);
          expect(here).toHaveLength(pipes.length);
          expect(here.every((end) => end.kind === kind || end.kind === 'odd-bend')).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('a plan saved and read again gives the same pieces', () => {
    fc.assert(
      fc.property(anyPipePlan, (plan) => {
        const again = parsePlan(printPlan(plan));
        if (!again.ok) throw new Error('The plan was not read again.');
        expect(piecesOf(firstNetwork(again.plan))).toEqual(piecesOf(firstNetwork(plan)));
      }),
      { numRuns: 30 },
    );
  });
});
