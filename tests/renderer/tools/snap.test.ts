import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type PlanPoint, distance_m } from '#shared/geometry/point';
import type { Plan } from '#shared/model/plan';
import { snapTo } from '../../../src-renderer/tools/snap.ts';
import { snapSources } from '../../../src-renderer/tools/snap-sources.ts';
import type { Anchors } from '../../../src-renderer/tools/tool.ts';
import { makeToolView } from '../../../src-renderer/tools/tool-view.ts';
import { indexUnderlay } from '../../../src-renderer/tools/underlay-index.ts';
import { startSession } from '../../../src-renderer/store/start-session.ts';
import type { Session } from '../../../src-renderer/store/state.ts';
import { lineDrawing } from '../../support/line-drawing.ts';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const session = startSession('test');
const built = planBuilder()
  .room(6, 4, 2.7)
  .opening(0, 2, 1)
  .obstruction('rack', [{ x: 3, y: 1 }, { x: 4, y: 1 }, { x: 4, y: 2 }, { x: 3, y: 2 }], 0, 2)
  .network()
  .cylinder(0.2, 3, Math.PI)
  .run([place3(0.2, 3, 2), place3(0.2, 3, 2.4), place3(3.5, 3, 2.4), place3(3.5, 3, 2.2)])
  .nozzle(3.5, 3, 2.2)
  .underlay();
const drawing = lineDrawing([
  [10, 0, 20, 0],
  [15, -5, 15, 5],
  [-0.03, -0.03, -0.03, 8],
]);
const underlay = Object.values(built.plan.levels['level-0']?.underlays ?? {}).map((each) => indexUnderlay(drawing, each));

interface Options {
  readonly grid_m?: number | null;
  readonly orthogonal?: boolean;
  readonly anchors?: Anchors;
  readonly session?: Partial<Session>;
  readonly plan?: Plan;
}
const snap = (x: number, y: number, { grid_m = null, orthogonal = false, anchors = {}, session: change = {}, plan = built.plan }: Options = {}) =>
  snapTo({ x, y }, 0.1, snapSources(plan, { ...session, ...change }, underlay, anchors.without), { grid_m, orthogonal }, anchors);

describe('what is caught, gravest first', () => {
  test.each([
    ['a corner before its walls', 6.05, 4.04, 'end', 6, 4],
    ['a nozzle before the pipe', 3.45, 3.04, 'node', 3.5, 3],
    ['a cylinder or pipe end', 0.24, 3.02, 'node', 0.2, 3],
    ['a jamb of an opening', 1.52, 0.03, 'end', 1.5, 0],
    ['a corner of an obstruction', 3.03, 1.02, 'end', 3, 1],
    ['the middle of a wall', 6.04, 2.03, 'midpoint', 6, 2],
    ['the middle of an opening', 2.04, 0.03, 'midpoint', 2, 0],
    ['a wall', 5.2, 0.06, 'on-line', 5.2, 0],
    ['a pipe', 1.2, 3.06, 'on-line', 1.2, 3],
    ['an end of a floor plan line', 10.03, 0.05, 'underlay', 10, 0],
    ['a crossing of floor plan lines', 15.06, 0.05, 'underlay', 15, 0],
    ['a floor plan line', 12.3, 0.05, 'underlay', 12.3, 0],
  ] as const)('%s', (_, x, y, kind, toX, toY) => {
    const caught = snap(x, y);
    expect(caught.kind).toBe(kind);
    expect(distance_m(caught.at, { x: toX, y: toY })).toBeLessThan(1e-9);
  });

  test('a crossing of a wall with a floor plan line before either line', () => {
    expect(snap(-0.05, 7.9)).toMatchObject({ kind: 'underlay' });
    const plan = planBuilder().room(6, 4, 2.7, { x: -3, y: 1 }).underlay().plan;
    const caught = snap(-0.07, 1.05, { plan });
    expect(caught).toMatchObject({ kind: 'intersection', at: { x: expect.closeTo(-0.03, 9), y: expect.closeTo(1, 9) } });
  });

  test('of a corner and a floor plan end the nearer one, the corner when they fall together', () => {
    expect(snap(-0.05, -0.05).kind).toBe('underlay');
    expect(snap(0.02, 0.01).kind).toBe('end');
  });

  test('the foot of the perpendicular from the last place', () => {
    const caught = snap(5.05, 0.04, { anchors: { from: { x: 5, y: 3.3 }, isFree: true } });
    expect(caught).toMatchObject({ kind: 'perpendicular', at: { x: 5, y: 0 } });
    expect(caught.guides).toEqual([{ a: { x: 5, y: 3.3 }, b: { x: 5, y: 0 } }]);
  });

  test('a level or upright line in steps of the grid, as far as it goes', () => {
    expect(snap(5.23, 0.06, { grid_m: 0.25 })).toMatchObject({ kind: 'on-line', at: { x: 5.25, y: 0 } });
    expect(snap(6.05, 1.17, { grid_m: 0.25 })).toMatchObject({ kind: 'on-line', at: { x: 6, y: 1.25 } });
    const turned = planBuilder().outline([{ x: 0, y: 0 }, { x: 6, y: 2 }, { x: 0, y: 2 }], 2.7).plan;
    const { at, kind } = snap(4.53, 1.51, { grid_m: 0.25, plan: turned });
    expect(kind).toBe('on-line');
    expect(at.x / at.y).toBeCloseTo(3, 9);
    expect(Math.abs(at.x - 4.53)).toBeLessThan(0.05);
  });

  test('the grid where nothing else is near, and nothing without it', () => {
    expect(snap(8.13, 2.62, { grid_m: 0.5 })).toMatchObject({ kind: 'grid', at: { x: 8, y: 2.5 } });
    expect(snap(8.13, 2.62)).toMatchObject({ kind: 'free', at: { x: 8.13, y: 2.62 } });
  });
});

describe('what is left out', () => {
  const hidden = (layer: keyof Session['layers'], change: Partial<Session['layers']['pipes']>): Partial<Session> => ({ layers: { ...session.layers, [layer]: { visible: true, locked: false, ...change } } });

  test('a hidden layer catches nothing, a locked one still does', () => {
    expect(snap(6.05, 4.04, { session: hidden('enclosures', { visible: false }) }).kind).toBe('free');
    expect(snap(6.05, 4.04, { session: hidden('enclosures', { locked: true }) }).kind).toBe('end');
    expect(snap(12.3, 0.05, { session: hidden('underlays', { visible: false }) }).kind).toBe('free');
  });

  test('options switch the plan and the floor plan off', () => {
    expect(snap(6.05, 4.04, { session: { toolOptions: { ...session.toolOptions, snapPlan: false } } }).kind).toBe('free');
    expect(snap(12.3, 0.05, { session: { toolOptions: { ...session.toolOptions, snapUnderlay: false } } }).kind).toBe('free');
  });

  test('what is being moved does not catch itself', () => {
    const ref = { kind: 'nozzle', network: built.networkId, id: built.lastNozzle.id } as const;
    const nodes = [built.nodeAt(3.5, 3, 2.2), built.nodeAt(3.5, 3, 2.4)];
    expect(snap(3.45, 3.04, { anchors: { without: [ref, ...nodes] } }).kind).toBe('free');
  });

  test('another level catches nothing', () => {
    expect(snap(6.05, 4.04, { session: { level: 'elsewhere' } }).kind).toBe('free');
  });
});

describe('square lines', () => {
  const from = { x: 1, y: 1.5 };

  test('stay level or upright, whichever is nearer', () => {
    expect(snap(2.63, 1.9, { orthogonal: true, anchors: { from } }).at).toEqual({ x: 2.63, y: 1.5 });
    expect(snap(1.2, 2.63, { orthogonal: true, anchors: { from } }).at).toEqual({ x: 1, y: 2.63 });
  });

  test('end at a wall they cross, level with a corner near them, or level with an anchor', () => {
    expect(snap(5.95, 1.6, { orthogonal: true, anchors: { from } })).toMatchObject({ kind: 'intersection', at: { x: 6, y: 1.5 } });
    expect(snap(6.05, 0.5, { orthogonal: true, anchors: { from: { x: 1, y: 0.05 } } })).toMatchObject({ kind: 'end', at: { x: 6, y: 0.05 } });
    expect(snap(8.07, 1.6, { orthogonal: true, anchors: { from, align: [{ x: 8, y: 7 }] } })).toMatchObject({ kind: 'end', at: { x: 8, y: 1.5 }, guides: expect.arrayContaining([{ a: { x: 8, y: 7 }, b: { x: 8, y: 1.5 } }]) });
  });

  test('keep the grid along the line only', () => {
    expect(snap(8.13, 1.6, { orthogonal: true, grid_m: 0.5, anchors: { from: { x: 1, y: 1.37 } } })).toMatchObject({ kind: 'grid', at: { x: 8, y: 1.37 } });
  });

  test('a typed direction goes before them', () => {
    const axis_rad = Math.PI / 4;
    const { at } = snap(9.2, 8.8, { orthogonal: true, anchors: { from: { x: 7, y: 7 }, axis_rad } });
    expect(at.x - 7).toBeCloseTo(at.y - 7, 9);
  });

  test('Shift turns them over, Alt catches nothing', () => {
    const view = (shift: boolean, alt: boolean) => makeToolView({ plan: built.plan, session, underlays: [], derive: () => ({ plan: built.plan, levels: [], spaces: [], solids: [], networks: [], nozzles: [] }) }, { shift, alt });
    expect(view(false, false).snap({ x: 9.02, y: 8.5 }, 0.1, { from: { x: 8, y: 8 } }).at.y).toBe(8);
    expect(view(true, false).snap({ x: 9.02, y: 8.51 }, 0.1, { from: { x: 8, y: 8 } })).toMatchObject({ kind: 'grid' });
    expect(view(true, true).snap({ x: 6.03, y: 4.01 }, 0.1)).toMatchObject({ kind: 'free', at: { x: 6.03, y: 4.01 } });
  });
});

describe('for any place', () => {
  const near = fc.record({ x: fc.double({ min: -1, max: 21, noNaN: true }), y: fc.double({ min: -1, max: 5, noNaN: true }) });
  const anchors = fc.oneof(
    fc.constant<Anchors>({}),
    near.map((from): Anchors => ({ from })),
    fc.record({ from: near, axis_rad: fc.double({ min: 0, max: 6.28, noNaN: true }) }),
    fc.record({ from: near, align: fc.array(near, { maxLength: 3 }) }),
  );
  const options = fc.record({ orthogonal: fc.boolean(), grid_m: fc.constantFrom(null, 0.05, 0.1, 0.0762) });

  test('a caught place catches itself', () => {
    fc.assert(
      fc.property(near, anchors, options, (raw, anchor, option) => {
        const first = snap(raw.x, raw.y, { ...option, anchors: anchor });
        const again = snap(first.at.x, first.at.y, { ...option, anchors: anchor });
        expect(distance_m(first.at, again.at)).toBeLessThan(1e-6);
      }),
      { numRuns: 3000 },
    );
  });

  test('a catch without grid or lock stays within two reaches', () => {
    fc.assert(
      fc.property(near, (raw: PlanPoint) => {
        expect(distance_m(snap(raw.x, raw.y).at, raw)).toBeLessThan(0.25);
      }),
    );
  });
});
