import fc from 'fast-check';
import type { PlanPoint3 } from '#shared/geometry/point';
import { derivePlan } from '#shared/derived/derive-plan';
import type { DerivedNetwork } from '#shared/derived/derived';
import type { Plan } from '#shared/model/plan';
import { PIPE_SIZES, type PipeSize } from '#shared/profile/pipe-table';
import type { MadeFitting } from '#shared/profile/unit-profile';
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

/** Makes that reduce by so many sizes, so that every kind of reducing fitting comes up. */
const MADE_SIZES: readonly PipeSize[] = ['3/4', '1', '1-1/4', '2'];

/** Reaches that no table has and no two legs share, so that a leg taken for another shows [m]. */
const reach_m = (kind: string, size: PipeSize, leg: number): number => 0.03 + 0.002 * PIPE_SIZES.indexOf(size) + 0.0003 * leg + 0.0001 * kind.length;

/** A made fitting for every set of legs of these sizes. */
const EVERY_MADE_FITTING = everyMadeFitting();
function everyMadeFitting(): MadeFitting[] {
  const made = (kind: MadeFitting['kind'], ...sizes: readonly PipeSize[]): MadeFitting => ({
    kind, legs: sizes.map((size, leg) => ({ size, reach_m: reach_m(kind, size, leg) })), weight_kg: 1, source: 'made up for the test',
  });
  const pairs = MADE_SIZES.flatMap((a) => MADE_SIZES.map((b) => [a, b] as const));
  const larger = pairs.filter(([a, b]) => PIPE_SIZES.indexOf(a) >= PIPE_SIZES.indexOf(b));
  return [
    ...larger.flatMap(([a, b]) => [
      ...(['elbow-90', 'elbow-45', 'union', 'coupling', 'reducer'] as const).map((kind) => made(kind, a, b)),
      ...MADE_SIZES.map((branch) => made('tee', a, b, branch)),
      ...larger.map(([c, d]) => made('cross', a, b, c, d)),
    ]),
  ];
}

const SQUARE = [[1, 0, 0], [-1, 0, 0], [0, 1, 0], [0, -1, 0], [0, 0, 1], [0, 0, -1]] as const;
/** Directions of an offset that leaves a pipe at 45°. */
const SLANTED = [[HALF, HALF, 0], [HALF, 0, HALF], [0, HALF, -HALF]] as const;

/**
 * A tree as it is built: runs along the axes and at 45°, sizes that change, unions, couplings, drains and dirt traps, some
 * runs longer than the stock. Its profile has a made fitting for every set of legs, so that every end is known, except
 * where no made fitting has the angle.
 */
export const anyBuiltPlan: fc.Arbitrary<Plan> = fc
  .array(
    fc.record({
      parent: fc.oneof(fc.constant(-1), fc.nat(50)),
      direction: fc.oneof({ weight: 2, arbitrary: fc.constant('straight on' as const) }, { weight: 5, arbitrary: fc.constantFrom(...SQUARE) }, { weight: 1, arbitrary: fc.constantFrom(...SLANTED) }),
      length_m: fc.oneof({ weight: 6, arbitrary: fc.double({ min: 0.3, max: 4, noNaN: true }) }, { weight: 1, arbitrary: fc.double({ min: 6, max: 30, noNaN: true }) }, { weight: 1, arbitrary: fc.double({ min: 0.06, max: 0.3, noNaN: true }) }),
      size: fc.constantFrom(...MADE_SIZES),
      part: fc.constantFrom(null, null, null, 'union' as const, 'coupling' as const, 'dirt-trap' as const, 'drain' as const, 'plug' as const),
      isNozzle: fc.boolean(),
    }),
    { minLength: 1, maxLength: 12, size: 'max' },
  )
  .map((steps) => {
    const built = planBuilder().room(90, 90, 9).network();
    for (const profile of Object.values(built.plan.profiles)) Object.assign(profile, { madeFittings: EVERY_MADE_FITTING, orifices: [] });
    const origin = place3(5, 5, 3);
    const places = [origin];
    const taken = new Map<PlanPoint3, string[]>();
    const onward = new Map<PlanPoint3, readonly [number, number, number]>();
    for (const { parent, direction, length_m, size, part, isNozzle } of steps) {
      // The place where the pipe begins has one pipe only: what meets there is the unit's own.
      const start = places.length === 1 ? origin : (parent < 0 ? places.at(-1) : places[1 + (parent % (places.length - 1))]) ?? origin;
      const way = direction === 'straight on' ? (onward.get(start) ?? SQUARE[0]) : direction;
      const [x, y, z] = way;
      const end = place3(start.x + x * length_m, start.y + y * length_m, start.z + z * length_m);
      if (places.some((place) => Math.hypot(place.x - end.x, place.y - end.y, place.z - end.z) < 1e-3)) continue;
      // No pipe lies in another, and no node has more legs than a cross.
      const ways = taken.get(start) ?? [];
      if (ways.includes(`${x} ${y} ${z}`) || ways.length >= 4) continue;
      taken.set(start, [...ways, `${x} ${y} ${z}`]);
      taken.set(end, [`${0 - x} ${0 - y} ${0 - z}`]);
      onward.set(end, way);
      built.run([start, end], size);
      const node = Object.values(built.plan.networks[built.networkId]?.nodes ?? {}).find(({ id }) => id === built.inNetwork('node').id);
      if (node) node.part = part;
      if (isNozzle && part === null) built.nozzle(end.x, end.y, end.z);
      places.push(end);
    }
    return built.plan;
  });
