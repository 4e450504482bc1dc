import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { ductCrossingsOf } from '#shared/derived/duct-crossings';
import { rectangle } from '#shared/geometry/outline';
import { type PlanPoint, planPoint } from '#shared/geometry/point';
import type { Opening, Plan } from '#shared/model/plan';
import { anyPlacing, placed } from '../../support/layout.ts';
import { planBuilder } from '../../support/plan-builder.ts';

/** Crossings of the one duct with the first room. */
function crossings(plan: Plan) {
  const [on] = derivePlan(plan).levels;
  const duct = on?.solids.find(({ obstruction }) => obstruction.kind === 'duct');
  const [room] = on?.spaces ?? [];
  if (!on || !duct || !room) throw new Error('There is a duct and a room.');
  return ductCrossingsOf(duct, on.spaces.filter(({ enclosureRef }) => enclosureRef.id === room.enclosureRef.id), on.level);
}
const room = () => planBuilder().room(6, 4, 2.7);
const damper: Partial<Opening> = { kind: 'damper', bottom_m: 2.2, height_m: 0.4, closes: true };

describe('where a duct goes through a wall', () => {
  test.each([
    ['out of the east wall', rectangle(2, 0.5, planPoint(5, 2)), 1],
    ['straight through the room', rectangle(10, 0.5, planPoint(-2, 2)), 2],
    ['inside the room alone', rectangle(2, 0.5, planPoint(2, 2)), 0],
    ['up to the face of the wall', rectangle(1, 0.5, planPoint(5, 2)), 0],
    ['outside along the wall', rectangle(0.5, 4, planPoint(6, 0)), 0],
    ['over the whole room', rectangle(8, 6, planPoint(-1, -1)), 4],
  ])('%s', (_, footprint, count) => {
    expect(crossings(room().obstruction('duct', footprint, 2.2, 2.6).plan)).toHaveLength(count);
  });
  test('is as wide as the duct', () => {
    const [crossing] = crossings(room().obstruction('duct', rectangle(2, 0.5, planPoint(5, 2)), 2.2, 2.6).plan);
    expect([crossing?.at.a.x, crossing?.at.b.x]).toEqual([6, 6]);
    expect([crossing?.at.a.y, crossing?.at.b.y]).toEqual([2, 2.5]);
  });
  test.each([
    ['within the room', 2.2, 2.6, {}, 1],
    ['on the roof', 2.7, 3.2, {}, 0],
    ['partly in the room', 2.6, 3.2, {}, 1],
    ['in a void that is not protected', 2.8, 3.2, { ceilingVoid: { depth_m: 1, isProtected: false, exclusion: null } }, 0],
    ['in a protected void', 2.8, 3.2, { ceilingVoid: { depth_m: 1, isProtected: true, exclusion: null } }, 1],
    ['over a ceiling of unknown height', 9, 10, { height_m: null }, 1],
  ] as const)('%s', (_, bottom_m, top_m, change, count) => {
    expect(crossings(planBuilder().room(6, 4, 2.7, planPoint(0, 0), change).obstruction('duct', rectangle(2, 0.5, planPoint(5, 2)), bottom_m, top_m).plan)).toHaveLength(count);
  });

  const withDamper = (along_m: number, change: Partial<Opening> = {}): number | undefined =>
    crossings(room().opening(1, along_m, 0.5, { ...damper, ...change }).obstruction('duct', rectangle(2, 0.5, planPoint(5, 2)), 2.2, 2.6).plan)[0]?.dampers.length;
  test('has the damper that is drawn there', () => expect(withDamper(2.25)).toBe(1));
  test('has none of another place', () => expect(withDamper(0.5)).toBe(0));
  test('has none of another height', () => expect(withDamper(2.25, { bottom_m: 0.2 })).toBe(0));
  test('a door is no damper', () => expect(withDamper(2.25, { kind: 'door' })).toBe(0));
  test('has the damper that the room behind the wall draws', () => {
    const { plan } = room().room(6, 4, 2.7, planPoint(6.15, 0)).opening(3, 1.75, 0.5, damper).obstruction('duct', rectangle(2, 0.5, planPoint(5, 2)), 2.2, 2.6);
    expect(crossings(plan)[0]?.dampers).toMatchObject([{ opening: { kind: 'damper' } }]);
  });
  test('turned and mirrored, the same', () => {
    fc.assert(
      fc.property(anyPlacing, (placing) => {
        const lay = (ring: readonly PlanPoint[]) => ring.map((p) => placed(p, placing));
        expect(crossings(planBuilder().outline(lay(rectangle(6, 4)), 2.7).obstruction('duct', lay(rectangle(10, 0.5, planPoint(-2, 2))), 2.2, 2.6).plan)).toHaveLength(2);
      }),
      { numRuns: 50 },
    );
  });
});
