import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { pipeOutside_m } from '#shared/profile/pipe-table';
import { p27Clash as rule } from '#shared/rules/pipe/p27-clash';
import { anyPlacing, at3, check, checkOne, layout, placedLayout } from '../../../support/layout.ts';

// 1 in: common practice.
const LIMIT_m = 0.0254;
const RADIUS_m = pipeOutside_m('1-1/4') / 2;
/** A pipe at 2.0 m passing below a beam whose soffit leaves the given gap above the pipe. */
const under = (gap_m: number) => ({
  runs: [{ places: [at3(1, 2, 2), at3(5, 2, 2)], size: '1-1/4' as const }],
  obstructions: [
    { kind: 'beam' as const, footprint: rectangle(0.3, 4, planPoint(3, 0)).map(({ x, y }) => ({ x, y })), bottom_m: 2 + RADIUS_m + gap_m, top_m: 2.7 },
  ],
  limits: { pipeClearance_m: LIMIT_m },
});

describe('P27', () => {
  test.each([
    ['on the limit', 0.0254, 'ok'],
    ['just clear', 0.026, 'ok'],
    ['just too close', 0.025, 'warn'],
    ['touching', 0, 'warn'],
    ['a hair into the beam', -0.0001, 'stop'],
    ['through the beam', -0.05, 'stop'],
  ])('%s', (_, gap_m, verdict) => {
    const finding = checkOne(rule, layout(under(gap_m)));
    expect(finding.verdict).toBe(verdict);
    if (gap_m >= 0) expect(finding.measured).toBeCloseTo(gap_m, 9);
  });

  test('wherever the building stands, the verdict is the same', () => {
    fc.assert(
      fc.property(anyPlacing, fc.constantFrom(0.0253, 0.0254, 0.0255), (placing, gap_m) => {
        expect(checkOne(rule, placedLayout(under(gap_m), placing)).verdict).toBe(gap_m < LIMIT_m ? 'warn' : 'ok');
      }),
      { numRuns: 50 },
    );
  });

  test('a blank limit is not checked, but a clash is still a stop', () => {
    expect(checkOne(rule, layout({ ...under(0.01), limits: { pipeClearance_m: null } })).verdict).toBe('not-checked');
    expect(checkOne(rule, layout({ ...under(-0.01), limits: { pipeClearance_m: null } })).verdict).toBe('stop');
  });
});

describe('P27 of the ceiling', () => {
  const run = (z_m: number, enclosure: NonNullable<Parameters<typeof layout>[0]['enclosure']> = {}) =>
    layout({ runs: [{ places: [at3(1, 2, z_m), at3(5, 2, z_m)], size: '1-1/4' }], height_m: 2.7, enclosure, limits: { pipeClearance_m: LIMIT_m } });

  test.each([
    ['on the limit below it', 2.7 - RADIUS_m - LIMIT_m, 'ok'],
    ['just too close', 2.7 - RADIUS_m - LIMIT_m + 0.0005, 'warn'],
    ['touching it', 2.7 - RADIUS_m, 'warn'],
    ['a hair into it', 2.7 - RADIUS_m + 0.0001, 'stop'],
    ['above it', 4, 'stop'],
  ])('%s', (_, z_m, verdict) => {
    const finding = checkOne(rule, run(z_m));
    expect(finding.verdict).toBe(verdict);
    expect(finding.text).toContain('ceiling of Room');
  });

  test('a suspended ceiling may be passed, what is above its void may not', () => {
    const ceilingVoid = { depth_m: 0.5, isProtected: true };
    expect(checkOne(rule, run(2.9, { ceilingVoid })).verdict).toBe('ok');
    expect(checkOne(rule, run(3.2, { ceilingVoid }))).toMatchObject({ verdict: 'stop', text: expect.stringContaining('top of the ceiling void of Room') });
  });

  test('a lower zone and a slope count where the pipe runs', () => {
    const zone = (x: number, height_m: number) => ({ ceilingZones: { z1: { id: 'z1', name: 'Soffit', outline: rectangle(1, 4, planPoint(x, 0)).map(({ x: east, y }) => ({ x: east, y })), height_m } } });
    expect(checkOne(rule, run(2.5, zone(3, 2.4))).verdict).toBe('stop');
    expect(checkOne(rule, run(2.5, zone(3, 2.6))).verdict).toBe('ok');
    expect(checkOne(rule, run(2.2, { slope: { at: { x: 0, y: 2 }, direction_rad: 0, rise: -0.1 } })).verdict).toBe('stop');
    expect(checkOne(rule, run(2.1, { slope: { at: { x: 0, y: 2 }, direction_rad: 0, rise: -0.1 } })).verdict).toBe('ok');
  });

  test('a raised part of the ceiling lets pipe up into it', () => {
    const coffer = { ceilingZones: { z1: { id: 'z1', name: 'Coffer', outline: rectangle(5, 2, planPoint(0.5, 1)).map(({ x, y }) => ({ x, y })), height_m: 3.2 } } };
    expect(checkOne(rule, run(3, coffer)).verdict).toBe('ok');
    expect(checkOne(rule, run(3.3, coffer)).verdict).toBe('stop');
  });

  test('an unknown height is not checked', () => {
    const finding = checkOne(rule, layout({ runs: [{ places: [at3(1, 2, 2), at3(5, 2, 2)] }], height_m: null }));
    expect(finding).toMatchObject({ verdict: 'not-checked', text: 'Not checked: the height of the ceiling of Room is not known.' });
  });
});

test('P27 wants the greater clearance of two networks', () => {
  const plan = layout({ runs: [{ places: [at3(1, 2, 2), at3(5, 2, 2)], size: '1-1/4' }], limits: { pipeClearance_m: 0.01 } });
  const [profile] = Object.values(plan.profiles);
  const { net } = plan.networks;
  if (!profile || !net) throw new Error('The layout has a network with its profile.');
  plan.profiles.wide = { ...structuredClone(profile), id: 'wide', limits: { ...profile.limits, pipeClearance_m: { value: 0.05, source: 'test' } } };
  const other = structuredClone(net);
  for (const { at } of Object.values(other.nodes)) at.z = 2 + 2 * RADIUS_m + 0.03;
  plan.networks.other = { ...other, id: 'other', name: 'Second', profile: 'wide' };
  expect(check(rule, plan).map(({ verdict, limit, text }) => [verdict, limit, text.includes('of Second')])).toEqual([
    ['warn', 0.05, true],
    ['ok', 0.05, false],
  ]);
});

describe('P27 of several things', () => {
  const beam = (x: number, bottom_m: number) => ({ kind: 'beam' as const, footprint: rectangle(0.3, 4, planPoint(x, 0)).map(({ x: east, y }) => ({ x: east, y })), bottom_m, top_m: 2.6 });

  test('one finding for every thing at fault, the nearest first', () => {
    const plan = layout({ ...under(0.1), obstructions: [beam(2, 2 + RADIUS_m + 0.02), beam(4, 1.9), beam(3, 2.3)] });
    expect(check(rule, plan).map(({ verdict, text }) => [verdict, /Thing \d/.exec(text)?.[0]])).toEqual([
      ['stop', 'Thing 2'],
      ['warn', 'Thing 1'],
    ]);
  });

  test('two pipes that cross are one finding, of the first', () => {
    const crossing = (z_m: number) =>
      layout({ runs: [{ places: [at3(1, 2, 2), at3(5, 2, 2)], size: '1-1/4' }, { places: [at3(3, 1, z_m), at3(3, 3, z_m)], size: '1-1/4' }], limits: { pipeClearance_m: LIMIT_m } });
    const verdicts = (z_m: number) => check(rule, crossing(z_m)).map(({ verdict }) => verdict);
    expect(verdicts(2)).toEqual(['stop', 'ok']);
    expect(verdicts(2 + 2 * RADIUS_m)).toEqual(['warn', 'ok']);
    expect(verdicts(2 + 2 * RADIUS_m + LIMIT_m)).toEqual(['ok', 'ok']);
    expect(check(rule, crossing(2))[0]?.text).toContain('into the 1-1/4 in pipe beside it');
  });

  test('pipes that meet at a node, a support and a nozzle at the end are no clash', () => {
    const places = [at3(1, 2, 2), at3(3, 2, 2), at3(3, 2, 2.3)];
    const plan = layout({
      runs: [{ places, size: '1-1/4' }, { places: [at3(3, 2, 2), at3(5, 2, 2)] }],
      nozzles: [{ at: at3(5, 2, 2) }],
      network: { supports: { s1: { brace: 'none', id: 's1', at: at3(2, 2, 2), kind: 'rigid', capacity_N: null } } },
    });
    expect(check(rule, plan).map(({ verdict }) => verdict)).toEqual(['ok', 'ok', 'ok']);
  });
});
