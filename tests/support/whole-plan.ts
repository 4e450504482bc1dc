import type { Design, EnclosureDesign, NetworkDesign } from '#shared/calculations/design/design';
import { designOf } from '#shared/calculations/design/design-of';
import type { Worked } from '#shared/calculations/design/worked';
import type { DischargeSource } from '#shared/calculations/discharge/discharge-source';
import { workedDischarge } from '#shared/calculations/discharge/worked-discharge';
import { derivePlan } from '#shared/derived/derive-plan';
import type { AssemblyPart, Enclosure, Network, Release } from '#shared/model/plan';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import type { UnitProfile } from '#shared/profile/unit-profile';
import { type PlanBuilder, place3, planBuilder } from './plan-builder.ts';

/** Everything that the sums ask of an enclosure. */
export const KNOWN_ROOM: Partial<Enclosure> = {
  temperature: { least_K: 291.15, greatest_K: 300.15 },
  altitude_m: 0,
  occupancy: 'normally-occupied',
  hazardClass: 'A-surface',
  concentration_pct: 40.3,
  people: { exposure: '5-min', egress_s: 25, delay_s: 30 },
  leakage: { kind: 'area', area_m2: 0.006, pressure_Pa: 10 },
  lowestProtected_m: 0.3,
};

export const REGULATOR: AssemblyPart = { id: 'part-r', kind: 'regulator', name: 'Regulator', length_m: 0.15, setPressure_Pa: 6_101_325, arrowDownstream: true };

export const RELEASE: Release = {
  supply_V: 20.4,
  wireGauge: '14',
  stranding: 'solid',
  devices: [
    { id: 'd1', name: 'Solenoid', kind: 'solenoid', distance_m: 20, current_A: null, leastVoltage_V: null, wiring: 'in-line' },
    { id: 'd2', name: 'Sounder', kind: 'other', distance_m: 10, current_A: 0.5, leastVoltage_V: 16, wiring: 'in-line' },
  ],
  panelCurrent_A: 2,
  panelPulse_s: 1,
  conduit: { kind: 'EMT', size: '1/2' },
  conductors: [{ type: 'THHN', wireGauge: '14', count: 4 }],
  pulls: [],
  pressureSwitch: null,
  endOfLine: 'after-last',
  isActuatorWatched: true,
  panel: { isListed: true, isCompatible: true, listing: 'Listing of the test' },
  battery: { capacity_Ah: 18, standby_A: 0.3, alarm_A: 2 },
};

/** What was found, or a test that is written wrong. */
export function sure<T>(found: T | undefined | null): T {
  if (found === undefined || found === null) throw new Error('The plan of the test has no such thing.');
  return found;
}

/** Gives the last room of a builder walls of which all is known, and a relief vent in wall 1. */
export function finishRoom(built: PlanBuilder, freeArea_m2: number | null): PlanBuilder {
  for (const corner of roomOf(built).outline) corner.wall = { construction: 'block', loadBearing: true, allowablePressure_Pa: 250, capacity_N: 3000, reaches: 'slab' };
  return built.opening(1, 1.5, 0.3, { name: 'Relief vent', kind: 'relief-vent', swing: 'none', bottom_m: 1.8, height_m: 0.3, freeArea_m2, leadsTo: 'outdoors' });
}

/** A room of 40 m³ with one cylinder of the sample unit and one nozzle, all known; what is built next belongs to it. */
export function wholePlan(): PlanBuilder {
  return finishRoom(planBuilder().room(5, 3.2, 2.5, { x: 0, y: 0 }, structuredClone(KNOWN_ROOM)), 0.0242)
    .network({ assembly: [{ ...REGULATOR }], release: structuredClone(RELEASE) })
    .cylinder(0.2, 0.5, Math.PI)
    .run([place3(0.2, 0.5, 2), place3(0.2, 0.5, 2.3), place3(2.5, 0.5, 2.3), place3(2.5, 1.6, 2.3), place3(2.5, 1.6, 2.2)])
    .nozzle(2.5, 1.6, 2.2, [0, Math.PI], { orificeArea_m2: 2.2e-5 })
    .support(1, 0.5, 2.3, 'rigid', 800);
}

/** The room and the network that a builder worked at last, and the sample profile of its plan, to change. */
export const roomOf = ({ plan, enclosure }: PlanBuilder): Enclosure => sure(plan.levels[enclosure.level]?.enclosures[enclosure.id]);
export const networkOf = ({ plan, networkId }: PlanBuilder): Network => sure(plan.networks[networkId]);
export const profileOf = ({ plan }: PlanBuilder): UnitProfile => sure(plan.profiles[SAMPLE_PROFILE.id]);

/** Every input once for all tests of a file. */
const worked: DischargeSource = workedDischarge();
export const designFor = ({ plan }: PlanBuilder, source: DischargeSource = worked): Design => designOf(derivePlan(plan), source);

/** Sums of the only enclosure or network, or of one by its number. */
export const enclosureSums = (built: PlanBuilder, source?: DischargeSource, index = 0): EnclosureDesign => sure(designFor(built, source).enclosures[index]);
export const networkSums = (built: PlanBuilder, source?: DischargeSource, index = 0): NetworkDesign => sure(designFor(built, source).networks[index]);

/** Sums that must be known. */
export function known<T>(group: Worked<T>): T {
  if (!group.isKnown) throw new Error(`Not worked out: ${group.because}`);
  return group.sums;
}

/** Why sums are not known; they must not be, and the reason must read on after “Not worked out:”. */
export function reason(group: Worked<unknown>): string {
  if (group.isKnown) throw new Error('It was worked out.');
  if (!/^[a-z“].*\.$/s.test(group.because)) throw new Error(`Not a reason: ${group.because}`);
  return group.because;
}

/** Every group of sums of a design with where it stands. */
export const groupsOf = ({ enclosures, networks }: Design): [where: string, group: Worked<unknown>][] =>
  [...enclosures, ...networks].flatMap((part) =>
    Object.entries(part).flatMap(([key, value]): [string, Worked<unknown>][] => (typeof value === 'object' && value !== null && 'isKnown' in value ? [[`${part.name} ${key}`, value]] : [])),
  );

/** Where in sums a number is not finite, whatever hangs on them. */
export function strayNumbers(value: unknown, where = '', seen: Set<object> = new Set()): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${where} ${value}`];
  if (typeof value !== 'object' || value === null || seen.has(value)) return [];
  seen.add(value);
  return Object.entries(value).flatMap(([key, each]) => strayNumbers(each, `${where}.${key}`, seen));
}
