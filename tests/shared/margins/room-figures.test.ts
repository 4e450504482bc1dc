import { describe, expect, test } from 'vitest';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { setNozzleHeight } from '#shared/commands/set-nozzle-height';
import { derivePlan } from '#shared/derived/derive-plan';
import { evaluate } from '#shared/evaluate';
import { rectangle } from '#shared/geometry/outline';
import { allowedPatch } from '#shared/margins/allowed-patch';
import { nozzleHeights, pipeHeights, railHeights } from '#shared/margins/height-range';
import { lastKept } from '#shared/margins/last-kept';
import { marginFields } from '#shared/margins/margin-field';
import { patchBoxOf, reachOf, reachesOf } from '#shared/margins/patch-reach';
import { marginAt } from '#shared/margins/place-margin';
import { provenPatch } from '#shared/margins/proven-patch';
import { siteOf } from '#shared/margins/site';
import { tracedWithin } from '#shared/margins/traced';
import { tapeDown_m, tapeUp_m } from '#shared/margins/tape-down';
import { turnRangeOf } from '#shared/margins/turn-range';
import { momentsOf } from '#shared/geometry/moments';
import type { RefOf } from '#shared/model/plan';
import { at3, layout } from '../../support/layout.ts';
import { frozen } from '../../support/frozen.ts';
import { isNews, stopKeys, stoppedAt } from '../../support/patch-trials.ts';

const N1: RefOf<'nozzle'> = { kind: 'nozzle', network: 'net', id: 'n1' };
const PLAN = frozen(
  layout({
    room: rectangle(6, 4),
    height_m: 2.7,
    nozzles: [{ at: at3(3, 2, 2.5), holes_rad: [0, Math.PI] }],
    runs: [{ places: [at3(0.3, 0.6, 2.65), at3(0.3, 2, 2.65), at3(3, 2, 2.65), at3(3, 2, 2.5)] }],
    footprint: { shape: 'rectangle', length_m: 9, width_m: 8, source: 'test' },
    limits: { nozzleToWall_m: 0.25, nozzleReach_m: 20, nozzleArea_m2: 400 },
  }),
);
const derived = derivePlan(PLAN);
const answer = allowedPatch(derived, N1);
if (!answer.isKnown) throw new Error(answer.because);
const patch = answer;
const found = siteOf(derived, N1);
if (!('site' in found)) throw new Error(found.because);
const { site } = found;

describe('figures of a patch', () => {
  test('the reach each way ends at its border, and names what is broken beyond', () => {
    for (const { reach_m, direction_rad, endedBy } of reachesOf(patch)) {
      expect(reach_m).toBeGreaterThan(0.1);
      expect(endedBy).toBeDefined();
      expect(reachOf(patch, direction_rad).reach_m).toBe(reach_m);
    }
  });

  test('the corners of the box are kept by the whole check', () => {
    const { findings } = evaluate(PLAN);
    const box = patchBoxOf(patch, 0);
    expect((box.minus1_m + box.plus1_m) * (box.minus2_m + box.plus2_m)).toBeGreaterThan(0.5);
    for (const x of [-box.minus1_m, box.plus1_m]) {
      for (const y of [-box.minus2_m, box.plus2_m]) {
        expect(stoppedAt(PLAN, N1, stopKeys(findings, 'n1'), 0, { x: patch.at.x + 0.999 * x, y: patch.at.y + 0.999 * y }, patch.at.z)).toEqual([]);
      }
    }
  });

  test('lengths are cut to the tape on the safe side', () => {
    expect(tapeDown_m(0.0127 + 0.0015, 'feet')).toBeCloseTo(0.0127, 9);
    expect(tapeUp_m(1.2341, 'metric')).toBeCloseTo(1.235, 9);
    expect(tapeDown_m(0.254, 'feet')).toBeCloseTo(0.254, 9);
  });

  test('tried with every rule it stays what it is here, where no other rule breaks', () => {
    const proven = provenPatch(derived, N1);
    expect(proven.isKnown && proven.parts.flat(2).length).toBe(patch.parts.flat(2).length);
  });
});

describe('heights', () => {
  test('at the ends nothing new breaks, a millimetre beyond something is', () => {
    const before = stopKeys(evaluate(PLAN).findings, '');
    const heights = nozzleHeights(PLAN, N1, { ceiling_m: 2.7, drop_m: 0.3048 });
    expect(heights).toMatchObject({ drawn_m: 2.5 });
    const stops = (z: number): boolean => {
      const outcome = setNozzleHeight(N1, z)(PLAN);
      return !outcome.ok || evaluate(outcome.next).findings.some((each) => isNews(each, before));
    };
    expect(stops(heights?.least_m ?? 0)).toBe(false);
    expect(stops(heights?.greatest_m ?? 0)).toBe(false);
    expect(stops((heights?.least_m ?? 0) - 0.001)).toBe(true);
    expect(stops((heights?.greatest_m ?? 0) + 0.001)).toBe(true);
  });

  test('a rail that is not set and a pipe that stands upright have none', () => {
    expect(railHeights(PLAN, { kind: 'cylinder', network: 'net', id: 'cy1' })).toBeUndefined();
    expect(pipeHeights(PLAN, { kind: 'pipe', network: 'net', id: 'p3' })).toBeUndefined();
  });
});

describe('turns', () => {
  test('a nozzle away from corners and walls turns until its coverage leaves floor bare', () => {
    const range = turnRangeOf(site);
    expect(range).not.toBeNull();
    // 9 × 8 m over 6 × 4 m, nozzle in its middle: turned by a quarter it still covers all, in between as well.
    expect((range?.to_rad ?? 0) - (range?.from_rad ?? 0)).toBeCloseTo(2 * Math.PI, 6);
  });
});

describe('margin map', () => {
  test('at the drawn place it is the margin that the check finds', () => {
    const { findings } = evaluate(PLAN);
    for (const rule of ['N1', 'N7'] as const) {
      const finding = findings.find((each) => each.rule === rule);
      expect(marginAt(site, rule, patch, site.at)).toBeCloseTo(finding?.margin ?? Number.NaN, 9);
    }
    const drop = findings.find(({ rule }) => rule === 'N2');
    expect(marginAt(site, 'N2', patch, site.at)).toBeCloseTo(Math.min(drop?.margin ?? 0, drop?.measured ?? 0), 9);
  });

  test('for all rules it is the way to the border: above 0 within, below 0 outside', () => {
    expect(marginAt(site, 'all', patch, site.at)).toBeGreaterThan(0);
    expect(marginAt(site, 'all', patch, { x: 0.05, y: 0.05 })).toBeLessThan(0);
    expect(marginAt(site, 'all', undefined, site.at)).toBeUndefined();
  });

  test('grids come coarse first and can be dropped after every row', () => {
    const fields = [...marginFields(site, 'N1', undefined)];
    const grids = fields.filter((each) => each !== null);
    expect(fields.filter((each) => each === null).length).toBeGreaterThan(grids.length);
    expect(grids.map((each) => each?.step_m)).toEqual([0.4, 0.2, 0.1, 0.05]);
  });
});

describe('tracing', () => {
  test('finds the border of a question to a millimetre, straight or round, and errs to the small side', () => {
    const square = [rectangle(1, 1)];
    const half = momentsOf(tracedWithin(square, ({ x, y }) => x + y <= 1, { box_m: 0.1 })).area_m2;
    expect(half).toBeLessThanOrEqual(0.5);
    expect(half).toBeGreaterThan(0.5 - Math.SQRT2 * 0.0015);
    const quarter = momentsOf(tracedWithin(square, ({ x, y }) => Math.hypot(x, y) <= 0.8, { box_m: 0.1 })).area_m2;
    expect(quarter).toBeLessThanOrEqual(Math.PI * 0.16);
    expect(quarter).toBeGreaterThan(Math.PI * 0.16 - 0.4 * Math.PI * 0.0015);
    expect(tracedWithin(square, () => true, { box_m: 0.1 })).toBe(square);
    expect(tracedWithin(square, () => false, { box_m: 0.1 })).toEqual([]);
  });

  test('the last value kept is found by strides, then by halving', () => {
    expect(lastKept((value) => value <= 0.337, 1, 1e-6)).toBeCloseTo(0.337, 5);
    expect(lastKept(() => true, 1, 1e-6, 0.3)).toBe(1);
    expect(lastKept(() => false, 1, 1e-6)).toBeUndefined();
    // A gap between two kept values is met by a stride short enough.
    expect(lastKept((value) => value < 0.2 || value > 0.4, 1, 1e-6, 0.1)).toBeCloseTo(0.2, 5);
  });
});

test('the command is what is followed: a nozzle really moved to the border stands there', () => {
  const outcome = moveNozzle(N1, { x: 3.2, y: 2, z: 2.5 })(PLAN);
  expect(outcome.ok && derivePlan(outcome.next).nozzles[0]?.at).toMatchObject({ x: 3.2, y: 2, z: 2.5 });
});
