import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import type { Cylinder, Opening } from '#shared/model/plan';
import { RAIL_OVERHANG_m } from '#shared/elevation/elevation';
import { cylindersWithoutWall, elevationsOf } from '#shared/elevation/elevations-of';
import { buildDemo } from '../../../src-main/demos/build-demo.ts';
import { type LayoutSpec, type Placing, anyPlacing, at3, layout, placed, placedAngle_rad, placedLayout } from '../../support/layout.ts';

const HERE: Placing = { angle_rad: 0, dx: 0, dy: 0, isMirrored: false };
const FOOT_m = 0.3048;

/** Two cylinders 0.3 m wide at y 1 and 1.4 before the west wall of a room 6 by 4. */
function wall(change: Partial<Cylinder> = {}, spec: LayoutSpec = {}, placing = HERE) {
  const plan = placedLayout({ cylinders: 2, ...spec, limits: { cylinderDiameter_m: 0.3, outletHeight_m: 1.6, frontDepth_m: 0.8, ...spec.limits } }, placing);
  Object.values(plan.networks.net?.cylinders ?? {}).forEach((cylinder, i) => {
    Object.assign(cylinder, { railHeight_m: 1.2, restraints_m: [0.6], ...change, at: { ...placed({ x: 0.25, y: 1 + 0.4 * i }, placing) }, back_rad: placedAngle_rad(Math.PI, placing) });
  });
  return derivePlan(plan);
}
const only = (...given: Parameters<typeof wall>) => {
  const [elevation, ...more] = elevationsOf(wall(...given));
  if (!elevation || more.length > 0) throw new Error('The layout has one wall with cylinders.');
  return elevation;
};

describe('the wall behind the cylinders', () => {
  test('is measured from the corner that is nearer to them, as seen from the room', () => {
    const elevation = only();
    // Who looks west has south at the left: the corner (0, 0).
    expect(elevation).toMatchObject({ datum: 'left', frame: { length_m: 4 } });
    expect(elevation.cylinders.map(({ cylinder, at }) => [cylinder.name, Number(at.s.toFixed(6)), Number(at.off.toFixed(6))])).toEqual([
      ['C1', 1, 0.25],
      ['C2', 1.4, 0.25],
    ]);
  });

  test('turned and shifted it is the same drawing, mirrored it runs the other way', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const { cylinders, datum, frame } = only({}, {}, placing);
        expect(datum).toBe(placing.isMirrored ? 'right' : 'left');
        const fromDatum = cylinders.map(({ at }) => (placing.isMirrored ? frame.length_m - at.s : at.s)).sort((a, b) => a - b);
        expect(fromDatum[0]).toBeCloseTo(1, 6);
        expect(fromDatum[1]).toBeCloseTo(1.4, 6);
        expect(cylinders.every(({ at }) => Math.abs(at.off - 0.25) < 1e-6)).toBe(true);
      }),
    );
  });

  test('the rail reaches 6 in past the outer cylinders and never past the wall', () => {
    expect(RAIL_OVERHANG_m).toBeCloseTo(FOOT_m / 2, 9);
    expect(only().rails).toMatchObject([{ height_m: 1.2, from_m: expect.closeTo(1 - 0.15 - FOOT_m / 2, 9), to_m: expect.closeTo(1.4 + 0.15 + FOOT_m / 2, 9) }]);
    expect(only({}, { room: [planPoint(0, 0.8), planPoint(6, 0.8), planPoint(6, 4), planPoint(0, 4)] }).rails[0]?.from_m).toBeCloseTo(0, 9);
  });

  test('anchors are as many as entered for each cylinder, all on the rail', () => {
    const anchors = { kind: 'Bolt', count: 3, tension_N: 1, shear_N: 1, edge_m: 0.2, leastEdge_m: 0.1 };
    const [rail] = only({ anchors }).rails;
    expect(rail?.anchors).toHaveLength(6);
    for (const { s } of rail?.anchors ?? []) {
      expect(s).toBeGreaterThan(rail?.from_m ?? 9);
      expect(s).toBeLessThan(rail?.to_m ?? -9);
    }
  });

  test('cylinders that stand on the floor get a frame and no rail', () => {
    expect(only({ mounting: 'floor', restraints_m: [0.5, 1.3] })).toMatchObject({ rails: [], racks: [{ height_m: 1.3 }] });
  });

  test.each([
    [0, 'room'],
    [Math.PI, 'wall'],
    [Math.PI / 2, 'right'],
    [-Math.PI / 2, 'left'],
  ])('a gauge that faces %f looks at the %s', (facing_rad, look) => {
    expect(only({ gauge: { height_m: 1.5, facing_rad } }).cylinders[0]?.gauge).toEqual({ height_m: 1.5, look });
  });

  test('a door of that wall is there with its hinges, one of another wall is not', () => {
    const door: Opening = { id: 'd1', name: 'Door', kind: 'door', wall: 'c3', along_m: 1, width_m: 0.9, bottom_m: 0, height_m: 2.1, swing: 'in', hinge: 'start', freeArea_m2: null, leadsTo: 'corridor', closes: true, crossing: null, undercut_m: null, ventPath: [] };
    // The west wall is drawn from the north end to the south end: 1 m from its start is y 3, its start at the right.
    expect(only({}, { enclosure: { openings: { d1: { ...door, along_m: 1.6 } } } }).openings).toMatchObject([{ from_m: expect.closeTo(1.95, 9), to_m: expect.closeTo(2.85, 9), hinge: 'right' }]);
    expect(only({}, { enclosure: { openings: { d1: { ...door, wall: 'c1' } } } }).openings).toEqual([]);
  });

  test('beams at the wall and things near it are there, what stands farther off is not', () => {
    const thing = (kind: 'beam' | 'cabinet', x: number, bottom_m: number, top_m: number) => ({ kind, footprint: rectangle(0.5, 0.3, planPoint(x, 1.8)), bottom_m, top_m });
    const found = only({}, { obstructions: [thing('beam', 0, 2.4, 2.7), thing('cabinet', 0.6, 0, 1), thing('cabinet', 2, 0, 1), thing('beam', 1, 2.4, 2.7)] }).solids;
    expect(found.map(({ solid }) => solid.obstruction.id)).toEqual(['o1', 'o2']);
  });

  test('pipe along the wall is cut at the floor and at the ends of what is shown', () => {
    const { pipes, shown } = only({}, { runs: [{ places: [at3(0.3, 2, -0.4), at3(0.3, 2, 2), at3(0.3, 3.9, 2), at3(5, 3.9, 2)] }] });
    expect(Math.min(...pipes.flatMap(({ from, to }) => [from.z, to.z]))).toBe(0);
    expect(Math.max(...pipes.flatMap(({ from, to }) => [from.s, to.s]))).toBeLessThanOrEqual(shown.to_m + 1e-9);
  });

  test('what is not known is said', () => {
    const { missing, ceiling } = only({ railHeight_m: null, restraints_m: [], gauge: null }, { height_m: null, limits: { cylinderDiameter_m: null, outletHeight_m: null } });
    expect(ceiling).toEqual([]);
    expect(missing.join(' ')).toMatch(/diameter.*outlet.*ceiling.*rail height of all cylinders.*No further restraint.*anchoring.*gauge/i);
  });

  test('a cylinder in the middle of a room is on no wall', () => {
    const plan = layout({ cylinders: 1 });
    const [cylinder] = Object.values(plan.networks.net?.cylinders ?? {});
    if (cylinder) cylinder.at = { x: 3, y: 2 };
    const derived = derivePlan(plan);
    expect(elevationsOf(derived)).toEqual([]);
    expect(cylindersWithoutWall(derived)).toEqual([{ kind: 'cylinder', network: 'net', id: 'cy1' }]);
  });

  test('the demos: one wall, one wall of five, six walls', async () => {
    const counts = await Promise.all((['F1', 'F2', 'F3'] as const).map(async (name) => elevationsOf(derivePlan((await buildDemo(name)).plan)).map(({ cylinders }) => cylinders.length)));
    expect(counts).toEqual([[1], [5], [2, 1, 3, 1, 2, 3]]);
  });
});
