import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { pipeOutside_m } from '#shared/profile/pipe-table';
import { applyCure } from '#shared/commands/apply-cure';
import { p27Clash as rule } from '#shared/rules/pipe/p27-clash';
import { buildDemo } from '../../../../src-main/demos/build-demo.ts';
import { type LayoutSpec, anyPlacing, at3, check, checkOne, layout, placedLayout } from '../../../support/layout.ts';

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
    const ceilingVoid = { depth_m: 0.5, isProtected: true, exclusion: null };
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

describe('P27 of walls, floor and insulation', () => {
  // The room of 6 × 4 m; nothing is drawn behind its walls, which count as 8 in (0.2032 m) thick then.
  const pipe = (...places: readonly [number, number, number][]): LayoutSpec => ({ cylinders: 0, runs: [{ places: places.map(([x, y, z]) => at3(x, y, z)), size: '1-1/4' }], limits: { pipeClearance_m: LIMIT_m } });
  const worst = (spec: LayoutSpec) => check(rule, layout(spec))[0];

  test.each([
    ['along a wall, as far off it as is wanted', pipe([1, LIMIT_m + RADIUS_m, 1], [5, LIMIT_m + RADIUS_m, 1]), 'ok'],
    ['nearer', pipe([1, 0.02 + RADIUS_m, 1], [5, 0.02 + RADIUS_m, 1]), 'warn'],
    ['along it with its axis on the face', pipe([1, 0, 1], [5, 0, 1]), 'stop'],
    ['along it inside the wall', pipe([1, -0.1, 1], [5, -0.1, 1]), 'stop'],
    ['upright inside the wall', pipe([3, -0.1, 0.5], [3, -0.1, 2]), 'stop'],
    ['upright in the corner behind two walls', pipe([-0.1, -0.1, 0.5], [-0.1, -0.1, 2]), 'stop'],
    ['square through it', pipe([3, 1, 1], [3, -1, 1]), 'ok'],
    ['square through it from outside, in two pieces that meet in it', pipe([3, -1, 1], [3, -0.1, 1], [3, 1, 1]), 'ok'],
    ['through it 25° off the square', pipe([3, 1, 1], [3 + 2 * Math.tan(0.436), -1, 1]), 'ok'],
    ['through it 35° off the square', pipe([3, 1, 1], [3 + 2 * Math.tan(0.611), -1, 1]), 'stop'],
    ['ending in it', pipe([3, 1, 1], [3, -0.1, 1]), 'stop'],
    ['turning in it', pipe([3, 1, 1], [3, -0.1, 1], [5, -0.1, 1]), 'stop'],
    ['ending close before it', pipe([3, 1, 1], [3, 0.03, 1]), 'warn'],
    ['upright through the slab', pipe([3, 2, 1], [3, 2, -1]), 'ok'],
    ['lying in the slab', pipe([1, 2, -0.05], [5, 2, -0.05]), 'stop'],
    ['lying on it', pipe([1, 2, RADIUS_m], [5, 2, RADIUS_m]), 'warn'],
    ['slanting into the slab', pipe([1, 2, 1], [5, 2, -1]), 'stop'],
    ['ending in it', pipe([3, 2, 1], [3, 2, -0.1]), 'stop'],
    ['through a raised floor and along in its void', { ...pipe([3, 2, 1], [3, 2, -0.2], [5, 2, -0.2]), underFloor: { depth_m: 0.4, isProtected: true, exclusion: null } }, 'ok'],
    ['through the slab below the void, lying there', { ...pipe([1, 2, -0.45], [5, 2, -0.45]), underFloor: { depth_m: 0.4, isProtected: true, exclusion: null } }, 'stop'],
    ['upright through the slab above', pipe([3, 2, 2], [3, 2, 3.5]), 'ok'],
    ['ending in the slab above', pipe([3, 2, 2], [3, 2, 2.75]), 'stop'],
  ] satisfies [string, LayoutSpec, string][])('%s', (_, spec, verdict) => {
    expect(worst(spec)?.verdict).toBe(verdict);
  });

  test('wherever the building stands, the verdict is the same', () => {
    const some: [LayoutSpec, string][] = [
      [pipe([3, 1, 1], [3, -1, 1]), 'ok'],
      [pipe([1, -0.1, 1], [5, -0.1, 1]), 'stop'],
      [pipe([1, 0.02 + RADIUS_m, 1], [5, 0.02 + RADIUS_m, 1]), 'warn'],
    ];
    fc.assert(
      fc.property(anyPlacing, fc.constantFrom(...some), (placing, [spec, verdict]) => {
        expect(check(rule, placedLayout(spec, placing))[0]?.verdict).toBe(verdict);
      }),
      { numRuns: 40 },
    );
  });

  test('a room drawn behind a wall says how thick it is: pipe close behind it clashes with neither, pipe in it does', () => {
    const plan = layout(pipe([1, -0.05, 1], [5, -0.05, 1]));
    const [level] = Object.values(plan.levels);
    const [room] = Object.values(level?.enclosures ?? {});
    if (!level || !room) throw new Error('The layout has a room.');
    const behind = (thick_m: number) => structuredClone({ ...room, id: 'e2', name: 'Corridor', outline: room.outline.map((corner) => ({ ...corner, id: `b${corner.id}`, y: corner.y - 4 - thick_m })) });
    level.enclosures.e2 = behind(0.15);
    expect(check(rule, plan)[0]).toMatchObject({ verdict: 'stop', text: expect.not.stringContaining('taken as') });
    level.enclosures.e2 = behind(0.15);
    for (const node of Object.values(plan.networks.net?.nodes ?? {})) node.at.y = -0.15 - LIMIT_m - RADIUS_m;
    expect(check(rule, plan)[0]?.verdict).toBe('ok');
    delete level.enclosures.e2;
    expect(check(rule, plan)[0]).toMatchObject({ verdict: 'stop', text: expect.stringContaining('taken as') });
  });

  test('insulation adds to the outside', () => {
    const plan = layout(under(0.03));
    const [each] = Object.values(plan.networks.net?.pipes ?? {});
    if (!each) throw new Error('The layout has a pipe.');
    expect(checkOne(rule, plan).verdict).toBe('ok');
    each.insulation_m = 0.02;
    expect(checkOne(rule, plan)).toMatchObject({ verdict: 'warn', measured: expect.closeTo(0.01, 9) });
    each.insulation_m = 0.04;
    expect(checkOne(rule, plan).verdict).toBe('stop');
  });

  test.each(['F1', 'F2', 'F3'] as const)('demo %s keeps clear', async (demo) => {
    expect(check(rule, (await buildDemo(demo)).plan).filter((finding) => finding.verdict !== 'ok').map(({ text }) => text)).toEqual([]);
  });
});

describe('P27 cured by another height', () => {
  /** A main with a drop to a nozzle, and a riser to it from below; a beam above or a duct in its way. */
  const main = (bottom_m: number, top_m: number, more: LayoutSpec['obstructions'] = []): LayoutSpec => ({
    cylinders: 0,
    runs: [{ places: [at3(1, 2, 1), at3(1, 2, 2.3), at3(3, 2, 2.3), at3(5, 2, 2.3), at3(5, 2, 1.9)], size: '1-1/4' }],
    nozzles: [{ at: at3(5, 2, 1.9) }],
    obstructions: [{ kind: 'beam', footprint: rectangle(0.3, 4, planPoint(4, 0)).map(({ x, y }) => ({ x, y })), bottom_m, top_m }, ...more],
    limits: { pipeClearance_m: LIMIT_m },
  });
  const cured = (spec: LayoutSpec) => {
    const plan = layout(spec);
    const finding = check(rule, plan).find(({ verdict }) => verdict !== 'ok');
    if (!finding?.cure) throw new Error('There is a clash with a cure.');
    if (finding.cure.kind !== 'set-pipe-height') return { cure: finding.cure, z_m: undefined, left: undefined };
    const outcome = applyCure(finding.cure)(plan);
    if (!outcome.ok) throw new Error(outcome.reason);
    return { cure: finding.cure, z_m: finding.cure.z_m, left: check(rule, outcome.next).filter(({ verdict }) => verdict !== 'ok').length };
  };

  test.each([
    ['lowers it below a beam just above', main(2.3 + RADIUS_m, 2.7), 2.3 - LIMIT_m],
    ['raises it over a duct just below', main(1.5, 2.3 - RADIUS_m), 2.3 + LIMIT_m],
    ['lowers it out of a beam that it runs into', main(2.31, 2.7), 2.31 - RADIUS_m - LIMIT_m],
  ])('%s', (_, spec, z_m) => {
    const { z_m: found_m, left } = cured(spec);
    expect(left).toBe(0);
    // In whole steps of 5 mm, and no more than it takes.
    expect(Math.abs((found_m ?? Number.NaN) - 2.3)).toBeGreaterThanOrEqual(Math.abs(z_m - 2.3) - 1e-9);
    expect(Math.abs((found_m ?? Number.NaN) - 2.3)).toBeLessThan(Math.abs(z_m - 2.3) + 0.005);
  });

  test('does not run into the next thing: it goes the other way, or says that no height does', () => {
    const duct = { kind: 'duct' as const, footprint: rectangle(0.3, 4, planPoint(2, 0)).map(({ x, y }) => ({ x, y })), bottom_m: 1.5, top_m: 2.3 - RADIUS_m - LIMIT_m };
    const low = main(2.3 + RADIUS_m, 2.33, [duct]);
    expect(cured(low)).toMatchObject({ left: 0 });
    expect(cured(low).z_m).toBeGreaterThan(2.36);
    expect(cured(main(2.3 + RADIUS_m, 2.7, [duct])).cure).toMatchObject({ kind: 'advice' });
  });

  test('a run with a nozzle or the begin of the pipe on it stays where it is', () => {
    expect(cured({ ...main(2.31, 2.7), runs: [{ places: [at3(1, 2, 2.3), at3(5, 2, 2.3)], size: '1-1/4' }], nozzles: [] }).cure.kind).toBe('advice');
  });

  test('whatever is around, a cure leaves its thing clear and makes no clash that was not there', () => {
    const mm = (min: number, max: number) => fc.integer({ min, max }).map((n) => n / 1000);
    const thing = fc.record({ x: mm(500, 5000), y: mm(500, 2500), z: mm(1900, 2500), height: mm(20, 300) });
    fc.assert(
      fc.property(fc.array(thing, { minLength: 1, maxLength: 5 }), (things) => {
        const spec: LayoutSpec = {
          ...main(2.69, 2.7),
          obstructions: things.map(({ x, y, z, height }) => ({ kind: 'duct' as const, footprint: rectangle(0.4, 1, planPoint(x, y)).map((p) => ({ x: p.x, y: p.y })), bottom_m: z, top_m: z + height })),
        };
        const plan = layout(spec);
        const before = check(rule, plan).filter(({ verdict }) => verdict !== 'ok');
        for (const { cure, subject, text } of before) {
          if (cure?.kind !== 'set-pipe-height') continue;
          const outcome = applyCure(cure)(plan);
          if (!outcome.ok) throw new Error(outcome.reason);
          const about = (words: string) => /Thing \d/.exec(words)?.[0];
          const key = (finding: { subject: { id: string }; text: string }) => `${finding.subject.id} ${about(finding.text)}`;
          const after = check(rule, outcome.next).filter(({ verdict }) => verdict !== 'ok');
          expect(after.map(key)).not.toContain(key({ subject, text }));
          expect(before.map(key)).toEqual(expect.arrayContaining(after.map(key)));
        }
      }),
      { numRuns: 100 },
    );
  });
});
