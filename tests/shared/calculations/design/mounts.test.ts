import { describe, expect, test } from 'vitest';
import { type PlanBuilder, planBuilder } from '../../../support/plan-builder.ts';
import { known, networkOf, networkSums, profileOf, reason, roomOf, sure, wholePlan } from '../../../support/whole-plan.ts';

const ANCHORS = { kind: 'M12', count: 4, tension_N: 4000, shear_N: 5000, edge_m: 0.2, leastEdge_m: 0.1 };
const mountOf = (built: PlanBuilder) => sure(known(networkSums(built).mounts)[0]);
/** A cylinder in a room of 4 × 3 m, its back to `back_rad`. */
const hungAt = (x: number, y: number, back_rad: number, change: (built: PlanBuilder) => PlanBuilder = (built) => built) => change(planBuilder().room(4, 3, 2.5)).network().cylinder(x, y, back_rad);

describe('wall mounts', () => {
  test('by hand: 110 kg times 1.5 on its wall, shear and pull on four anchors', () => {
    const built = wholePlan();
    const cylinder = sure(Object.values(networkOf(built).cylinders)[0]);
    Object.assign(cylinder, { railHeight_m: 1.2, anchors: ANCHORS });
    const load_N = 110 * 9.80665 * 1.5;
    expect(mountOf(built)).toMatchObject({
      name: 'C1', isLoadBearing: true, capacity_N: 3000, factor: 1.5,
      wall: { kind: 'wall', id: sure(roomOf(built).outline[3]).id },
      load_N: expect.closeTo(load_N, 9),
      // Its axis stands 0.2 m off the wall.
      anchor: { shear_N: expect.closeTo(load_N / 4, 9), tension_N: expect.closeTo((load_N * 0.2) / (1.2 * 4), 9) },
    });
    cylinder.anchors = null;
    expect(mountOf(built).anchor).toBeUndefined();
    Object.assign(cylinder, { anchors: ANCHORS, railHeight_m: null });
    expect(mountOf(built).anchor).toBeUndefined();
  });

  test.each([
    ['in a corner, back to the west', 0.15, 0.15, Math.PI, 3],
    ['in a corner, back to the south, nearer the west', 0.12, 0.15, -Math.PI / 2, 0],
    ['with an angle many turns off', 0.15, 0.15, Math.PI - 60 * Math.PI, 3],
    ['with an angle many turns off the other way', 0.15, 0.15, -Math.PI / 2 + 60 * Math.PI, 0],
    ['outside, on the other side of the wall', -0.2, 1.5, 0, 3],
  ])('a cylinder %s hangs on the wall behind it', (_, x, y, back_rad, wall) => {
    const built = hungAt(x, y, back_rad);
    expect(mountOf(built).wall?.id).toBe(built.wall(wall).id);
  });

  test('nothing is behind one in the middle of the room, nor one whose back is to the room', () => {
    for (const built of [hungAt(2, 1.5, Math.PI), hungAt(0.15, 1.5, 0)]) expect(mountOf(built)).toMatchObject({ wall: undefined, isLoadBearing: null, capacity_N: null, anchor: undefined });
  });

  test('a column in the room carries as well', () => {
    const built = hungAt(1.8, 1.5, 0, (room) =>
      room.hole([
        { x: 2, y: 1 },
        { x: 2, y: 2 },
        { x: 3, y: 2 },
        { x: 3, y: 1 },
      ]),
    );
    const corner = sure(sure(roomOf(built).holes[0])[0]);
    corner.wall.capacity_N = 1234;
    expect(mountOf(built)).toMatchObject({ wall: { id: corner.id }, capacity_N: 1234 });
  });

  test('of two rooms that share a wall, the one that it stands in counts', () => {
    const east = planBuilder().room(4, 3, 2.5, { x: 4, y: 0 }).room(4, 3, 2.5);
    const wall = east.wall(1).id;
    const built = east.network().cylinder(3.8, 1.5, 0);
    expect(mountOf(built).wall?.id).toBe(wall);
    const other = planBuilder().room(4, 3, 2.5).room(4, 3, 2.5, { x: 4, y: 0 });
    const west = other.wall(3).id;
    expect(mountOf(other.network().cylinder(4.2, 1.5, Math.PI)).wall?.id).toBe(west);
  });

  test('a wall of another level carries nothing', () => {
    expect(mountOf(planBuilder().room(4, 3, 2.5).level('Upper', 3).network().cylinder(0.2, 1.5, Math.PI)).wall).toBeUndefined();
  });

  test('what stands on the floor hangs on nothing', () => {
    const built = wholePlan();
    sure(Object.values(networkOf(built).cylinders)[0]).mounting = 'floor';
    expect(known(networkSums(built).mounts)).toEqual([]);
  });

  test.each<[string, (built: PlanBuilder) => void, string]>([
    ['a profile', (built) => { networkOf(built).profile = 'lost'; }, 'the network has no unit profile.'],
    ['a mass', (built) => void delete profileOf(built).limits.filledMass_kg, '“Filled mass” is blank in the unit profile “Sample 80 L unit (invented)”.'],
    ['any mass', (built) => { profileOf(built).limits.filledMass_kg = { value: 0, source: '' }; }, '“Filled mass” is 0 in the unit profile “Sample 80 L unit (invented)”.'],
  ])('without %s the load is not known', (_, change, because) => {
    const built = wholePlan();
    change(built);
    expect(reason(networkSums(built).mounts)).toBe(because);
  });
});
