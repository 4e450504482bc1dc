import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { distance_m, planPoint } from '#shared/geometry/point';
import type { Opening } from '#shared/model/plan';
import { c06RemovalPath as rule } from '#shared/rules/cylinder/c06-removal-path';
import { type LayoutSpec, type Placing, anyPlacing, check, placed, placedAngle_rad, placedLayout } from '../../../support/layout.ts';

const HERE: Placing = { angle_rad: 0, dx: 0, dy: 0, isMirrored: false };
const WIDTH_m = 0.6;

const doorOn = (wall: string, along_m: number, width_m: number): Opening => ({
  id: 'd1', name: 'Door', kind: 'door', wall, along_m, width_m, bottom_m: 0, height_m: 2.1, swing: 'out', hinge: 'start', freeArea_m2: null, leadsTo: 'corridor', closes: true, crossing: null, undercut_m: null, ventPath: [],
});

/** A cylinder 0.3 m wide at (0.2, 1) with its back to the west wall of a room 6 by 2; a door in the east wall, 1 m from its south end. */
function toTakeOut(spec: LayoutSpec = {}, { placing = HERE, door = doorOn('c1', 1, 0.9) as Opening | null } = {}) {
  const room = spec.room ?? rectangle(6, 2);
  const plan = placedLayout(
    { ...spec, room, enclosure: { openings: door ? { d1: door } : {}, ...spec.enclosure }, limits: { removalWidth_m: WIDTH_m, cylinderDiameter_m: 0.3, frontDepth_m: 0.9, ...spec.limits } },
    placing,
  );
  Object.values(plan.networks.net?.cylinders ?? {}).forEach((cylinder, i) => {
    cylinder.at = { ...placed({ x: 0.2, y: 1 + 0.5 * i }, placing) };
    cylinder.back_rad = placedAngle_rad(Math.PI, placing);
  });
  return plan;
}
const first = (plan: ReturnType<typeof toTakeOut>) => check(rule, plan)[0];
/** Two cabinets across the room that leave a gap in the middle. */
const gap = (width: number, bottom_m = 0, top_m = 2): LayoutSpec => ({
  obstructions: [
    { kind: 'cabinet', footprint: rectangle(1, 1 - width / 2, planPoint(3, 0)), bottom_m, top_m },
    { kind: 'cabinet', footprint: rectangle(1, 1 - width / 2, planPoint(3, 1 + width / 2)), bottom_m, top_m },
  ],
});

describe('C6', () => {
  test.each([
    ['at the limit', WIDTH_m, 'ok'],
    ['just wider', WIDTH_m + 1e-4, 'ok'],
    ['just narrower', WIDTH_m - 1e-4, 'warn'],
  ])('a gap %s', (_, width, verdict) => {
    expect(first(toTakeOut(gap(width)))?.verdict).toBe(verdict);
  });

  test.each([
    ['at the limit', WIDTH_m, 'ok'],
    ['just wider', WIDTH_m + 1e-4, 'ok'],
    ['just narrower', WIDTH_m - 1e-4, 'warn'],
  ])('a door %s', (_, width, verdict) => {
    expect(first(toTakeOut({}, { door: doorOn('c1', 1, width) }))?.verdict).toBe(verdict);
  });

  test('the narrowest place is told, measured and shown', () => {
    const found = first(toTakeOut(gap(0.45)));
    expect(found?.measured).toBeGreaterThan(0.448);
    expect(found?.measured).toBeLessThanOrEqual(0.4501);
    const at = found?.place?.at[0];
    // The corridor between the cabinets runs from (3, 1) to (4, 1).
    expect(at?.x).toBeGreaterThan(2.7);
    expect(at?.x).toBeLessThan(4.3);
    expect(at?.y).toBeCloseTo(1, 1);
  });

  test('between two corners that stand aslant: a gap of 3, 4, 5', () => {
    // Corners at (3, 0.7) and (3.3, 1.1): 0.5 apart.
    const aslant: LayoutSpec = {
      obstructions: [
        { kind: 'rack', footprint: rectangle(1, 0.7, planPoint(2, 0)), bottom_m: 0, top_m: 2 },
        { kind: 'rack', footprint: rectangle(1, 0.9, planPoint(3.3, 1.1)), bottom_m: 0, top_m: 2 },
      ],
    };
    expect(first(toTakeOut({ ...aslant, limits: { removalWidth_m: 0.499 } }))?.verdict).toBe('ok');
    const stopped = first(toTakeOut({ ...aslant, limits: { removalWidth_m: 0.501 } }));
    expect(stopped).toMatchObject({ verdict: 'warn', measured: expect.closeTo(0.5, 2) });
    expect(distance_m(stopped?.place?.at[0] ?? planPoint(0, 0), planPoint(3.15, 0.9))).toBeLessThan(0.1);
  });

  test('what hangs 2 m high or lies below the floor leaves the way free', () => {
    expect(first(toTakeOut(gap(0.3, 2, 2.5)))?.verdict).toBe('ok');
    expect(first(toTakeOut(gap(0.3, 1.99, 2.5)))?.verdict).toBe('warn');
    expect(first(toTakeOut(gap(0.3, -0.3, 0)))?.verdict).toBe('ok');
  });

  test('a wall of things across the room lets nothing out', () => {
    expect(first(toTakeOut({ obstructions: [{ kind: 'rack', footprint: rectangle(1, 2, planPoint(3, 0)), bottom_m: 0, top_m: 2 }] }))).toMatchObject({ verdict: 'warn', measured: 0, text: expect.stringContaining('No free floor') });
  });

  test('a thing right in front of it is not jumped over', () => {
    expect(first(toTakeOut({ obstructions: [{ kind: 'cabinet', footprint: rectangle(0.1, 2, planPoint(0.4, 0)), bottom_m: 0, top_m: 2 }] }))?.verdict).toBe('warn');
  });

  test('another cylinder stands in the way, the one that goes does not', () => {
    const plan = toTakeOut({ room: rectangle(6, 1.3), cylinders: 1, limits: { cylinderDiameter_m: 0.5 } }, { door: doorOn('c1', 0.65, 0.9) });
    expect(first(plan)?.verdict).toBe('ok');
    const own = plan.networks.net;
    const [cylinder] = Object.values(own?.cylinders ?? {});
    if (!own || !cylinder) throw new Error('The layout has its cylinder.');
    // A circle of 0.25 around (3, 0.6) leaves 0.35 and 0.45 beside it in a room 1.3 wide.
    own.cylinders.cy9 = { ...cylinder, id: 'cy9', name: 'C9', at: { x: 3, y: 0.6 } };
    expect(first(plan)).toMatchObject({ verdict: 'warn', measured: expect.closeTo(0.45, 2) });
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(first(toTakeOut(gap(WIDTH_m), { placing }))?.verdict).toBe('ok');
        expect(first(toTakeOut(gap(WIDTH_m - 1e-4), { placing }))?.verdict).toBe('warn');
      }),
      { numRuns: 25 },
    );
  });

  test('a wider way never turns a kept one into a fault', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 1.2, noNaN: true }), (width) => {
        expect(first(toTakeOut(gap(width)))?.verdict).toBe(width >= WIDTH_m - 1e-5 ? 'ok' : 'warn');
      }),
      { numRuns: 40 },
    );
  });

  test('without a door, a limit, a diameter or a room it is not checked', () => {
    expect(first(toTakeOut({}, { door: null }))?.text).toContain('no door of its room');
    expect(first(toTakeOut({ limits: { removalWidth_m: null } }))?.verdict).toBe('not-checked');
    expect(first(toTakeOut({ limits: { cylinderDiameter_m: null } }))?.verdict).toBe('not-checked');
    const plan = toTakeOut();
    const [cylinder] = Object.values(plan.networks.net?.cylinders ?? {});
    if (cylinder) cylinder.at = { x: 50, y: 50 };
    expect(first(plan)?.text).toContain('stands in no drawn room');
  });
});
