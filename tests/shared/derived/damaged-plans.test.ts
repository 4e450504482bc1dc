import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clashPass } from '#shared/derived/clash-pass';
import { nearestClearanceFace } from '#shared/derived/clearance-faces';
import { cornersNear } from '#shared/derived/corner-zone';
import { coverageOf } from '#shared/derived/coverage';
import { derivePlan } from '#shared/derived/derive-plan';
import { jetsOf } from '#shared/derived/jets';
import { legalArcs } from '#shared/derived/legal-arc';
import { wallsNear } from '#shared/derived/near-wall';
import { planPoint } from '#shared/geometry/point';
import { planSchema } from '#shared/model/schema';
import { planBuilder } from '../../support/plan-builder.ts';

// Few distinct coordinates, so that places coincide, lie in line and rings cross themselves; some far out at the schema's limit.
const coordinate = fc.oneof({ weight: 9, arbitrary: fc.integer({ min: 0, max: 6 }) }, { weight: 1, arbitrary: fc.constantFrom(-100_000, 100_000, 1e-9, 2.5000001) });
const place = fc.record({ x: coordinate, y: coordinate });
const ring = fc.array(place, { minLength: 3, maxLength: 7 });
const height = fc.constantFrom(-0.3, 0, 1, 2.4, 2.7, 3);

const damaged = fc
  .record({
    rooms: fc.array(ring, { minLength: 1, maxLength: 2 }),
    holes: fc.array(ring, { maxLength: 2 }),
    zones: fc.array(ring, { maxLength: 2 }),
    things: fc.array(fc.record({ ring, bottom: height, top: height }), { maxLength: 3 }),
    runs: fc.array(fc.array(fc.record({ x: coordinate, y: coordinate, z: height }), { minLength: 2, maxLength: 5 }), { maxLength: 3 }),
    nozzles: fc.array(fc.record({ x: coordinate, y: coordinate, z: height }), { maxLength: 3 }),
    room: fc.option(height),
    voids: fc.boolean(),
    isRound: fc.boolean(),
  })
  .map(({ rooms, holes, zones, things, runs, nozzles, room, voids, isRound }) => {
    const built = planBuilder();
    for (const outline of rooms) built.outline(outline, room === null ? null : Math.abs(room), voids ? { underFloor: { depth_m: 0.4, isProtected: true, exclusion: null }, ceilingVoid: { depth_m: 0.5, isProtected: true, exclusion: null } } : {});
    for (const hole of holes) built.hole(hole);
    for (const zone of zones) built.ceilingZone(zone, 2.2);
    for (const thing of things) built.obstruction('other', thing.ring, thing.bottom, thing.top);
    built.network();
    for (const places of runs) built.run(places);
    for (const { x, y, z } of nozzles) built.nozzle(x, y, z, [0, 1, 4]);
    if (isRound) for (const profile of Object.values(built.plan.profiles)) profile.footprint = { shape: 'circle', radius_m: 3, source: '' };
    return built.plan;
  });

test('whatever a plan file may hold, everything is derived, and every figure is a number', () => {
  fc.assert(
    fc.property(damaged, (plan) => {
      expect(planSchema.safeParse(plan).success).toBe(true);
      const derived = derivePlan(plan);
      const figures: (number | undefined)[] = [];
      for (const space of derived.spaces) {
        const { covered_m2, floor_m2, uncovered, perNozzle } = coverageOf(space, derived.nozzles.filter((nozzle) => nozzle.space === space));
        figures.push(space.area_m2, space.floor_m, space.tallest_m, space.grossVolume_m3, space.ceilingAt_m(planPoint(1, 1)));
        figures.push(covered_m2, floor_m2, ...uncovered.flatMap(({ area_m2, worst, worstDistance_m }) => [area_m2, worst.x, worst.y, worstDistance_m]));
        figures.push(...perNozzle.flatMap(({ area_m2, farthest_m }) => [area_m2, farthest_m]));
        expect(space.area_m2).toBeGreaterThanOrEqual(0);
        expect(covered_m2).toBeLessThanOrEqual(floor_m2 + 1e-6);
        expect(covered_m2).toBeGreaterThanOrEqual(0);
      }
      for (const nozzle of derived.nozzles) {
        figures.push(nozzle.localCeiling_m, ...jetsOf(nozzle).flatMap(({ length_m, to }) => [length_m, to.x, to.y]), ...legalArcs(nozzle).flatMap(({ from_rad, to_rad }) => [from_rad, to_rad]));
        figures.push(...cornersNear(nozzle, 1.5).flatMap(({ bearing_rad, distance_m }) => [bearing_rad, distance_m]), ...wallsNear(nozzle, 1).flatMap(({ axis_rad, distance_m }) => [axis_rad, distance_m]));
        if (nozzle.space && nozzle.at) figures.push(nearestClearanceFace(nozzle.space, nozzle.at)?.distance_m);
      }
      for (const network of derived.networks) {
        figures.push(network.totalLength_m, network.pipeVolume_m3, ...network.paths.map(({ length_m }) => length_m), ...network.fittings.map(({ turn_rad }) => turn_rad));
      }
      figures.push(...clashPass(derived).flat().flatMap(({ contacts }) => contacts.map(({ clearance_m }) => clearance_m)));
      for (const figure of figures) if (figure !== undefined) expect(Number.isFinite(figure)).toBe(true);
    }),
    { numRuns: 400 },
  );
});
