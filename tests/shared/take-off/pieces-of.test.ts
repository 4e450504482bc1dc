import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { parsePlan } from '#shared/model/parse-plan';
import { printPlan } from '#shared/model/print-plan';
import { layoutIsometric } from '#shared/isometric/layout-isometric';
import { effectiveThread_m } from '#shared/calculations/formulas/pipe-threads';
import type { PipeSize } from '#shared/profile/pipe-table';
import type { MadeFitting } from '#shared/profile/unit-profile';
import { type Piece, STOCK_LENGTH_m, USUAL_TAKE_OFF, piecesOf } from '#shared/take-off/pieces-of';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { type PlanBuilder, place3, planBuilder } from '../../support/plan-builder.ts';
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

  // The last 4 in east are the nipple of the dirt trap.
  test('F1 by hand: 14, 87, 48 and twice 4 in between centres, 0.8775 in off at each elbow and leg of the tee', async () => {
    const pieces = piecesOf(firstNetwork((await buildDemo('F1')).plan));
    expect(pieces.map(labels)).toEqual(['1–2', '2–3', '3–4', '4–5', '4–6']);
    const table = [
      ['open', 'elbow-90', 14, 13.1225],
      ['elbow-90', 'elbow-90', 87, 85.245],
      ['elbow-90', 'tee', 48, 46.245],
      ['tee', 'cap', 4, 3.1225],
      ['tee', 'nozzle', 4, 3.1225],
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
  test('a reducing tee that no maker gives never takes the length of a straight one: no leg of it has a cut length', () => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(5, 5, 3), place3(9, 5, 3)], '1').run([place3(5, 5, 3), place3(5, 9, 3)], '3/4').nozzle(9, 5, 3).nozzle(5, 9, 3);
    for (const profile of Object.values(plan.profiles)) profile.madeFittings = [];
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

  test.each([[null, '1', 'blank'], ['3000', '2-1/2', 'Class 3000']] as const)('fittings of class %s in NPS %s are not in the table', (fittingClass, size, words) => {
    const { plan } = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(5, 5, 3), place3(5, 9, 3)], size).nozzle(5, 9, 3);
    for (const profile of Object.values(plan.profiles)) profile.fittingClass = fittingClass;
    const pieces = piecesOf(firstNetwork(plan));
    expect(pieces.map(({ cut_m }) => cut_m)).toEqual([null, null]);
    expect(pieces[0]?.because.join()).toContain(words);
  });
});

describe('lengths of a maker', () => {
  const madeFitting = (kind: MadeFitting['kind'], ...legs: readonly (readonly [PipeSize, number])[]): MadeFitting => ({
    kind, legs: legs.map(([size, reach_in]) => ({ size, reach_m: reach_in * INCH_m })), weight_kg: null, source: 'maker',
  });
  /** Take-off of the ends at the node at (60, 0, 100) in, by the way in which their pipe leaves it [in]. */
  function takeOffs(built: PlanBuilder, madeFittings: MadeFitting[]): Record<string, number> {
    for (const profile of Object.values(built.plan.profiles)) Object.assign(profile, { madeFittings });
    const { id } = built.nodeAt(60 * INCH_m, 0, 100 * INCH_m);
    const network = firstNetwork(built.plan);
    return Object.fromEntries(
      piecesOf(network).flatMap(({ from, to, pipes }) =>
        [from, to].flatMap(({ node, takeOff }): [string, number][] => {
          const pipe = network.pipes.find(({ ref }) => ref.id === (node === from.node ? pipes[0] : pipes.at(-1)));
          const other = node === from.node ? pipe?.to : pipe?.from;
          if (node !== id || !other) return [];
          const way = other.x < 1.5 ? 'west' : other.x > 1.6 ? 'east' : other.y > 0.1 ? 'north' : other.y < -0.1 ? 'south' : other.z > 2.6 ? 'up' : 'down';
          return [[way, takeOff.isKnown ? Number((takeOff.takeOff_m / INCH_m).toFixed(9)) : Number.NaN]];
        }),
      ),
    );
  }
  const line = (...places: readonly (readonly [number, number, number])[]) => places.map((place) => p_in(...place));
  const WEST = [0, 0, 100] as const;
  const HERE = [60, 0, 100] as const;
  const EAST = [120, 0, 100] as const;

  // Reach less shop engagement by hand: NPS 1 11/16 in, 3/4 9/16 in, 1-1/4 11/16 in.
  test('a reducing tee, leg by leg: run 1-1/4 and 1, branch 3/4', () => {
    const built = planBuilder().network().run(line(WEST, HERE), '1-1/4').run(line(HERE, EAST), '1').run(line(HERE, [60, 50, 100]), '3/4');
    const tee = madeFitting('tee', ['1-1/4', 2], ['1', 1.9], ['3/4', 1.8]);
    expect(takeOffs(built, [tee])).toEqual({ west: 1.3125, east: 1.2125, north: 1.2375 });
  });

  test('the same tee fed from its smaller end, and turned', () => {
    const built = planBuilder().network().run(line(WEST, HERE), '1').run(line(HERE, EAST), '1-1/4').run(line(HERE, [60, 0, 50]), '3/4');
    expect(takeOffs(built, [madeFitting('tee', ['1-1/4', 2], ['1', 1.9], ['3/4', 1.8])])).toEqual({ west: 1.2125, east: 1.3125, down: 1.2375 });
  });

  // Nobody keeps such a tee: a straight one of NPS 1-1/4, 1.94 − 0.6875 in, with a reducer on each smaller leg.
  test('the same sizes with the large one on the branch are another tee', () => {
    const built = planBuilder().network().run(line(WEST, HERE), '1').run(line(HERE, EAST), '3/4').run(line(HERE, [60, 0, 50]), '1-1/4');
    expect(takeOffs(built, [madeFitting('tee', ['1-1/4', 2], ['1', 1.9], ['3/4', 1.8])])).toEqual({ west: Number.NaN, east: Number.NaN, down: 1.2525 });
  });

  test('a reducer, an elbow of two sizes, a cross and a union', () => {
    expect(takeOffs(planBuilder().network().run(line(WEST, HERE), '3/4').run(line(HERE, EAST), '1'), [madeFitting('reducer', ['1', 1.1], ['3/4', 1])])).toEqual({ west: 0.4375, east: 0.4125 });
    expect(takeOffs(planBuilder().network().run(line(WEST, HERE), '1').run(line(HERE, [60, 0, 50]), '3/4'), [madeFitting('elbow-90', ['3/4', 1.6], ['1', 1.5])])).toEqual({ west: 0.8125, down: 1.0375 });
    const cross = planBuilder().network().run(line(WEST, HERE), '3/4').run(line(HERE, [60, 0, 50]), '1').run(line(HERE, [60, 0, 150]), '1').run(line(HERE, EAST), '3/4');
    expect(takeOffs(cross, [madeFitting('cross', ['1', 1.7], ['1', 1.7], ['3/4', 1.6], ['3/4', 1.6])])).toEqual({ west: 1.0375, down: 1.0125, up: 1.0125, east: 1.0375 });
    const union = planBuilder().network().run(line(WEST, HERE, EAST), '1');
    Object.assign(union.plan.networks[union.networkId]?.nodes[union.nodeAt(60 * INCH_m, 0, 100 * INCH_m).id] ?? {}, { part: 'union' });
    expect(takeOffs(union, [madeFitting('union', ['1', 1.35])])).toEqual({ west: 0.6625, east: 0.6625 });
    expect(takeOffs(union, [])).toEqual({ west: Number.NaN, east: Number.NaN });
  });

  test('a welded elbow takes the whole of its maker’s length, and no thread', () => {
    const built = planBuilder().network().run(line(WEST, HERE, [60, 0, 50]), '1', { joint: 'welded' });
    expect(takeOffs(built, [madeFitting('elbow-90', ['1', 1.5])])).toEqual({ west: 1.5, down: 1.5 });
  });

  test('a maker’s own length goes before the table', () => {
    const built = planBuilder().network().run(line(WEST, HERE, [60, 0, 50]), '1');
    expect(takeOffs(built, [madeFitting('elbow-90', ['1', 1.7])])).toEqual({ west: 1.0125, down: 1.0125 });
    expect(takeOffs(built, [])).toEqual({ west: 0.9425, down: 0.9425 });
  });

  test('a street elbow screws straight into the fitting that is drawn where its outside thread ends, and takes no pipe elsewhere', () => {
    const street = madeFitting('street-elbow', ['1', 1.5], ['1', 2]);
    // By hand: 2 in to its outside end, and 1.63 − 0.6875 = 0.9425 in to where a pipe would end in the next elbow.
    const at = (apart_in: number) => {
      const built = planBuilder().network().run(line(WEST, HERE, [60, 0, 100 - apart_in], [60, 50, 100 - apart_in]), '1');
      Object.assign(built.plan.networks[built.networkId]?.nodes[built.nodeAt(60 * INCH_m, 0, 100 * INCH_m).id] ?? {}, { part: 'street-elbow' });
      for (const profile of Object.values(built.plan.profiles)) Object.assign(profile, { madeFittings: [street] });
      return piecesOf(firstNetwork(built.plan))[1];
    };
    expect(at(2.9425)).toMatchObject({ hasPipe: false, cut_m: null, threads: 0, isTooShort: false });
    expect(at(2.5)).toMatchObject({ hasPipe: false, cut_m: null, isTooShort: true });
    expect(at(6)).toMatchObject({ hasPipe: true, cut_m: null, isTooShort: false });
    expect(at(6)?.because.join()).toContain('outside thread');
  });
});

describe('nipples', () => {
  // NPS 3/4: 2·L2 = 1.0914 in, sold close 1 3/8 in, short 2 in (memory); 0.8775 in off at each elbow;
  // below two engagements of 9/16 in the fittings touch.
  test.each([
    [1.0, null, true],
    [1.12, null, true],
    [1.126, 'close', false],
    [1.375, 'close', false],
    [1.4, 'short', false],
    [2.0, 'short', false],
    [2.1, 'long', false],
    [6, 'long', false],
    [6.01, null, false],
  ] as const)('a piece of %d in', (cut_in, nipple, isTooShort) => {
    expect(piecesOf(betweenElbows(cut_in + 2 * 0.8775, '3/4'))[1]).toMatchObject({ nipple, isTooShort });
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

  test('a coupling that is built in at a node parts the run there, and no more', () => {
    const built = planBuilder().room(40, 40, 5).network().run([place3(1, 5, 3), place3(2, 5, 3), place3(4, 5, 3)]).nozzle(4, 5, 3);
    Object.assign(built.plan.networks[built.networkId]?.nodes[built.nodeAt(2, 5, 3).id] ?? {}, { part: 'coupling' });
    expect(piecesOf(firstNetwork(built.plan)).map(({ from, to }) => [from.kind, to.kind])).toEqual([['open', 'coupling'], ['coupling', 'nozzle']]);
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
