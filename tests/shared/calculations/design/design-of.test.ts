import fc from 'fast-check';
import { freeze } from 'immer';
import { describe, expect, test } from 'vitest';
import { designOf } from '#shared/calculations/design/design-of';
import type { DischargeInput } from '#shared/calculations/discharge/discharge';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { derivePlan } from '#shared/derived/derive-plan';
import type { PlanPoint3 } from '#shared/geometry/point';
import { ALTITUDE_METHODS, DESIGN_SETS, EXPOSURES, LOSS_SETS, PIPE_SPECIFICATIONS, STRESS_SETS, SUPPORT_TABLES } from '#shared/model/basis-of-design';
import type { AssemblyPart, Enclosure, Pipe } from '#shared/model/plan';
import { planSchema } from '#shared/model/schema';
import { LIMIT_KEYS } from '#shared/profile/limit-catalogue';
import { PIPE_SIZES } from '#shared/profile/pipe-table';
import { type UnitProfile, blankProfile } from '#shared/profile/unit-profile';
import { place3, planBuilder } from '../../../support/plan-builder.ts';
import { REGULATOR, RELEASE, designFor, finishRoom, groupsOf, known, networkOf, reason, roomOf, strayNumbers, sure, wholePlan } from '../../../support/whole-plan.ts';

describe('every sum of a plan', () => {
  test('is known when all is known, and every number is one', () => {
    const built = wholePlan();
    Object.assign(built.plan.basis, { batteryStandby_s: 24 * 3600, batteryAlarm_s: 300 });
    const design = designFor(built);
    for (const [where, group] of groupsOf(design)) expect(group.isKnown, where).toBe(true);
    expect(groupsOf(design)).toHaveLength(12 + 12);
    expect(groupsOf(design).flatMap(([where, group]) => strayNumbers(group, where))).toEqual([]);
  });

  test('an empty plan has none', () => {
    expect(designFor(planBuilder())).toEqual({ enclosures: [], networks: [], asked: [] });
  });

  test('of a plan on which only blank things stand, there are reasons and not one number', () => {
    const built = planBuilder().room(5, 4, null).network();
    built.plan.profiles = { 'sample-80': blankProfile('sample-80', 'Blank') };
    const hung = groupsOf(designFor(built)).filter(([, group]) => group.isKnown);
    // Nothing hangs on a wall: that is known.
    expect(hung.map(([where]) => where)).toEqual(['Network 1 mounts']);
    for (const [where, group] of groupsOf(designFor(built))) if (!group.isKnown) expect(reason(group), where).not.toMatch(/formula does not hold/);
    built.run([place3(1, 1, 2), place3(3, 1, 2)]).nozzle(3, 1, 2).cylinder(0.1, 2, Math.PI);
    for (const [where, group] of groupsOf(designFor(built))) expect(reason(group), where).not.toMatch(/formula does not hold/);
  });

  test('an unprotected void is no part of its enclosure; each enclosure comes once, in the order of the plan', () => {
    const built = planBuilder()
      .room(5, 4, 2.5, { x: 0, y: 0 }, { underFloor: { depth_m: 0.3, isProtected: false, exclusion: null } })
      .room(3, 3, 2.5, { x: 6, y: 0 }, { ceilingVoid: { depth_m: 0.3, isProtected: true, exclusion: null } });
    expect(designFor(built).enclosures.map(({ name, volume }) => [name, known(volume).spaces.length])).toEqual([
      ['Room 1', 1],
      ['Room 2', 2],
    ]);
  });

  test('a step of a drag keeps the very sums of what it does not touch, and asks for no other discharge', () => {
    const built = finishRoom(wholePlan().room(5, 3.2, 2.5, { x: 6, y: 0 }), 0.02)
      .network({ assembly: [{ ...REGULATOR, id: 'part-2' }] })
      .cylinder(6.2, 0.5, Math.PI)
      .run([place3(6.2, 0.5, 2), place3(6.2, 0.5, 2.3), place3(8.5, 0.5, 2.3), place3(8.5, 1.6, 2.3), place3(8.5, 1.6, 2.2)])
      .nozzle(8.5, 1.6, 2.2, [0, Math.PI], { orificeArea_m2: 2.2e-5 });
    const inputs = new Map<string, DischargeInput>();
    const source = workedDischarge();
    const step = (plan: typeof built.plan) =>
      designOf(derivePlan(plan), (network, input) => {
        inputs.set(network, input);
        return source(network, input);
      });
    const start = freeze(built.plan, true);
    const before = step(start);
    const asked = new Map(inputs);
    const moved = moveNozzle(built.lastNozzle, { x: 8.6, y: 1.6, z: 2.2 })(start);
    if (!moved.ok) throw new Error(moved.reason);
    const after = step(moved.next);
    const [still, dragged] = [sure(before.networks[0]), sure(before.networks[1])];
    for (const key of ['discharge', 'zones', 'supports', 'thrusts', 'mounts', 'shares', 'supervision', 'release', 'conduit'] as const) expect(after.networks[0]?.[key], key).toBe(still[key]);
    expect(after.networks[1]?.discharge).not.toBe(dragged.discharge);
    for (const key of ['volume', 'agent', 'leaks', 'hold'] as const) for (const i of [0, 1]) expect(after.enclosures[i]?.[key], key).toBe(before.enclosures[i]?.[key]);
    for (const [network, input] of inputs) expect(asked.get(network) === input, network).toBe(!network.startsWith(dragged.ref.id));
  });

  test('a plan that can be changed in place is never answered from memory', () => {
    const built = wholePlan();
    const before = sure(designFor(built).enclosures[0]);
    roomOf(built).height_m = 3;
    roomOf(built).leakage = { kind: 'unknown' };
    networkOf(built).release = null;
    const { enclosures, networks } = designFor(built);
    expect(known(sure(enclosures[0]).volume).net_m3).toBeCloseTo((known(before.volume).net_m3 * 3) / 2.5, 9);
    expect(reason(sure(enclosures[0]).leaks)).toMatch(/leakage/);
    expect(reason(sure(networks[0]).release)).toMatch(/not drawn up/);
  });
});

const coordinate = fc.constantFrom(0, 0.2, 1, 2.5, 3, 4.8, 7);
const height = fc.constantFrom(-0.3, 0, 2, 2.3, 2.5, 3);
const place = fc.record({ x: coordinate, y: coordinate, z: height });
/** Mostly what a finished plan has, so that a sum meets one thing at a time that is missing or far off. */
const usually = <T>(usual: T, ...others: fc.Arbitrary<T>[]): fc.Arbitrary<T> => fc.oneof({ weight: 12, arbitrary: fc.constant(usual) }, ...others.map((arbitrary) => ({ weight: 1, arbitrary })));
const nothing = fc.constant(null);
const wildNumber = fc.oneof(fc.double({ min: 0, max: 1e9, noNaN: true }), fc.double({ min: 0, max: 100, noNaN: true }), fc.constantFrom(0, 1e9, 1e-9));
const ASSEMBLIES: readonly AssemblyPart[][] = [
  [],
  [REGULATOR],
  [REGULATOR],
  [{ ...REGULATOR, setPressure_Pa: null }],
  [{ ...REGULATOR, setPressure_Pa: 0 }],
  [{ ...REGULATOR, setPressure_Pa: 1e8 }],
  [{ ...REGULATOR, kind: 'hose' }],
];
const temperature_K = fc.constantFrom(150, 255, 291, 300, 330, 400);

/** Plans in which anything may be blank, 0 or far off, as the schema lets them. */
const wildPlan = fc
  .record({
    basis: fc.record({
      designSet: fc.constantFrom(...DESIGN_SETS), constants: fc.constantFrom('iso', 'nfpa'), altitudeMethod: fc.constantFrom(...ALTITUDE_METHODS), lossSet: fc.constantFrom(...LOSS_SETS),
      stressSet: fc.constantFrom(...STRESS_SETS), pipeSpecification: fc.constantFrom(...PIPE_SPECIFICATIONS), supportTable: fc.constantFrom(...SUPPORT_TABLES),
      exposureBy: fc.constantFrom('stricter', 'concentration', 'oxygen'), ventFlow: fc.constantFrom('manual', 'calculated'), ventTemperature: fc.constantFrom('20C', 'hottest'), ventCountsLeakage: fc.boolean(),
      holdModel: fc.constantFrom('sharp', 'wide', 'mixing'), holdEnd_pct: fc.constantFrom(1, 85, 100), leakExponent: fc.constantFrom(0.5, 0.6, 0.999), bias_Pa: fc.constantFrom(0, 10),
      cylinderProcess: fc.constantFrom('wall-heat', 'isothermal', 'adiabatic'), hottestCylinder_K: fc.constantFrom(273, 327, 373),
    }),
    room: fc.record({
      height_m: usually<number | null>(2.5, nothing, fc.constantFrom(0, 2.8, 100_000)),
      temperature: usually<Enclosure['temperature']>({ least_K: 291.15, greatest_K: 300.15 }, nothing, fc.record({ least_K: temperature_K, greatest_K: temperature_K })),
      altitude_m: usually<number | null>(0, nothing, fc.constantFrom(-1000, 1500, 6000)),
      concentration_pct: usually<number | null>(40.3, nothing, fc.constantFrom(0, 1e-6, 99)),
      hazardClass: usually<Enclosure['hazardClass']>('A-surface', fc.constantFrom('unknown', 'A-higher', 'B', 'C')),
      lowestProtected_m: usually<number | null>(0.3, nothing, fc.constantFrom(-0.3, 0, 2.5, 9)),
      people: fc.record({ exposure: fc.constantFrom(...EXPOSURES), egress_s: fc.constant(null), delay_s: fc.constant(null) }),
      leakage: fc.oneof(
        { weight: 2, arbitrary: fc.constant({ kind: 'unknown' as const }) },
        { weight: 6, arbitrary: fc.record({ kind: fc.constant('area' as const), area_m2: fc.constantFrom(1e-9, 0.006, 1000), pressure_Pa: fc.constantFrom(1e-3, 10, 1000) }) },
        fc.record({ kind: fc.constant('door-fan' as const), readings: fc.array(fc.record({ direction: fc.constantFrom('in' as const, 'out' as const), pressure_Pa: fc.constantFrom(10, 20, 50), flow_m3_s: fc.constantFrom(0.1, 0.15, 0.25) }), { maxLength: 8 }) }),
      ),
      underFloor: usually<Enclosure['underFloor']>(null, fc.record({ depth_m: fc.constant(0.4), isProtected: fc.boolean(), exclusion: fc.constant(null) })),
      ceilingVoid: usually<Enclosure['ceilingVoid']>(null, fc.record({ depth_m: fc.constant(0.5), isProtected: fc.boolean(), exclusion: fc.constant(null) })),
    }),
    walls: fc.array(usually<number | null>(250, nothing, fc.constantFrom(0, 1e6)), { minLength: 4, maxLength: 4 }),
    vent: usually<number | null>(0.0242, nothing, fc.constantFrom(0, 1000)),
    hasVent: fc.boolean(),
    limits: fc.array(fc.record({ key: fc.constantFrom(...LIMIT_KEYS), value: fc.oneof(nothing, wildNumber) }), { maxLength: 2 }),
    fittingClass: usually<UnitProfile['fittingClass']>('300', nothing, fc.constantFrom('2000', '3000', '6000')),
    assembly: fc.constantFrom(...ASSEMBLIES),
    sizes: fc.array(usually<(typeof PIPE_SIZES)[number]>('3/4', fc.constantFrom(...PIPE_SIZES)), { minLength: 2, maxLength: 2 }),
    joint: usually<Pipe['joint']>('threaded', fc.constantFrom('welded', 'grooved')),
    runs: usually<PlanPoint3[][]>([], fc.array(fc.array(place, { minLength: 2, maxLength: 4 }), { maxLength: 2 })),
    extraNozzles: usually<PlanPoint3[]>([], fc.array(place, { maxLength: 2 })),
    orifice: usually<number | null>(2.2e-5, nothing, fc.constantFrom(0, 1e-9, 1e-3, 1)),
    holes: usually<number[]>([0, Math.PI], fc.constantFrom([], [0], [1, 2, 3, 999])),
    cylinders: usually(1, fc.integer({ min: 0, max: 3 })),
    supports: fc.array(place, { maxLength: 3 }),
    hasRelease: fc.boolean(),
  })
  .map((wild) => {
    const built = planBuilder().room(5, 3.2, 2.5, { x: 0, y: 0 }, wild.room);
    Object.assign(built.plan.basis, wild.basis);
    if (wild.hasVent) finishRoom(built, wild.vent);
    for (const [i, corner] of roomOf(built).outline.entries()) corner.wall.allowablePressure_Pa = wild.walls[i] ?? null;
    const profile = sure(Object.values(built.plan.profiles)[0]);
    for (const { key, value } of wild.limits) {
      if (value === null) delete profile.limits[key];
      else profile.limits[key] = { value, source: '' };
    }
    profile.fittingClass = wild.fittingClass;
    built.network({ assembly: structuredClone(wild.assembly), release: wild.hasRelease ? structuredClone(RELEASE) : null });
    for (let i = 0; i < wild.cylinders; i += 1) built.cylinder(0.2, 0.5 + 0.4 * i, Math.PI * (1 + 40 * i));
    const change = { joint: wild.joint };
    built.run([place3(0.2, 0.5, 2), place3(0.2, 0.5, 2.3), place3(2.5, 0.5, 2.3)], wild.sizes[0], change).run([place3(2.5, 0.5, 2.3), place3(2.5, 1.6, 2.3), place3(2.5, 1.6, 2.2)], wild.sizes[1], change);
    built.nozzle(2.5, 1.6, 2.2, wild.holes, { orificeArea_m2: wild.orifice });
    for (const places of wild.runs) built.run(places);
    for (const { x, y, z } of wild.extraNozzles) built.nozzle(x, y, z, wild.holes, { orificeArea_m2: wild.orifice });
    for (const { x, y, z } of wild.supports) built.support(x, y, z);
    return built;
  });

describe('whatever a plan may hold', () => {
  const expectSound = (built: ReturnType<typeof wholePlan>, source?: Parameters<typeof designFor>[1]): void => {
    for (const [where, group] of groupsOf(designFor(built, source))) {
      if (group.isKnown) expect(strayNumbers(group.sums, where)).toEqual([]);
      else reason(group);
    }
  };

  test('sums are numbers or say why not, without a discharge', () => {
    fc.assert(
      fc.property(wildPlan, (built) => {
        expect(planSchema.safeParse(built.plan).error).toBeUndefined();
        expectSound(built, () => undefined);
      }),
      { numRuns: 300 },
    );
  });

  test('and with one', () => {
    fc.assert(
      fc.property(wildPlan, (built) => expectSound(built)),
      { numRuns: 60 },
    );
  });
});
