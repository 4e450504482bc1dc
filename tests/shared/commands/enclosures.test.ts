import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addEnclosure } from '#shared/commands/add-enclosure';
import { addHole } from '#shared/commands/add-hole';
import { addOpening } from '#shared/commands/add-opening';
import { editEnclosure } from '#shared/commands/edit-enclosure';
import { editWall } from '#shared/commands/edit-wall';
import { insertCorner } from '#shared/commands/insert-corner';
import { moveCorner } from '#shared/commands/move-corner';
import { moveWall } from '#shared/commands/move-wall';
import { removeCorner } from '#shared/commands/remove-corner';
import { refuseFault, reshape, soundRing, wallLines, windRings, woundLeft } from '#shared/commands/rings';
import { area_m2, isCounterClockwise, rectangle } from '#shared/geometry/outline';
import { type PlanPoint, planPoint } from '#shared/geometry/point';
import { type Enclosure, type Plan, type RefOf, newPlan, ringOf } from '#shared/model/plan';
import { planBuilder } from '../../support/plan-builder.ts';
import { done, doneAll, levelIn, only, refusal } from '../../support/try-command.ts';

const roomIn = (plan: Plan): Enclosure => only(levelIn(plan).enclosures);
const ring = (plan: Plan): number[][] => roomIn(plan).outline.map(({ x, y }) => [Math.round(x * 1e6) / 1e6, Math.round(y * 1e6) / 1e6]);
const places = (...all: [number, number][]): PlanPoint[] => all.map(([x, y]) => planPoint(x, y));
/** 6 m by 4 m, walls 0 south, 1 east, 2 north, 3 west, a door of 1 m in the middle of the south wall. */
const room = () => planBuilder().room(6, 4, 2.7).opening(0, 3, 1);
const wallOf = (plan: Plan, i: number): RefOf<'wall'> => ({ kind: 'wall', level: 'level-0', enclosure: roomIn(plan).id, id: roomIn(plan).outline[i]?.id ?? '' });
/** Middle of the only opening on the plan. */
const doorAt = (plan: Plan): number[] => {
  const enclosure = roomIn(plan);
  const door = only(enclosure.openings);
  const line = wallLines(enclosure).get(door.wall);
  if (!line) return [];
  const share = door.along_m / Math.hypot(line.b.x - line.a.x, line.b.y - line.a.y);
  return [line.a.x + (line.b.x - line.a.x) * share, line.a.y + (line.b.y - line.a.y) * share].map((v) => Math.round(v * 1e6) / 1e6);
};

describe('addEnclosure', () => {
  test('draws a ring counter-clockwise, nothing known yet', () => {
    const { next, created } = done(newPlan(), addEnclosure('level-0', rectangle(6, 4).reverse()));
    const enclosure = roomIn(next);
    expect(created).toEqual([{ kind: 'enclosure', level: 'level-0', id: enclosure.id }]);
    expect(enclosure).toMatchObject({ name: 'Room 1', height_m: null, occupancy: 'unknown', concentration_pct: null });
    expect(enclosure.outline[0]?.wall).toEqual({ construction: 'unknown', loadBearing: null, allowablePressure_Pa: null, capacity_N: null, reaches: 'unknown' });
    expect(isCounterClockwise(ringOf(enclosure.outline))).toBe(true);
  });
  test('names rooms in turn, or as told', () => {
    const next = doneAll(newPlan(), addEnclosure('level-0', rectangle(1, 1)), addEnclosure('level-0', rectangle(1, 1, planPoint(3, 0)), 'Hut'), addEnclosure('level-0', rectangle(1, 1, planPoint(6, 0))));
    expect(Object.values(levelIn(next).enclosures).map(({ name }) => name)).toEqual(['Room 1', 'Hut', 'Room 2']);
  });
  test('takes a ring as it was clicked: doubled places, and the first again at the end', () => {
    const { next } = done(newPlan(), addEnclosure('level-0', places([0, 0], [0, 0], [6, 0], [6, 4], [6, 4.0005], [0, 4], [0, 0])));
    expect(ring(next)).toEqual([[0, 0], [6, 0], [6, 4], [0, 4]]);
  });
  test.each([
    ['two corners', places([0, 0], [1, 0]), 'three corners'],
    ['a crossing', places([0, 0], [4, 4], [4, 0], [0, 4]), 'cross or touch itself'],
    ['no area', places([0, 0], [0.0015, 0], [0.0015, 0.0012]), 'no area'],
    ['a place far off', places([0, 0], [1e6, 0], [0, 1]), 'too far off'],
    ['too many corners', Array.from({ length: 2001 }, (_, i) => planPoint(100 * Math.cos(i / 400), 100 * Math.sin(i / 400))), '2000'],
  ])('is refused for %s', (_, outline, reason) => {
    expect(refusal(newPlan(), addEnclosure('level-0', outline))).toContain(reason);
  });
  test('is refused on a level that has gone, and without a name', () => {
    expect(refusal(newPlan(), addEnclosure('gone', rectangle(1, 1)))).toContain('level is no longer');
    expect(refusal(newPlan(), addEnclosure('level-0', rectangle(1, 1), ' '))).toContain('needs a name');
  });
});

describe('addHole', () => {
  const { plan, enclosure } = room();
  test('cuts a shaft out, wound clockwise; it may touch a wall', () => {
    for (const hole of [rectangle(1, 1, planPoint(2, 1)), rectangle(1, 1, planPoint(2, 3)), rectangle(1, 1)]) {
      const [cut] = roomIn(done(plan, addHole(enclosure, hole)).next).holes;
      expect(cut).toHaveLength(4);
      expect(isCounterClockwise(ringOf(cut ?? []))).toBe(false);
    }
  });
  test('is refused outside the walls, over another shaft, and when it crosses itself', () => {
    expect(refusal(plan, addHole(enclosure, rectangle(1, 1, planPoint(5.5, 1))))).toContain('past the walls');
    expect(refusal(plan, addHole(enclosure, places([1, 1], [2, 2], [2, 1], [1, 2])))).toContain('cross or touch');
    const { next } = done(plan, addHole(enclosure, rectangle(1, 1, planPoint(2, 1))));
    expect(refusal(next, addHole(enclosure, rectangle(1, 1, planPoint(2.5, 1.5))))).toContain('overlap');
    expect(roomIn(done(next, addHole(enclosure, rectangle(1, 1, planPoint(3, 1)))).next).holes).toHaveLength(2);
    expect(refusal(plan, addHole({ ...enclosure, id: 'gone' }, rectangle(1, 1)))).toContain('enclosure is no longer');
  });
});

describe('moveCorner', () => {
  test('moves the corner; the door keeps its place along the wall', () => {
    const built = room();
    const { next } = done(built.plan, moveCorner(built.corner(0), { x: -2, y: 0 }));
    expect(ring(next)).toEqual([[-2, 0], [6, 0], [6, 4], [0, 4]]);
    expect(doorAt(next)).toEqual([3, 0]);
    expect(only(roomIn(next).openings).along_m).toBeCloseTo(5, 9);
  });
  test('pushes the door along where the wall ends before it', () => {
    const built = room();
    expect(doorAt(done(built.plan, moveCorner(built.corner(1), { x: 2.5, y: 0 })).next)).toEqual([2, 0]);
  });
  test('is refused where the door would not fit, where the ring crosses, and where a shaft would be outside', () => {
    const built = room().hole(rectangle(1, 1, planPoint(2, 2)));
    expect(refusal(built.plan, moveCorner(built.corner(1), { x: 0.5, y: 0 }))).toMatch(/would no longer fit|past the walls/);
    expect(refusal(built.plan, moveCorner(built.corner(1), { x: 3, y: 6 }))).toContain('cross or touch');
    expect(refusal(built.plan, moveCorner(built.corner(2), { x: 2.5, y: 2.5 }))).toContain('past the walls');
    expect(refusal(built.plan, moveCorner(built.corner(0), { x: 6, y: 0 }))).toContain('two corners in one place');
    expect(refusal(built.plan, moveCorner({ ...built.corner(0), id: 'gone' }, { x: 1, y: 1 }))).toBe('This corner is no longer in the plan.');
  });
  test('moves a corner of a shaft within the room only', () => {
    const built = room().hole(rectangle(1, 1, planPoint(2, 2)));
    const corner = { ...built.corner(0), id: roomIn(built.plan).holes[0]?.[2]?.id ?? '' };
    expect(ringOf(roomIn(done(built.plan, moveCorner(corner, { x: 5, y: 3.5 })).next).holes[0] ?? [])).toContainEqual({ x: 5, y: 3.5 });
    expect(refusal(built.plan, moveCorner(corner, { x: 7, y: 3 }))).toContain('past the walls');
  });
});

describe('insertCorner', () => {
  test('splits the wall where it is nearest, and the halves keep their openings', () => {
    const built = room();
    const known = done(built.plan, editWall(built.wall(0), { construction: 'block', loadBearing: true })).next;
    const { next, created } = done(known, insertCorner(built.wall(0), { x: 1, y: 0.4 }));
    expect(ring(next)).toEqual([[0, 0], [1, 0], [6, 0], [6, 4], [0, 4]]);
    expect(created).toEqual([{ ...built.corner(0), id: roomIn(next).outline[1]?.id }]);
    expect(roomIn(next).outline[1]?.wall).toMatchObject({ construction: 'block', loadBearing: true });
    expect(only(roomIn(next).openings)).toMatchObject({ wall: roomIn(next).outline[1]?.id, along_m: 2 });
    expect(doorAt(next)).toEqual([3, 0]);
    const after = done(built.plan, insertCorner(built.wall(0), { x: 5, y: 0 })).next;
    expect(only(roomIn(after).openings)).toMatchObject({ wall: built.wall(0).id, along_m: 3 });
  });
  test('is refused at a corner and within an opening', () => {
    const built = room();
    expect(refusal(built.plan, insertCorner(built.wall(0), { x: -3, y: 0 }))).toContain('corner here already');
    expect(refusal(built.plan, insertCorner(built.wall(0), { x: 3.2, y: 0 }))).toContain('“Door 1” is here');
    expect(refusal(built.plan, insertCorner({ ...built.wall(0), id: 'gone' }, { x: 1, y: 0 }))).toBe('This wall is no longer in the plan.');
  });
});

describe('removeCorner', () => {
  test('undoes an insertion, door and all', () => {
    const built = room();
    const split = done(built.plan, insertCorner(built.wall(0), { x: 1, y: 0 }));
    const [corner] = split.created;
    if (corner?.kind !== 'corner') throw new Error('No corner was made.');
    const { next } = done(split.next, removeCorner(corner));
    expect(roomIn(next)).toEqual(roomIn(built.plan));
  });
  test('knows of the joined wall only what holds for both', () => {
    const built = planBuilder().outline(places([0, 0], [3, 0], [6, 0], [6, 4], [0, 4]), 3);
    const known = doneAll(built.plan, editWall(built.wall(0), { construction: 'block', loadBearing: true, allowablePressure_Pa: 500 }), editWall(built.wall(1), { construction: 'glass', loadBearing: true, allowablePressure_Pa: 200 }));
    expect(roomIn(done(known, removeCorner(built.corner(1))).next).outline[0]?.wall).toEqual({ construction: 'unknown', loadBearing: true, allowablePressure_Pa: 200, capacity_N: null, reaches: 'unknown' });
    const half = done(built.plan, editWall(built.wall(0), { allowablePressure_Pa: 500, loadBearing: true })).next;
    expect(roomIn(done(half, removeCorner(built.corner(1))).next).outline[0]?.wall).toMatchObject({ loadBearing: null, allowablePressure_Pa: null });
  });
  test('is refused on a triangle, where a shaft would be outside, and where a door would not fit', () => {
    const triangle = planBuilder().outline(places([0, 0], [4, 0], [0, 4]), 3);
    expect(refusal(triangle.plan, removeCorner(triangle.corner(0)))).toContain('three corners');
    const shafted = planBuilder().room(6, 4, 3).hole(rectangle(1, 1, planPoint(4.5, 2.5)));
    expect(refusal(shafted.plan, removeCorner(shafted.corner(2)))).toContain('past the walls');
    const wide = planBuilder().outline(places([0, 0], [6, 0], [1, 3], [0, 3]), 3).opening(0, 3, 5.9);
    expect(refusal(wide.plan, removeCorner(wide.corner(1)))).toContain('“Door 1” would no longer fit');
  });
});

describe('moveWall', () => {
  test('slides a wall along its neighbours, into the room positive', () => {
    const built = room();
    expect(ring(done(built.plan, moveWall(built.wall(0), 1)).next)).toEqual([[0, 1], [6, 1], [6, 4], [0, 4]]);
    expect(ring(done(built.plan, moveWall(built.wall(1), -2)).next)).toEqual([[0, 0], [8, 0], [8, 4], [0, 4]]);
    expect(doorAt(done(built.plan, moveWall(built.wall(0), 1)).next)).toEqual([3, 1]);
    expect(doorAt(done(built.plan, moveWall(built.wall(3), -2)).next)).toEqual([3, 0]);
  });
  test('slides along neighbours that are not square to it', () => {
    const built = planBuilder().outline(places([0, 0], [6, 0], [5, 4], [1, 4]), 3);
    expect(ring(done(built.plan, moveWall(built.wall(2), -4)).next)).toEqual([[0, 0], [6, 0], [4, 8], [2, 8]]);
  });
  test('joins a neighbour that goes straight on with a short wall', () => {
    const built = planBuilder().outline(places([0, 0], [2, 0], [4, 0], [6, 0], [6, 4], [0, 4]), 3).opening(1, 1, 1);
    const { next } = done(built.plan, moveWall(built.wall(1), -1));
    expect(ring(next)).toEqual([[0, 0], [2, 0], [2, -1], [4, -1], [4, 0], [6, 0], [6, 4], [0, 4]]);
    expect(doorAt(next)).toEqual([3, -1]);
    expect(roomIn(next).outline.find(({ x, y }) => x === 2 && y === -1)?.id).toBe(built.wall(1).id);
  });
  test('moves a wall of a shaft: into the room is out of the shaft', () => {
    const built = room().hole(rectangle(1, 1, planPoint(2, 2)));
    for (const winding of ['as drawn', 'turned']) {
      const plan = structuredClone(built.plan);
      const hole = roomIn(plan).holes[0] ?? [];
      if (winding === 'turned') hole.reverse();
      const { next } = done(plan, moveWall({ ...built.wall(0), id: hole[0]?.id ?? '' }, 0.25));
      expect(area_m2(ringOf(roomIn(next).holes[0] ?? []))).toBeCloseTo(1.25, 9);
    }
  });
  test('keeps the area of its strip, whatever the winding', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.integer({ min: 0, max: 3 }), fc.boolean(), (offset_m, wall, isTurned) => {
        const built = planBuilder().room(6, 4, 3);
        if (isTurned) roomIn(built.plan).outline.reverse();
        const { next } = done(built.plan, moveWall(wallOf(built.plan, wall), offset_m));
        const line = wallLines(roomIn(built.plan)).get(wallOf(built.plan, wall).id);
        const length_m = line ? Math.hypot(line.b.x - line.a.x, line.b.y - line.a.y) : 0;
        expect(area_m2(ringOf(roomIn(next).outline))).toBeCloseTo(24 - offset_m * length_m, 6);
      }),
    );
  });
  test('is refused through the opposite wall, and without a distance', () => {
    const built = room();
    expect(refusal(built.plan, moveWall(built.wall(0), 4))).toMatch(/cross or touch|two corners/);
    expect(refusal(built.plan, moveWall(built.wall(0), Number.NaN))).toContain('not a number');
    const straight = planBuilder().outline(places([0, 0], [3, 0], [6, 0], [6, 4], [0, 4]), 3);
    expect(refusal(straight.plan, moveWall(straight.wall(0), 1e-5))).toContain('1 mm');
    expect(done(built.plan, moveWall(built.wall(0), 0)).patches).toEqual([]);
  });
});

describe('editWall and editEnclosure', () => {
  const built = room();
  test('set what is known', () => {
    const next = doneAll(
      built.plan,
      editWall(built.wall(1), { construction: 'block', loadBearing: true, allowablePressure_Pa: 250 }),
      editEnclosure(built.enclosure, { name: 'Hut', height_m: 2.438, temperature: { least_K: 291, greatest_K: 300 }, underFloor: { depth_m: 0.3, isProtected: true, exclusion: null }, slope: { at: { x: 0, y: 0 }, direction_rad: 0, rise: 0.1 } }),
      editEnclosure(built.enclosure, { occupancy: 'normally-occupied', hazardClass: 'C', concentration_pct: 40.3, altitude_m: 12, adjacent: 'Corridor' }),
      editEnclosure(built.enclosure, { height_m: null, name: undefined }),
    );
    expect(roomIn(next)).toMatchObject({ name: 'Hut', height_m: null, concentration_pct: 40.3, underFloor: { depth_m: 0.3 } });
    expect(roomIn(next).outline[1]?.wall).toEqual({ construction: 'block', loadBearing: true, allowablePressure_Pa: 250, capacity_N: null, reaches: 'unknown' });
  });
  test.each<[string, Parameters<typeof editEnclosure>[1], string]>([
    ['no name', { name: '' }, 'needs a name'],
    ['a height of 0', { height_m: 0 }, 'more than 0'],
    ['a height below 0', { height_m: -1 }, 'Height cannot be less than 0'],
    ['a concentration above 99', { concentration_pct: 120 }, 'Concentration must be at most 99'],
    ['temperatures the wrong way round', { temperature: { least_K: 300, greatest_K: 290 } }, 'least temperature'],
    ['a void without depth', { underFloor: { depth_m: 0, isProtected: true, exclusion: null } }, 'Under floor must be more than 0'],
    ['a height that is not a number', { height_m: Number.NaN }, 'Height'],
  ])('are refused for %s', (_, change, reason) => {
    expect(refusal(built.plan, editEnclosure(built.enclosure, change))).toContain(reason);
  });
  test('are refused for walls and rooms that have gone', () => {
    expect(refusal(built.plan, editWall({ ...built.wall(0), id: 'gone' }, {}))).toContain('wall is no longer');
    expect(refusal(built.plan, editWall(built.wall(0), { allowablePressure_Pa: -5 }))).toContain('Allowable pressure cannot be less than 0');
    expect(refusal(built.plan, editEnclosure({ ...built.enclosure, id: 'gone' }, {}))).toContain('enclosure is no longer');
  });
});

describe('rings', () => {
  test('a ring is made sound and wound to the left', () => {
    expect(soundRing(places([0, 0], [1, 0], [1, 1], [0, 0]), 'The ring')).toEqual(places([0, 0], [1, 0], [1, 1]));
    expect(woundLeft(rectangle(1, 2).reverse()).map(({ x, y }) => [x, y])).toContainEqual([1, 2]);
    expect(isCounterClockwise(woundLeft(rectangle(1, 2).reverse()))).toBe(true);
    expect(() => refuseFault(places([0, 0], [1, 1], [1, 0], [0, 1]), 'The ring')).toThrow('The ring would cross');
  });
  test('winding a ring the other way moves neither doors nor walls', () => {
    const built = room().opening(1, 1, 0.8, { hinge: 'end' });
    const enclosure = structuredClone(roomIn(built.plan));
    const lines = wallLines(enclosure);
    enclosure.outline.reverse();
    // Reversed as they are, corners name other walls: give every wall its own name back first.
    const turned = structuredClone(roomIn(built.plan));
    turned.outline = turned.outline.map((corner, i, all) => ({ ...corner, id: all[(i + 3) % 4]?.id ?? '' })).reverse();
    for (const opening of Object.values(turned.openings)) {
      const line = lines.get(opening.wall);
      opening.along_m = (line ? Math.hypot(line.b.x - line.a.x, line.b.y - line.a.y) : 0) - opening.along_m;
      opening.hinge = opening.hinge === 'start' ? 'end' : 'start';
    }
    windRings(turned);
    const cornerSet = (e: Enclosure) => new Map(e.outline.map(({ id, x, y }) => [id, [x, y]]));
    expect(cornerSet(turned)).toEqual(cornerSet(roomIn(built.plan)));
    expect(turned.openings).toEqual(roomIn(built.plan).openings);
  });
  test('a shift as a whole leaves openings alone', () => {
    const enclosure = structuredClone(roomIn(room().plan));
    const before = structuredClone(enclosure.openings);
    reshape(enclosure, () => {
      for (const corner of enclosure.outline) corner.x += 1 / 3;
    });
    expect(enclosure.openings).toEqual(before);
  });
});

describe('addOpening in a plan where names are taken', () => {
  test('counts on', () => {
    const built = room();
    const { next } = done(built.plan, addOpening(built.wall(2), 'door', 1, 1));
    expect(Object.values(roomIn(next).openings).map(({ name }) => name)).toEqual(['Door 1', 'Door 2']);
  });
});
