import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { behindOpening } from '#shared/derived/behind-opening';
import { neighbourName, neighboursByEnclosure } from '#shared/derived/neighbours';
import { sharedWallsOf } from '#shared/derived/shared-walls';
import { rectangle } from '#shared/geometry/outline';
import { type PlanPoint, planPoint } from '#shared/geometry/point';
import { type Plan, refKey } from '#shared/model/plan';
import { anyPlacing, placed } from '../../support/layout.ts';
import { planBuilder } from '../../support/plan-builder.ts';

/** What touches the first room, as "side name". */
function around(plan: Plan): string[] {
  const [level] = Object.values(plan.levels);
  const [first] = Object.values(level?.enclosures ?? {});
  if (!level || !first) throw new Error('There is a room.');
  const found = neighboursByEnclosure(plan.levels).get(refKey({ kind: 'enclosure', level: level.id, id: first.id })) ?? [];
  return found.map((neighbour) => `${neighbour.side} ${neighbourName(neighbour)}`).sort();
}
const room = () => planBuilder().room(6, 4, 2.7);

describe('what touches an enclosure', () => {
  test.each([
    ['face to face', 0, true],
    ['behind a wall', 0.15, true],
    ['behind the thickest wall', 0.6, true],
    ['just behind a thicker one', 0.61, false],
    ['drawn a little into the wall', -0.04, true],
  ])('another room %s', (_, gap_m, touches) => {
    expect(around(room().room(3, 4, 2.7, { x: 6 + gap_m, y: 0 }).plan)).toEqual(touches ? ['beside Room 2'] : []);
  });
  test('a room that meets it at a corner only does not touch it', () => {
    expect(around(room().room(3, 3, 2.7, { x: 6.1, y: 4.1 }).plan)).toEqual([]);
  });
  test('two rooms tell of each other', () => {
    const { plan } = room().room(3, 4, 2.7, { x: 6.1, y: 0 });
    expect([...neighboursByEnclosure(plan.levels).values()].map((found) => found.map(neighbourName))).toEqual([['Room 2'], ['Room 1']]);
  });
  test('a wall that runs askew behind it still counts', () => {
    const askew = [planPoint(6.1, 0), planPoint(9, 0), planPoint(9, 4), planPoint(6.5, 4)];
    expect(around(room().adjoining('corridor', askew).plan)).toEqual(['beside corridor']);
  });
  test('a room in the shaft that is cut out of it touches it', () => {
    expect(around(room().hole(rectangle(1, 1, planPoint(2, 1))).adjoining('shaft', rectangle(1, 1, planPoint(2, 1))).plan)).toEqual(['beside shaft']);
  });

  test.each([
    ['a pit under it', -1.5, ['below pit']],
    ['a loft on its ceiling', 3, ['above pit']],
    ['a loft a storey higher', 5, []],
    ['one drawn over it', 0, ['beside pit']],
  ])('%s', (_, floor_m, expected) => {
    expect(around(room().adjoining('pit', rectangle(2, 2, planPoint(1, 1)), { floor_m }).plan)).toEqual(expected);
  });
  test('beside it counts only what is not wholly above it', () => {
    const beside = rectangle(2, 4, planPoint(6.1, 0));
    expect(around(room().adjoining('room', beside, { floor_m: 2.7 }).plan)).toEqual([]);
    expect(around(room().adjoining('room', beside, { floor_m: 2.6 }).plan)).toEqual(['beside room']);
  });

  test.each([
    ['on the slab over it', 3, ['above Room 1']],
    ['with the thickest slab between', 3.7, ['above Room 1']],
    ['with more than a slab between', 3.8, []],
  ])('a room of the next level %s', (_, floor_m, expected) => {
    expect(around(room().level('Level 2', floor_m).room(3, 3, 2.7, { x: 5, y: 3 }).plan)).toEqual(expected);
  });
  test('rooms of two levels that meet at an edge only do not touch', () => {
    expect(around(room().level('Level 2', 3).room(3, 3, 2.7, { x: 6, y: 0 }).plan)).toEqual([]);
  });
  test('while a height is not known the level over it may touch', () => {
    expect(around(planBuilder().room(6, 4, null).level('Level 2', 9).room(6, 4, 2.7).plan)).toEqual(['above Room 1']);
  });

  test('a shared stretch lies on the face of the room, with the thickness of the wall', () => {
    const { plan, levelId } = room().adjoining('corridor', rectangle(2, 2, planPoint(6.2, 1)));
    const level = plan.levels[levelId];
    const [found] = [...sharedWallsOf(level?.enclosures ?? {}, level?.adjoining ?? {}, levelId).values()].flat();
    expect([found?.stretch.a.x, found?.stretch.b.x]).toEqual([6, 6]);
    expect([found?.stretch.a.y, found?.stretch.b.y].sort()).toEqual([1, 3]);
    expect(found?.off_m).toBeCloseTo(0.2, 9);
  });

  test('turned and mirrored, the same touch', () => {
    fc.assert(
      fc.property(anyPlacing, fc.double({ min: 0, max: 1.2, noNaN: true }).filter((gap_m) => Math.abs(gap_m - 0.6) > 1e-6), (placing, gap_m) => {
        const lay = (ring: readonly PlanPoint[]) => ring.map((p) => placed(p, placing));
        const { plan } = planBuilder().outline(lay(rectangle(6, 4)), 2.7).adjoining('corridor', lay(rectangle(2, 4, planPoint(6 + gap_m, 0))));
        expect(around(plan)).toEqual(gap_m < 0.6 ? ['beside corridor'] : []);
      }),
      { numRuns: 60 },
    );
  });
});

describe('what lies behind an opening', () => {
  const behind = (along_m: number): string[] => {
    const built = room().opening(1, along_m, 0.5).adjoining('corridor', rectangle(2, 2, planPoint(6.1, 0))).adjoining('shaft', rectangle(1, 2, planPoint(6.3, 0)));
    const level = built.plan.levels[built.levelId];
    const enclosure = level?.enclosures[built.enclosure.id];
    const opening = enclosure?.openings[built.lastOpening.id];
    if (!level || !enclosure || !opening) throw new Error('It was built.');
    return behindOpening(enclosure, opening, neighboursByEnclosure(built.plan.levels).get(refKey(built.enclosure)) ?? []).map(neighbourName);
  };
  test('is what is drawn nearest there', () => expect(behind(1)).toEqual(['corridor']));
  test('is what its edge reaches into', () => expect(behind(2.2)).toEqual(['corridor']));
  test('is nothing where nothing is drawn', () => expect(behind(3)).toEqual([]));
});
