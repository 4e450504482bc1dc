import { createHash } from 'node:crypto';
import { type PlanPoint, type PlanPoint3, distance3_m, polar } from '#shared/geometry/point';
import { type Enclosure, type Network, type Opening, type Plan, type Underlay, type Wall, newPlan, takeId, unknownOpening, unknownThing, unknownWall } from '#shared/model/plan';
import { suggestedSupports } from '#shared/calculations/design/suggested-supports';
import { derivePlan } from '#shared/derived/derive-plan';
import type { PipeSize } from '#shared/profile/pipe-table';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';
import { stockJointsOf } from '#shared/take-off/stock-joints';

/** A finished plan with the floor plan files that it stands on. */
export interface Demo {
  readonly plan: Plan;
  readonly assets: readonly { readonly file: string; readonly sha256: string; readonly bytes: Uint8Array }[];
}

/** The level that every demo draws on. */
export const DEMO_LEVEL = 'level-0';

/** Height, occupancy and temperatures that all demo rooms share: 18–27 °C, 40.3 % design, sea level. */
const DEMO_BASIS = {
  slope: null,
  ceilingZones: {},
  ceilingVoid: null,
  temperature: { least_K: 291.15, greatest_K: 300.15 },
  altitude_m: 0,
  occupancy: 'normally-occupied',
  hazardClass: 'A-surface',
  concentration_pct: 40.3,
  people: { exposure: '5-min', egress_s: 25, delay_s: 30 },
  leakage: { kind: 'area', area_m2: 0.006, pressure_Pa: 10 },
  lowestProtected_m: 0.3,
  ceiling: { make: 'hard', clipped_m: null },
  ambientSound_dBA: 60,
  dischargedWith: '',
  shutdowns: {},
  afterDischarge: {
    extract: 'portable',
    extractFlow_m3_s: 0.2,
    procedure: 'Nobody goes in until the room has been ventilated and a meter at the door and inside shows 19.5 % oxygen or more.',
    hasMeter: true,
  },
} as const;

export const blockWall = (): Wall => ({ construction: 'block', loadBearing: true, allowablePressure_Pa: 250, capacity_N: 3000, reaches: 'slab' });
export const studWall = (): Wall => ({ construction: 'stud-gypsum', loadBearing: false, allowablePressure_Pa: 250, capacity_N: null, reaches: 'slab' });

/** Begins a demo: an empty plan in feet with its title filled in. */
export function startDemo(project: string, site: string, levelName: string, floorElevation_m = 0): Plan {
  const plan = newPlan('feet');
  plan.info = {
    ...plan.info,
    project,
    site,
    client: 'Invented for trying the program',
    drawnBy: 'Demo',
    checkedBy: 'Demo, second reader',
    code: 'ISO 14520-1',
    edition: '2023',
    notes: 'Demo plan. Everything in it is invented; nothing may be built from it.',
  };
  plan.basis.greatestDelay_s = 60;
  plan.basis.seismic = 'not-required';
  plan.basis.lockOutValve = 'not-required';
  plan.basis.extract = 'required';
  plan.basis.batteryStandby_s = 24 * 3600;
  plan.basis.batteryAlarm_s = 5 * 60;
  const level = plan.levels[DEMO_LEVEL];
  if (level) Object.assign(level, { name: levelName, floorElevation_m });
  return plan;
}

/** The one level of a demo, for filling. */
export function demoLevel(plan: Plan): Plan['levels'][string] {
  const level = plan.levels[DEMO_LEVEL];
  if (!level) throw new Error('A demo begins with its level.');
  return level;
}

/** Adds a room; its walls run in the order of the places, wall i from place i. */
export function addRoom(
  plan: Plan,
  name: string,
  places: readonly PlanPoint[],
  height_m: number,
  walls: readonly Wall[],
  underFloor: Enclosure['underFloor'] = null,
): Enclosure {
  const id = takeId(plan, 'enclosure');
  const room: Enclosure = {
    id,
    name,
    outline: places.map(({ x, y }, i) => ({ id: takeId(plan, 'corner'), x, y, wall: walls[i] ?? unknownWall() })),
    holes: [],
    height_m,
    underFloor,
    openings: {},
    adjacent: '',
    ...structuredClone(DEMO_BASIS),
  };
  demoLevel(plan).enclosures[id] = room;
  return room;
}

/** Adds an opening in wall `wallIndex` of a room, its middle `along_m` from the wall's first corner. */
export function addOpening(plan: Plan, room: Enclosure, wallIndex: number, opening: Pick<Opening, 'kind' | 'along_m' | 'width_m'> & Partial<Opening>): void {
  const id = takeId(plan, 'opening');
  const wall = room.outline[wallIndex]?.id;
  if (!wall) throw new Error(`${room.name} has no wall ${wallIndex}.`);
  const isDoor = opening.kind === 'door';
  room.openings[id] = {
    ...unknownOpening(),
    id,
    name: isDoor ? 'Door' : 'Relief vent',
    wall,
    bottom_m: isDoor ? 0 : 1.8,
    height_m: isDoor ? 2.032 : 0.3,
    swing: isDoor ? 'out' : 'none',
    hinge: 'start',
    undercut_m: isDoor ? 0 : null,
    leadsTo: isDoor ? 'corridor' : 'outdoors',
    closes: isDoor ? true : null,
    ...opening,
  };
}

/** Adds a thing in the room: closed ring from lower left to upper right, from bottom to top. */
export function addThing(
  plan: Plan,
  kind: 'beam' | 'rack' | 'cabinet' | 'duct',
  name: string,
  [x0, y0, x1, y1]: readonly [number, number, number, number],
  bottom_m: number,
  top_m: number,
): void {
  const id = takeId(plan, 'obstruction');
  const footprint = [
    { x: x0, y: y0 },
    { x: x1, y: y0 },
    { x: x1, y: y1 },
    { x: x0, y: y1 },
  ];
  demoLevel(plan).obstructions[id] = { ...unknownThing(), hasLooseItems: false, hasDrives: false, id, name, kind, footprint, bottom_m, top_m, isPermeable: kind !== 'beam' };
}

/** Where the outlet of a cylinder points, and where its hose ends. */
export interface HoseDraft {
  readonly outlet_rad: number;
  readonly end: PlanPoint3;
}

/** Centre of its tee to the cap of a dirt trap [m]: 4 in. */
const TRAP_m = 4 * 0.0254;
/** Height of the gauge and of the second strap above the floor [m]. */
const GAUGE_m = 1.524;
const STRAP_m = 0.6096;

/** Draws one network: cylinders, runs of pipe through places, nozzles at their ends. */
export interface NetworkDraft {
  readonly network: Network;
  cylinder(name: string, at: PlanPoint, back_rad: number, hose: HoseDraft): void;
  /** Manifold from its blind end to its outlet. */
  manifold(from: PlanPoint3, to: PlanPoint3): void;
  /** A dirt trap straight on from a place where the pipe turns to its last nozzle. */
  trap(size: PipeSize, from: PlanPoint3, toward_rad: number): void;
  /** Pipe through the places in flow order; a place used before is the same node. */
  run(size: PipeSize, ...places: PlanPoint3[]): void;
  /** With the orifice of a code of the sample profile. */
  nozzle(name: string, at: PlanPoint3, holes: 'E-W' | 'N-S' | '45°', orifice: string): void;
}

const HOLES_rad = { 'E-W': [0, Math.PI], 'N-S': [Math.PI / 2, (3 * Math.PI) / 2], '45°': [Math.PI / 4, (5 * Math.PI) / 4] };

/** Area of an orifice that the sample nozzle is made with. */
function orificeOf(code: string): number {
  const made = SAMPLE_PROFILE.orifices.find((each) => each.code === code);
  if (!made) throw new Error(`The sample nozzle has no orifice ${code}.`);
  return made.area_m2;
}

/** A pilot solenoid and a sounder on one supervised pair in tubing. */
const releaseCircuit = (plan: Plan): Network['release'] => ({
  supply_V: 20.4,
  wireGauge: '14',
  stranding: 'solid',
  devices: [
    { id: takeId(plan, 'device'), name: 'Release solenoid', kind: 'solenoid', distance_m: 18.288, current_A: null, leastVoltage_V: null, wiring: 'in-line' },
    { id: takeId(plan, 'device'), name: 'Discharge sounder', kind: 'other', distance_m: 12.192, current_A: 0.1, leastVoltage_V: 16, wiring: 'in-line' },
  ],
  panelCurrent_A: 2,
  panelPulse_s: 1,
  conduit: { kind: 'EMT', size: '1/2' },
  conductors: [{ type: 'THHN', wireGauge: '14', count: 4 }],
  pulls: [{ name: 'Panel to cylinder', bends_rad: [Math.PI / 2, Math.PI / 2, Math.PI / 2] }],
  pressureSwitch: { setPoint_Pa: 25_101_325, isClosedWhenCharged: true },
  endOfLine: 'after-last',
  isActuatorWatched: true,
  panel: { isListed: true, isCompatible: true, listing: 'Invented listing 1' },
  battery: { capacity_Ah: 7, standby_A: 0.15, alarm_A: 2 },
});

/** What every support of the demos bears [N]. */
const SUPPORT_BEARS_N = 800;

/** Puts supports on all drawn pipe by the table of the plan's basis of design. */
export function placeSupports(plan: Plan): void {
  for (const derived of derivePlan(plan).networks) {
    const network = plan.networks[derived.network.id];
    for (const { at, kind } of suggestedSupports(derived, plan.basis, stockJointsOf(derived))) {
      const id = takeId(plan, 'support');
      if (network) network.supports[id] = { brace: 'none', id, at: { x: at.x, y: at.y, z: at.z }, kind, capacity_N: SUPPORT_BEARS_N };
    }
  }
}

/** Lengths of the rigid parts of the assembly [m]. */
export const CHECK_VALVE_m = 0.1;
export const REGULATOR_m = 0.15;

/** Begins a network whose pipe starts at `source`, with hose, check valve and regulator before it. */
export function startNetwork(plan: Plan, name: string, source: PlanPoint3, hose_m: number): NetworkDraft {
  const id = takeId(plan, 'network');
  const network: Network = { manifold: null, installation: { bonding: 'bonded', marking: 'Nitrogen, with an arrow along the flow, every 10 ft', finish: 'Primed and painted' },
    id,
    name,
    level: DEMO_LEVEL,
    profile: 'sample-80',
    source: null,
    cylinders: {},
    assembly: [
      { id: takeId(plan, 'part'), kind: 'hose', name: 'Discharge hose', length_m: hose_m, setPressure_Pa: null, arrowDownstream: true },
      { id: takeId(plan, 'part'), kind: 'check-valve', name: 'Check valve', length_m: CHECK_VALVE_m, setPressure_Pa: null, arrowDownstream: true },
      { id: takeId(plan, 'part'), kind: 'regulator', name: 'Pressure regulator', length_m: REGULATOR_m, setPressure_Pa: 6_101_325, arrowDownstream: true },
    ],
    nodes: {},
    pipes: {},
    nozzles: {},
    supports: {},
    release: releaseCircuit(plan),
  };
  plan.networks[id] = network;
  const nodeAt = (at: PlanPoint3): string => {
    const known = Object.values(network.nodes).find((node) => node.at.x === at.x && node.at.y === at.y && node.at.z === at.z);
    if (known) return known.id;
    const node = takeId(plan, 'node');
    network.nodes[node] = { part: null, id: node, at: { x: at.x, y: at.y, z: at.z } };
    return node;
  };
  network.source = nodeAt(source);
  return {
    network,
    cylinder(cylinderName, at, back_rad, { outlet_rad, end }) {
      const cylinder = takeId(plan, 'cylinder');
      network.cylinders[cylinder] = { restraints_m: [STRAP_m], outlet_rad, hoseEnd: { x: end.x, y: end.y, z: end.z }, gauge: { height_m: GAUGE_m, facing_rad: back_rad > 0 ? back_rad - Math.PI : back_rad + Math.PI }, storage: null, exposedTo: [], id: cylinder, name: cylinderName, at: { x: at.x, y: at.y }, mounting: 'wall', back_rad, railHeight_m: 1.2192, anchors: { kind: 'Wedge anchor M12', count: 4, tension_N: 4000, shear_N: 5000, edge_m: 0.25, leastEdge_m: 0.15 } };
    },
    manifold(from, to) {
      const regulator = network.assembly.findIndex(({ kind }) => kind === 'regulator');
      network.assembly.splice(regulator, 0, { id: takeId(plan, 'part'), kind: 'manifold', name: 'Manifold', length_m: distance3_m(from, to), setPressure_Pa: null, arrowDownstream: true });
      network.manifold = { from: { ...from }, to: { ...to } };
    },
    trap(size, from, toward_rad) {
      const end = { ...polar(from, toward_rad, TRAP_m), z: from.z };
      this.run(size, from, end);
      const node = network.nodes[nodeAt(end)];
      if (node) node.part = 'dirt-trap';
    },
    run(size, ...places) {
      for (let i = 1; i < places.length; i += 1) {
        const [from, to] = [places[i - 1], places[i]];
        if (!from || !to) continue;
        const pipe = takeId(plan, 'pipe');
        network.pipes[pipe] = { insulation_m: 0, measured_m: null, id: pipe, from: nodeAt(from), to: nodeAt(to), size, schedule: '40', material: 'black-steel', joint: 'threaded' };
      }
    },
    nozzle(nozzleName, at, holes, orifice) {
      const nozzle = takeId(plan, 'nozzle');
      network.nozzles[nozzle] = {
        id: nozzle,
        name: nozzleName,
        node: nodeAt(at),
        holes_rad: [...HOLES_rad[holes]],
        rotation_rad: 0,
        tilt_rad: 0,
        orificeArea_m2: orificeOf(orifice),
        serves: null,
      };
    },
  };
}

/** Lays an imported file under the plan and keeps its bytes. */
export function layUnderlay(
  plan: Plan,
  name: string,
  bytes: Uint8Array,
  underlay: Pick<Underlay, 'kind' | 'at' | 'metresPerUnit' | 'calibration' | 'knownLengths'>,
): Demo {
  placeSupports(plan);
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  const file = `${sha256.slice(0, 16)}.${underlay.kind}`;
  const asset = takeId(plan, 'asset');
  plan.assets[asset] = { id: asset, name, file, sha256 };
  const id = takeId(plan, 'underlay');
  demoLevel(plan).underlays[id] = {
    id,
    name,
    asset,
    page: 1,
    rotation_rad: 0,
    opacity: 0.7,
    hiddenLayers: [],
    visible: true,
    locked: true,
    ...underlay,
  };
  return { plan, assets: [{ file, sha256, bytes }] };
}
