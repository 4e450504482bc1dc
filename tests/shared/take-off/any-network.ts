import fc from 'fast-check';
import { derivePlan } from '#shared/derived/derive-plan';
import type { DerivedNetwork } from '#shared/derived/derived';
import type { Plan } from '#shared/model/plan';
import type { PipeSize } from '#shared/profile/pipe-table';
import { place3, planBuilder } from '../../support/plan-builder.ts';

const HALF = Math.SQRT1_2;
const DIRECTIONS = [
  [1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1], [HALF, HALF, 0], [HALF, 0, HALF], [0.6, 0.8, 0],
] as const;

const SIZES: readonly PipeSize[] = ['1/2', '3/4', '1', '2', '4'];

/** A tree of pipe in space, its branches of any make; nozzles hang on some of its nodes. */
export const anyPipePlan: fc.Arbitrary<Plan> = fc
  .array(
    fc.record({
      parent: fc.nat(50),
      direction: fc.constantFrom(...DIRECTIONS),
      length_m: fc.oneof(fc.double({ min: 0.001, max: 0.2, noNaN: true }), fc.double({ min: 0.2, max: 6, noNaN: true }), fc.double({ min: 6, max: 40, noNaN: true })),
      size: fc.constantFrom(...SIZES),
      schedule: fc.constantFrom('40' as const, '40' as const, '80' as const),
      joint: fc.constantFrom('threaded' as const, 'threaded' as const, 'threaded' as const, 'welded' as const),
      isNozzle: fc.boolean(),
    }),
    { minLength: 1, maxLength: 14, size: 'max' },
  )
  .map((steps) => {
    const built = planBuilder().room(40, 40, 5).network();
    const places = [place3(5, 5, 3)];
    for (const { parent, direction: [x, y, z], length_m, size, schedule, joint, isNozzle } of steps) {
      const start = places[parent % places.length] ?? place3(5, 5, 3);
      const end = place3(start.x + x * length_m, start.y + y * length_m, start.z + z * length_m);
      built.run([start, end], size, { schedule, joint });
      if (isNozzle) built.nozzle(end.x, end.y, end.z);
      places.push(end);
    }
    return built.plan;
  });

/** The first network of a plan, derived. */
export function firstNetwork(plan: Plan): DerivedNetwork {
  const network = derivePlan(plan).networks[0];
  if (!network) throw new Error('The plan has no network.');
  return network;
}
