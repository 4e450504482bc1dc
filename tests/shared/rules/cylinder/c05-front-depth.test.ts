import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { rectangle } from '#shared/geometry/outline';
import { planPoint } from '#shared/geometry/point';
import { c05FrontDepth as rule } from '#shared/rules/cylinder/c05-front-depth';
import { type LayoutSpec, type Placing, anyPlacing, check, placed, placedAngle_rad, placedLayout } from '../../../support/layout.ts';

const HERE: Placing = { angle_rad: 0, dx: 0, dy: 0, isMirrored: false };
const LIMIT_m = 0.9;

/** A cylinder 0.3 m wide at (0.2, 2) with its back to the west wall of a room 6 by 4; its outside is at x 0.35. */
function facing(spec: Pick<LayoutSpec, 'obstructions' | 'limits' | 'room'> = {}, placing = HERE, back_rad = Math.PI, at = planPoint(0.2, 2)) {
  const plan = placedLayout({ ...spec, limits: { frontDepth_m: LIMIT_m, cylinderDiameter_m: 0.3, ...spec.limits } }, placing);
  const cylinder = plan.networks.net?.cylinders.cy1;
  if (cylinder) {
    cylinder.at = { x: placed(at, placing).x, y: placed(at, placing).y };
    cylinder.back_rad = placedAngle_rad(back_rad, placing);
  }
  return plan;
}
const first = (plan: ReturnType<typeof facing>) => check(rule, plan)[0];
const box = (clear: number, y = 1.5, bottom_m = 0, top_m = 2): Pick<LayoutSpec, 'obstructions'> => ({ obstructions: [{ kind: 'cabinet', footprint: rectangle(0.5, 1, planPoint(0.35 + clear, y)), bottom_m, top_m }] });

describe('C5', () => {
  test.each([
    ['at the limit', LIMIT_m, 'ok'],
    ['just farther', LIMIT_m + 1e-4, 'ok'],
    ['just nearer', LIMIT_m - 1e-4, 'warn'],
  ])('a cabinet %s', (_, clear, verdict) => {
    expect(first(facing(box(clear)))).toMatchObject({ verdict, name: 'C1', measured: expect.closeTo(clear, 9), limit: LIMIT_m });
  });

  test('nothing in front but the far wall', () => {
    expect(first(facing())).toMatchObject({ verdict: 'ok', measured: expect.closeTo(5.65, 9) });
    expect(first(facing({ room: rectangle(1.2, 4) }))).toMatchObject({ verdict: 'warn', measured: expect.closeTo(0.85, 9) });
  });

  test('what stands beside, behind or above 2 m is not in front', () => {
    expect(first(facing(box(0.1, 2.15)))?.verdict).toBe('ok');
    expect(first(facing(box(0.1, 2.149)))?.verdict).toBe('warn');
    expect(first(facing(box(0.1, 1.5, 2, 2.5)))?.verdict).toBe('ok');
    expect(first(facing(box(0.1, 1.5, 1.99, 2.5)))?.verdict).toBe('warn');
    expect(first(facing(box(0.1, 1.5), HERE, Math.PI, planPoint(1.5, 2)))?.verdict).toBe('ok');
  });

  test('a thing that it stands in leaves nothing free', () => {
    expect(first(facing(box(-0.3)))).toMatchObject({ verdict: 'warn', measured: 0 });
  });

  test('a cylinder of another network counts, one of its own does not', () => {
    const plan = facing();
    const own = plan.networks.net;
    if (!own) throw new Error('The layout has its network.');
    const [cylinder] = Object.values(own.cylinders);
    if (!cylinder) throw new Error('The layout has its cylinder.');
    const across = { ...cylinder, id: 'cy9', name: 'C9', at: { x: 1, y: 2.1 }, back_rad: 0 };
    own.cylinders.cy9 = across;
    expect(first(plan)?.verdict).toBe('ok');
    delete own.cylinders.cy9;
    plan.networks.other = { ...structuredClone(own), id: 'other', cylinders: { cy9: across } };
    // From its outside at 0.35 to the near side of a circle of 0.15 around x 1: 0.5.
    expect(first(plan)).toMatchObject({ verdict: 'warn', measured: expect.closeTo(0.5, 9) });
    expect(first(plan)?.text).toContain('to C9');
    const [profile] = Object.values(plan.profiles);
    if (!profile) throw new Error('The layout has its profile.');
    const blank = structuredClone(profile);
    delete blank.limits.cylinderDiameter_m;
    plan.profiles.blank = { ...blank, id: 'blank' };
    plan.networks.other.profile = 'blank';
    expect(first(plan)?.text).toContain('diameter of a cylinder of another network');
  });

  test('turned, shifted and mirrored', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        expect(first(facing(box(LIMIT_m + 1e-6), placing))?.verdict).toBe('ok');
        expect(first(facing(box(LIMIT_m - 1e-6), placing))?.verdict).toBe('warn');
      }),
    );
  });

  test('a blank figure or no room around it is not checked', () => {
    expect(first(facing({ limits: { frontDepth_m: null } }))?.text).toContain('Clear depth in front');
    expect(first(facing({ limits: { cylinderDiameter_m: null } }))?.text).toContain('Diameter');
    expect(first(facing({}, HERE, Math.PI, planPoint(9, 9)))?.text).toContain('stands in no drawn room');
  });
});
