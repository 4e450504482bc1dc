import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyCure } from '#shared/commands/apply-cure';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Network, Obstruction } from '#shared/model/plan';
import { p28WrenchRoom as rule } from '#shared/rules/pipe/p28-wrench-room';
import { buildDemo } from '../../../../src-main/demos/build-demo.ts';
import { type LayoutSpec, anyPlacing, at3, check, layout, placedLayout } from '../../../support/layout.ts';

const inch = 0.0254;
const thing = (width_m: number, depth_m: number, x: number, y: number, bottom_m = 0, top_m = 2.7): Pick<Obstruction, 'footprint' | 'bottom_m' | 'top_m' | 'kind'> => ({ kind: 'other', footprint: rectangle(width_m, depth_m, planPoint(x, y)).map((p) => ({ x: p.x, y: p.y })), bottom_m, top_m });
/** A run along y 2 with a coupling in its middle, at a height. */
const straight = (z: number, more: Partial<LayoutSpec> = {}): LayoutSpec => ({ runs: [{ places: [at3(1, 2, z), at3(3, 2, z), at3(5, 2, z)] }], ...more });
const coupled = (spec: LayoutSpec) => {
  const plan = layout(spec);
  const node = plan.networks.net?.nodes.k2;
  if (node) node.part = 'coupling';
  return plan;
};
const atFitting = (plan: Parameters<typeof check>[1]) => check(rule, plan).find(({ subject }) => subject.kind === 'node');
const degrees = (measured: number | undefined) => ((measured ?? Number.NaN) * 180) / Math.PI;

describe('P28 room for a wrench', () => {
  test('in the open it can be swung all round', () => {
    expect(degrees(atFitting(coupled(straight(2)))?.measured)).toBeCloseTo(360, 9);
  });

  // 6 in reach, a handle 1 in thick. A flat ceiling 4 in up stops it where 6 sin θ > 4 − 0.5: over 108.6° of the turn.
  test('4 in below a flat ceiling, free to the sides and below, it is kept', () => {
    const finding = atFitting(coupled(straight(2.7 - 4 * inch)));
    expect(finding?.verdict).toBe('ok');
    const free = 360 - 2 * (90 - (Math.asin(3.5 / 6) * 180) / Math.PI);
    expect(degrees(finding?.measured)).toBeLessThanOrEqual(free);
    expect(degrees(finding?.measured)).toBeGreaterThan(free - 10);
  });

  /** Walls on both sides of the run, as high as the room: the wrench swings only up and down between them. */
  const slot = (gap_m: number) => straight(1.5, { obstructions: [thing(4, 0.2, 1, 2 + gap_m), thing(4, 0.2, 1, 2 - gap_m - 0.2)] });
  test.each([
    [6.6, 'ok'],
    // Up and down each: 2 · asin((5 − 0.5) / 6) = 97° are free.
    [5, 'ok'],
    // 2 · asin((4 − 0.5) / 6) = 71°.
    [4, 'warn'],
    [2, 'warn'],
  ])('between two faces %d in off its axis: %s', (gap_in, verdict) => {
    expect(atFitting(coupled(slot(gap_in * inch)))).toMatchObject({ verdict });
  });

  test('what is in its way has a name', () => {
    expect(atFitting(coupled(slot(3 * inch)))?.text).toContain('Thing 1 and Thing 2 are in its way');
  });

  test('wherever the building stands, the verdict is the same', () => {
    const elbow: LayoutSpec = { runs: [{ places: [at3(1, 2, 1.5), at3(3, 2, 1.5), at3(3, 3.5, 1.5)] }] };
    const tight: LayoutSpec = { ...elbow, obstructions: [thing(4, 3, 0.5, 1, 1.5 + 3 * inch), thing(4, 3, 0.5, 1, 0, 1.5 - 3 * inch)] };
    fc.assert(
      fc.property(anyPlacing, fc.boolean(), (placing, isTight) => {
        expect(atFitting(placedLayout(isTight ? tight : elbow, placing))?.verdict).toBe(isTight ? 'warn' : 'ok');
      }),
      { numRuns: 30 },
    );
  });

  test('in the corner of walls, floor and slab: each of them counts', () => {
    // Upright in a corner of the room 2 in off both walls: a quarter turn into the room is left, less what the handle is thick.
    const corner = (off_m: number): LayoutSpec => ({ cylinders: 0, runs: [{ places: [at3(off_m, off_m, 1), at3(off_m, off_m, 1.5), at3(off_m, off_m, 2)] }] });
    expect(atFitting(coupled(corner(0.4 * inch)))?.verdict).toBe('warn');
    expect(atFitting(coupled(corner(4 * inch)))?.verdict).toBe('ok');
    // One inch off the slab on either side: about half a turn is left.
    for (const z of [2.7 - inch, inch]) expect(degrees(atFitting(coupled(straight(z)))?.measured)).toBeGreaterThan(90);
    for (const z of [2.7 - inch, inch]) expect(degrees(atFitting(coupled(straight(z)))?.measured)).toBeLessThan(215);
  });

  test('welded pipe needs no wrench', () => {
    const plan = coupled(slot(2 * inch));
    for (const pipe of Object.values(plan.networks.net?.pipes ?? {})) pipe.joint = 'welded';
    expect(check(rule, plan)).toEqual([]);
  });

  test.each(['F1', 'F2', 'F3'] as const)('demo %s keeps it', async (demo) => {
    expect(check(rule, (await buildDemo(demo)).plan).filter((finding) => finding.verdict !== 'ok').map(({ name, text }) => `${name}: ${text}`)).toEqual([]);
  });
});

describe('P28 the last joint', () => {
  const part = (kind: Network['assembly'][number]['kind']): Network['assembly'][number] => ({ id: kind, kind, name: kind, length_m: 0.1, setPressure_Pa: null, arrowDownstream: true });
  const elbow = (assembly: Network['assembly']) => layout({ runs: [{ places: [at3(1, 2, 2), at3(3, 2, 2), at3(3, 3, 2)] }], network: { assembly } });
  const last = (plan: Parameters<typeof check>[1]) => check(rule, plan).find(({ subject }) => subject.kind === 'network');

  test('a hose lets it be made up', () => {
    expect(last(elbow([part('hose'), part('check-valve')]))?.verdict).toBe('ok');
  });

  test('without hose it warns, and its cure puts a union in', () => {
    const plan = elbow([part('check-valve'), part('regulator')]);
    const finding = last(plan);
    expect(finding).toMatchObject({ verdict: 'warn', cure: { kind: 'insert-part', part: 'union' } });
    if (!finding?.cure) throw new Error('There is a cure.');
    const outcome = applyCure(finding.cure)(plan);
    if (!outcome.ok) throw new Error(outcome.reason);
    const union = Object.values(outcome.next.networks.net?.nodes ?? {}).find((node) => node.part === 'union');
    expect(union?.at).toMatchObject({ x: expect.closeTo(1 + 6 * inch, 9), y: 2, z: 2 });
    expect(Object.keys(outcome.next.networks.net?.pipes ?? {})).toHaveLength(3);
    expect(last(outcome.next)?.verdict).toBe('ok');
  });

  test('a union behind the first elbow is too late, pipe without any fitting turns itself in', () => {
    const late = layout({ runs: [{ places: [at3(1, 2, 2), at3(3, 2, 2), at3(3, 3, 2), at3(3, 3.5, 2)] }], network: { assembly: [part('regulator')] } });
    const node = late.networks.net?.nodes.k3;
    if (node) node.part = 'union';
    expect(last(late)?.verdict).toBe('warn');
    expect(last(layout({ runs: [{ places: [at3(1, 2, 2), at3(3, 2, 2)] }], nozzles: [{ at: at3(3, 2, 2) }], network: { assembly: [part('regulator')] } }))?.verdict).toBe('ok');
  });

  test('is not checked while nothing is entered of the discharge assembly', () => {
    expect(last(elbow([]))?.verdict).toBe('not-checked');
  });
});
