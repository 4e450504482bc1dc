import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { orderFaults, wantedParts } from '#shared/derived/assembly-order';
import { assemblyRunOf } from '#shared/derived/assembly-run';
import { derivePlan } from '#shared/derived/derive-plan';
import { trappedStretches } from '#shared/derived/trapped-stretches';
import type { AssemblyPart } from '#shared/model/plan';
import { ALONE, type AssemblySpec, SEVERAL, assemblyPlan, part } from '../../support/assembly-layout.ts';
import { anyPlacing, at3 } from '../../support/layout.ts';

function runOf(spec: AssemblySpec) {
  const [network] = derivePlan(assemblyPlan(spec)).networks;
  if (!network) throw new Error('The plan has its network.');
  return assemblyRunOf(network);
}
const parts = (...kinds: AssemblyPart['kind'][]): AssemblyPart[] => kinds.map((kind, i) => ({ ...part(kind), id: `${i}` }));

describe('the discharge assembly in space', () => {
  test('of one cylinder: the hose on its curve, the valves behind it up to where the pipe begins', () => {
    const { pieces, hoses, gaps, missing, isPlaced } = runOf(ALONE);
    expect(pieces.map(({ part: { kind }, zone }) => [kind, zone])).toEqual([['hose', 'high'], ['check-valve', 'high'], ['regulator', 'high']]);
    expect(pieces.at(-1)?.to).toEqual({ x: expect.closeTo(0.2, 9), y: expect.closeTo(1, 9), z: expect.closeTo(1.82, 9) });
    const curve = pieces[0]?.curve ?? [];
    expect(curve[0]).toEqual({ x: 0.2, y: 1, z: 1.5 });
    expect(curve.at(-1)).toEqual({ x: expect.closeTo(0.2, 6), y: expect.closeTo(0.75, 6), z: expect.closeTo(1.82, 6) });
    // By hand: an S of 0.25 m forward and a half turn of radius 0.15 whose centre is 0.17 under the end; about 0.25 + 0.02 + 0.47.
    expect(hoses.get('cy1')?.needed_m).toBeGreaterThan(0.72);
    expect(hoses.get('cy1')?.needed_m).toBeLessThan(0.76);
    expect({ gaps, missing, isPlaced }).toEqual({ gaps: [], missing: [], isPlaced: true });
  });

  test('of several: what stands before the manifold once for each, the rest once', () => {
    const { pieces, gaps, missing, isPlaced } = runOf(SEVERAL);
    expect(pieces.map(({ part: { kind }, cylinder }) => `${cylinder ?? 'all'} ${kind}`)).toEqual(['cy1 hose', 'cy1 check-valve', 'cy2 hose', 'cy2 check-valve', 'cy3 hose', 'cy3 check-valve', 'all manifold', 'all regulator']);
    expect({ gaps, missing, isPlaced }).toEqual({ gaps: [], missing: [], isPlaced: true });
  });

  test('behind the regulator the pressure is low', () => {
    const { pieces } = runOf({ ...ALONE, parts: [...(ALONE.parts ?? []), part('adapter', 0)] });
    expect(pieces.at(-1)?.zone).toBe('low');
  });

  test.each([
    ['a regulator that is 40 mm shorter', { ...ALONE, parts: [part('hose', 0.8), part('check-valve', 0.1), part('regulator', 0.11)] }, [['short', 'pipe', 0.04]]],
    ['one that is 40 mm longer', { ...ALONE, parts: [part('hose', 0.8), part('check-valve', 0.1), part('regulator', 0.19)] }, [['beyond', 'pipe', 0.04]]],
    ['one that is 2 mm longer, which a thread makes up', { ...ALONE, parts: [part('hose', 0.8), part('check-valve', 0.1), part('regulator', 0.152)] }, []],
    ['check valves that are 50 mm short of the manifold', { ...SEVERAL, parts: [part('hose', 0.45), part('check-valve', 0.05), part('manifold', 1.2), part('regulator', 0.15)] }, [['short', 'manifold', 0.05], ['short', 'manifold', 0.05], ['short', 'manifold', 0.05]]],
    ['a manifold that is listed 0.3 m shorter', { ...SEVERAL, parts: [part('hose', 0.45), part('check-valve', 0.1), part('manifold', 0.9), part('regulator', 0.15)] }, [['drawn', 'manifold', 0.3]]],
  ])('says what does not add up: %s', (_, spec, gaps) => {
    expect(runOf(spec).gaps.map(({ kind, before, off_m }) => [kind, before, off_m])).toEqual(gaps.map(([kind, before, off_m]) => [kind, before, expect.closeTo(Number(off_m), 9)]));
  });

  test.each([
    ['the outlet', { ...ALONE, cylinders: [{ y: 1, outlet_rad: null, end: at3(0.2, 0.75, 1.82) }] }, 'Which way the outlet of cylinder C1 points is not known.'],
    ['the end of a hose', { ...ALONE, cylinders: [{ y: 1, outlet_rad: 0, end: null }] }, 'Where the hose of cylinder C1 ends is not known.'],
    ['a length', { ...ALONE, parts: [part('hose', 0.8), part('check-valve', 0), part('regulator', 0.15)] }, 'The length of “check-valve” is not entered.'],
    ['the outlet height', { ...ALONE, limits: { outletHeight_m: null } }, 'The height of the valve outlet is blank in the unit profile.'],
    ['the source', { ...ALONE, source: null }, 'Where the pipe begins is not chosen.'],
    ['the manifold', { ...SEVERAL, manifold: null }, 'Where the manifold runs is not known.'],
    ['any part', { ...ALONE, parts: [] }, 'No part of the discharge assembly is listed.'],
  ])('says what is missing: %s', (_, spec, sentence) => {
    expect(runOf(spec).missing).toContain(sentence);
  });

  test('two clamps on each straight stretch that is long enough, a quarter of it in', () => {
    const { stretches } = runOf(SEVERAL);
    expect(stretches.map(({ cylinder, lie, clamps }) => [cylinder, lie, clamps.length])).toEqual([['cy1', 'upright', 0], ['cy2', 'upright', 0], ['cy3', 'upright', 0], [null, 'level', 2]]);
    // From 0.65 to 2: manifold and regulator in one line.
    expect(stretches.at(-1)?.clamps.map(({ y }) => y)).toEqual([expect.closeTo(0.9875, 9), expect.closeTo(1.6625, 9)]);
  });

  test('turned, shifted and mirrored it takes the same hose', () => {
    const needed_m = runOf(ALONE).hoses.get('cy1')?.needed_m ?? 0;
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const { hoses, gaps } = runOf({ ...ALONE, placing });
        expect(hoses.get('cy1')?.needed_m).toBeCloseTo(needed_m, 5);
        expect(hoses.get('cy1')?.slack_m).toBe(0);
        expect(gaps).toEqual([]);
      }),
      { numRuns: 12 },
    );
  });
});

describe('stretches in which agent can be shut in', () => {
  const found = (assembly: AssemblyPart[]) => trappedStretches(assembly).map(({ from, to, hasRelief }) => [from?.kind ?? 'cylinder', to.kind, hasRelief]);
  test.each([
    ['none without a stop valve', parts('hose', 'check-valve', 'manifold', 'regulator'), []],
    ['check valve to stop valve', parts('hose', 'check-valve', 'manifold', 'stop-valve'), [['check-valve', 'stop-valve', false]]],
    ['with a relief valve between', parts('check-valve', 'relief-valve', 'stop-valve'), [['check-valve', 'stop-valve', true]]],
    ['a relief valve before or behind does not count', parts('relief-valve', 'check-valve', 'stop-valve', 'relief-valve'), [['check-valve', 'stop-valve', false]]],
    ['two stop valves', parts('check-valve', 'relief-valve', 'stop-valve', 'regulator', 'stop-valve'), [['check-valve', 'stop-valve', true], ['stop-valve', 'stop-valve', false]]],
    ['cylinder valve to stop valve', parts('hose', 'stop-valve'), [['cylinder', 'stop-valve', false]]],
  ])('%s', (_, assembly, stretches) => {
    expect(found(assembly)).toEqual(stretches);
  });
  test('a check valve turned about shuts what comes', () => {
    expect(found(parts('hose', 'check-valve').map((each) => ({ ...each, arrowDownstream: each.kind !== 'check-valve' })))).toEqual([['cylinder', 'check-valve', false]]);
  });
});

describe('the order of the manual', () => {
  const order = ['hose', 'check-valve', 'manifold', 'regulator'] as const;
  const faults = (count: number, ...kinds: AssemblyPart['kind'][]) => orderFaults(order, { assembly: parts(...kinds), cylinders: assemblyPlan(count > 1 ? SEVERAL : ALONE).networks.net?.cylinders ?? {} }).map(({ text }) => text);
  test.each([
    ['one cylinder needs no manifold', 1, ['hose', 'check-valve', 'regulator'], []],
    ['and may have one', 1, ['hose', 'check-valve', 'manifold', 'regulator'], []],
    ['several need it', 3, ['hose', 'check-valve', 'regulator'], ['It lacks a manifold, which the manual lists.']],
    ['a part that lacks', 1, ['hose', 'regulator'], ['It lacks a check valve, which the manual lists.']],
    ['a part too many', 1, ['hose', 'check-valve', 'stop-valve', 'regulator'], ['It has a stop valve, which the manual does not list.']],
    ['one twice', 1, ['hose', 'check-valve', 'check-valve', 'regulator'], ['It has more than one check valve, where the manual lists 1.']],
    ['two changed over', 1, ['hose', 'regulator', 'check-valve'], ['After the hose the manual has the check valve; here it is the regulator.']],
    ['a wrong beginning', 1, ['check-valve', 'hose', 'regulator'], ['First of all the manual has the hose; here it is the check valve.']],
  ] as const)('%s', (_, count, kinds, texts) => {
    expect(faults(count, ...kinds)).toEqual(texts);
  });
  test('what is wanted of one cylinder leaves the manifold out', () => {
    expect(wantedParts(order, { assembly: parts('hose'), cylinders: {} })).toEqual(['hose', 'check-valve', 'regulator']);
  });
});
