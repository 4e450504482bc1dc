import { describe, expect, test } from 'vitest';
import { derivePlan } from '#shared/derived/derive-plan';
import { compassName, datumsOf, faceName, findDatum, fromFace_m } from '#shared/derived/datum';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const spaceOf = (built: ReturnType<typeof planBuilder>) => {
  const derived = derivePlan(built.plan);
  const [space] = derived.spaces;
  if (!space) throw new Error('The plan has a room.');
  return { derived, space };
};

describe('datum', () => {
  test('of a rectangle it is the south-west corner, east-west distances from the west face', () => {
    const { derived, space } = spaceOf(planBuilder().room(6, 4, 2.5, { x: 1, y: 2 }).nozzle(5, 5, 2.3));
    const datum = findDatum(space, derived.nozzles);
    expect(datum?.corner).toMatchObject({ x: 1, y: 2 });
    expect(datum?.faces.map(faceName)).toEqual(['west face', 'south face']);
    expect(datum?.faces.map((face) => fromFace_m(face, { x: 5, y: 5 }))).toEqual([expect.closeTo(4, 9), expect.closeTo(3, 9)]);
  });

  test('it does not follow a nozzle that moves', () => {
    const corners = [[0.5, 0.5], [5.5, 3.5], [3, 2]].map(([x = 0, y = 0]) => {
      const { derived, space } = spaceOf(planBuilder().room(6, 4, 2.5).nozzle(x, y, 2.3));
      return findDatum(space, derived.nozzles)?.corner;
    });
    expect(new Set(corners.map((corner) => JSON.stringify(corner))).size).toBe(1);
  });

  test('a corner from which a nozzle cannot be measured square to the face is passed over', () => {
    const ring = [[0, 0], [2, 0], [2, 3], [8, 3], [8, 6], [0, 6]].map(([x = 0, y = 0]) => ({ x, y }));
    const { derived, space } = spaceOf(planBuilder().outline(ring, 2.5).nozzle(7, 4, 2.3));
    const datum = findDatum(space, derived.nozzles);
    expect(datum?.corner).not.toMatchObject({ x: 0, y: 0 });
    for (const face of datum?.faces ?? []) expect(fromFace_m(face, { x: 7, y: 4 })).toBeGreaterThan(0);
  });

  test('a square corner goes before a slanted one', () => {
    const ring = [[0, 0], [6, 1], [6, 5], [0, 5]].map(([x = 0, y = 0]) => ({ x, y }));
    const { space } = spaceOf(planBuilder().outline(ring, 2.5));
    expect(findDatum(space, [])?.corner).toMatchObject({ y: 5 });
  });

  test('a room and its void share one corner', () => {
    const built = planBuilder().room(6, 4, 2.5, { x: 0, y: 0 }, { underFloor: { depth_m: 0.5, isProtected: true, exclusion: null } }).nozzle(2, 2, 2.3);
    built.nozzle(5, 3, -0.2, [0], { serves: { enclosure: built.enclosure.id, space: 'under-floor' } });
    const corners = [...datumsOf(derivePlan(built.plan)).values()].map(({ corner }) => `${corner.x} ${corner.y}`);
    expect(corners.length).toBe(2);
    expect(new Set(corners).size).toBe(1);
  });

  test('an enclosure without nozzles needs none', () => {
    expect(datumsOf(derivePlan(planBuilder().room(6, 4, 2.5).run([place3(1, 1, 2), place3(2, 1, 2)]).plan)).size).toBe(0);
  });

  test.each([
    [0, 'east'],
    [90, 'north'],
    [180, 'west'],
    [-90, 'south'],
    [44, 'north-east'],
    [22, 'east'],
    [203, 'south-west'],
    [359, 'east'],
  ])('%i° is %s', (degrees, name) => {
    expect(compassName((degrees * Math.PI) / 180)).toBe(name);
  });
});
