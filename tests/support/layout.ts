import fc from 'fast-check';
import { designOf } from '#shared/calculations/design/design-of';
import type { DischargeSource } from '#shared/calculations/discharge/discharge-source';
import { derivePlan } from '#shared/derived/derive-plan';
import { type PlanPoint, type PlanPoint3, planPoint } from '#shared/geometry/point';
import { rectangle } from '#shared/geometry/outline';
import { type Enclosure, type Obstruction, type Plan, newPlan, unknownRoom, unknownWall } from '#shared/model/plan';
import type { LimitKey } from '#shared/profile/limit-catalogue';
import type { PipeSize } from '#shared/profile/pipe-table';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import type { UnitProfile } from '#shared/profile/unit-profile';
import type { Finding } from '#shared/rules/finding';
import type { Rule } from '#shared/rules/rule';

/** One room with one network, for asking a single rule. Ids are fixed: level-0, e1, net, n1…, p1…. Lengths [m]. */
export interface LayoutSpec {
  readonly room?: readonly PlanPoint[];
  readonly height_m?: number | null;
  readonly underFloor?: Enclosure['underFloor'];
  readonly nozzles?: readonly { readonly at: PlanPoint3; readonly holes_rad?: readonly number[]; readonly tilt_rad?: number; readonly rotation_rad?: number }[];
  /** Straight pipes from place to place in flow order; the first place is the source. */
  readonly runs?: readonly { readonly places: readonly PlanPoint3[]; readonly size?: PipeSize }[];
  readonly cylinders?: number;
  readonly obstructions?: readonly (Pick<Obstruction, 'footprint' | 'bottom_m' | 'top_m' | 'kind'> & Partial<Obstruction>)[];
  /** Limits put in place of the sample's; null blanks one. */
  readonly limits?: Partial<Record<LimitKey, number | null>>;
  readonly footprint?: UnitProfile['footprint'];
  readonly lengths?: 'feet' | 'metric';
  /** What else is known of the room, of its network and of the basis of design. */
  readonly enclosure?: Partial<Enclosure>;
  readonly network?: Partial<Plan['networks'][string]>;
  readonly basis?: Partial<Plan['basis']>;
  /** What else stands on the level: devices, adjoining spaces. */
  readonly level?: Partial<Plan['levels'][string]>;
}

/** A place in space [m]. */
export const at3 = (x: number, y: number, z: number): PlanPoint3 => ({ x, y, z });

/** Builds the plan of a layout. */
export function layout(spec: LayoutSpec): Plan {
  const plan = newPlan(spec.lengths ?? 'metric');
  const profile: UnitProfile = structuredClone(SAMPLE_PROFILE);
  for (const [key, value] of Object.entries(spec.limits ?? {})) {
    if (value === null) delete profile.limits[key as LimitKey];
    else if (value !== undefined) profile.limits[key as LimitKey] = { value, source: 'test' };
  }
  if (spec.footprint !== undefined) profile.footprint = spec.footprint;
  plan.profiles = { [profile.id]: profile };
  const level = plan.levels['level-0'];
  if (!level) throw new Error('A new plan has its level.');
  level.enclosures.e1 = {
    id: 'e1',
    name: 'Room',
    outline: (spec.room ?? rectangle(6, 4)).map(({ x, y }, i) => ({ id: `c${i}`, x, y, wall: unknownWall() })),
    holes: [],
    height_m: spec.height_m === undefined ? 2.7 : spec.height_m,
    slope: null,
    ceilingZones: {},
    underFloor: spec.underFloor ?? null,
    ceilingVoid: null,
    openings: {},
    temperature: null,
    altitude_m: null,
    occupancy: 'unknown',
    hazardClass: 'unknown',
    concentration_pct: null,
    ...unknownRoom(),
    adjacent: '',
    ...spec.enclosure,
  };
  (spec.obstructions ?? []).forEach((thing, i) => {
    level.obstructions[`o${i + 1}`] = { front_rad: null, voltage_V: null, hasLooseItems: null, hasDrives: null, id: `o${i + 1}`, name: `Thing ${i + 1}`, isPermeable: false, ...thing, footprint: thing.footprint.map(({ x, y }) => ({ x, y })) };
  });
  const network: Plan['networks'][string] = {
    id: 'net',
    name: 'Network',
    level: 'level-0',
    profile: profile.id,
    source: null,
    cylinders: Object.fromEntries(
      Array.from({ length: spec.cylinders ?? 1 }, (_, i) => [
        `cy${i + 1}`,
        { id: `cy${i + 1}`, name: `C${i + 1}`, at: { x: 0.2, y: 0.2 + i * 0.3 }, mounting: 'wall', back_rad: Math.PI, railHeight_m: null, restraints_m: [], anchors: null, outlet_rad: null, hoseEnd: null, gauge: null, storage: null, exposedTo: null },
      ]),
    ),
    assembly: [],
    manifold: null,
    installation: { bonding: 'unknown', marking: '', finish: '' },
    nodes: {},
    pipes: {},
    nozzles: {},
    supports: {},
    release: null,
  };
  plan.networks.net = network;
  const nodeAt = (place: PlanPoint3): string => {
    const known = Object.values(network.nodes).find(({ at }) => at.x === place.x && at.y === place.y && at.z === place.z);
    if (known) return known.id;
    const id = `k${Object.keys(network.nodes).length + 1}`;
    network.nodes[id] = { part: null, id, at: { x: place.x, y: place.y, z: place.z } };
    return id;
  };
  for (const { places, size } of spec.runs ?? []) {
    places.forEach((to, i) => {
      const from = places[i - 1];
      if (!from) {
        const first = nodeAt(to);
        network.source ??= first;
        return;
      }
      const id = `p${Object.keys(network.pipes).length + 1}`;
      network.pipes[id] = { insulation_m: 0, measured_m: null, id, from: nodeAt(from), to: nodeAt(to), size: size ?? '3/4', schedule: '40', material: 'black-steel', joint: 'threaded' };
    });
  }
  (spec.nozzles ?? []).forEach((nozzle, i) => {
    const id = `n${i + 1}`;
    network.nozzles[id] = {
      id,
      name: `N${i + 1}`,
      node: nodeAt(nozzle.at),
      holes_rad: [...(nozzle.holes_rad ?? [0, Math.PI])],
      rotation_rad: nozzle.rotation_rad ?? 0,
      tilt_rad: nozzle.tilt_rad ?? 0,
      orificeArea_m2: null,
      serves: null,
    };
  });
  Object.assign(network, spec.network);
  Object.assign(plan.basis, spec.basis);
  Object.assign(level, spec.level);
  return plan;
}

/** Asks one rule about a plan. */
export function check(rule: Rule, plan: Plan, dischargeOf: DischargeSource = () => undefined): Finding[] {
  const derived = derivePlan(plan);
  return rule.run(derived, designOf(derived, dischargeOf));
}

/** The one finding of a rule about a plan with one subject. */
export function checkOne(rule: Rule, plan: Plan): Finding {
  const findings = check(rule, plan);
  const [finding] = findings;
  if (!finding || findings.length !== 1) throw new Error(`Expected one finding, got ${findings.length}.`);
  return finding;
}

/** A way to lay the same building elsewhere: turned about the origin, then shifted, mirrored east-west when asked. */
export interface Placing {
  readonly angle_rad: number;
  readonly dx: number;
  readonly dy: number;
  readonly isMirrored: boolean;
}

/** Where a place goes. */
export function placed<P extends PlanPoint>(p: P, { angle_rad, dx, dy, isMirrored }: Placing): P {
  const x = isMirrored ? -p.x : p.x;
  return { ...p, x: x * Math.cos(angle_rad) - p.y * Math.sin(angle_rad) + dx, y: x * Math.sin(angle_rad) + p.y * Math.cos(angle_rad) + dy };
}

/** Where a direction goes [rad]. */
export const placedAngle_rad = (direction_rad: number, { angle_rad, isMirrored }: Placing): number =>
  (isMirrored ? Math.PI - direction_rad : direction_rad) + angle_rad;

/** The same layout laid elsewhere; nozzle rotations stay 0 and their holes turn. */
export function placedLayout(spec: LayoutSpec, placing: Placing): Plan {
  const turned = (places: readonly PlanPoint[]): PlanPoint[] => places.map((p) => planPoint(placed(p, placing).x, placed(p, placing).y));
  return layout({
    ...spec,
    room: turned(spec.room ?? rectangle(6, 4)),
    nozzles: spec.nozzles?.map((nozzle) => ({
      ...nozzle,
      at: placed(nozzle.at, placing),
      holes_rad: (nozzle.holes_rad ?? [0, Math.PI]).map((hole_rad) => placedAngle_rad(hole_rad, placing)),
    })),
    runs: spec.runs?.map((run) => ({ ...run, places: run.places.map((p) => placed(p, placing)) })),
    obstructions: spec.obstructions?.map((thing) => ({ ...thing, footprint: turned(thing.footprint).map(({ x, y }) => ({ x, y })) })),
  });
}

/** Any turn, shift and mirroring of a building within a kilometre. */
export const anyPlacing: fc.Arbitrary<Placing> = fc.record({
  angle_rad: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
  dx: fc.double({ min: -500, max: 500, noNaN: true }),
  dy: fc.double({ min: -500, max: 500, noNaN: true }),
  isMirrored: fc.boolean(),
});
