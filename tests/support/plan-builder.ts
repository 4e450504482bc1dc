import { rectangle } from '#shared/geometry/outline';
import type { PlanPoint, PlanPoint3 } from '#shared/geometry/point';
import { distance3_m } from '#shared/geometry/point';
import {
  type Adjoining,
  type Device,
  type DeviceKind,
  type Enclosure,
  type Network,
  type Nozzle,
  type Obstruction,
  type Opening,
  type Pipe,
  type Plan,
  type RefOf,
  type Shutdown,
  type Support,
  emptyLevel,
  newPlan,
  takeId,
  unknownRoom,
  unknownWall,
} from '#shared/model/plan';
import { newDevice } from '#shared/model/new-device';
import type { PipeSize } from '#shared/profile/pipe-table';
import { SAMPLE_PROFILE } from '#shared/profile/sample-profile';

/** A place in space [m]. */
export const place3 = (x: number, y: number, z: number): PlanPoint3 => ({ x, y, z });

/**
 * Builds plans for tests, step by step, without going through commands. Every method answers the builder
 * itself; what was made last is named by `enclosure`, `wall(i)`, `lastNozzle`, `inNetwork("pipe")`, …, and the
 * plan as it stands is `plan`. Ids come from the plan's own serial, names are N1, C1, Room 1 and so on.
 * @example
 * const built = planBuilder().room(6, 4, 2.7).network().cylinder(0.2, 2, Math.PI)
 *   .run([place3(0.2, 2, 2), place3(0.2, 2, 2.5), place3(3, 2, 2.5), place3(3, 2, 2.3)]).nozzle(3, 2, 2.3);
 * built.plan; built.lastNozzle // the plan, and the reference of N1
 */
export const planBuilder = (lengths: 'feet' | 'metric' = 'metric'): PlanBuilder => new PlanBuilder(lengths);

export class PlanBuilder {
  readonly plan: Plan;
  #level = 'level-0';
  #enclosure = '';
  #network = '';
  #last: Record<string, string> = {};

  constructor(lengths: 'feet' | 'metric') {
    this.plan = newPlan(lengths);
    this.plan.profiles = { [SAMPLE_PROFILE.id]: structuredClone(SAMPLE_PROFILE) };
  }

  #id(kind: string): string {
    const taken = takeId(this.plan, kind);
    this.#last[kind] = taken;
    return taken;
  }

  #levelNow() {
    return this.plan.levels[this.#level] ?? missing('level');
  }

  #enclosureNow(): Enclosure {
    return this.#levelNow().enclosures[this.#enclosure] ?? missing('room');
  }

  #networkNow(): Network {
    if (!this.#network) this.network();
    return this.plan.networks[this.#network] ?? missing('network');
  }

  /** Another level; what follows is drawn on it. */
  level(name: string, floorElevation_m: number): this {
    this.#level = this.#id('level');
    this.plan.levels[this.#level] = emptyLevel(this.#level, name, floorElevation_m);
    return this;
  }

  /** A rectangular room with its south-west corner at `at`; walls 0 south, 1 east, 2 north, 3 west. */
  room(width_m: number, depth_m: number, height_m: number | null, at: PlanPoint = { x: 0, y: 0 }, change: Partial<Enclosure> = {}): this {
    return this.outline(rectangle(width_m, depth_m, at), height_m, change);
  }

  /** A room of any outline, counter-clockwise; wall i runs from corner i to corner i + 1. */
  outline(ring: readonly PlanPoint[], height_m: number | null, change: Partial<Enclosure> = {}): this {
    const { enclosures } = this.#levelNow();
    const id = this.#id('enclosure');
    this.#enclosure = id;
    enclosures[id] = {
      id,
      name: `Room ${Object.keys(enclosures).length + 1}`,
      outline: this.#corners(ring),
      holes: [],
      height_m,
      slope: null,
      ceilingZones: {},
      underFloor: null,
      ceilingVoid: null,
      openings: {},
      temperature: null,
      altitude_m: null,
      occupancy: 'unknown',
      hazardClass: 'unknown',
      concentration_pct: null,
      ...unknownRoom(),
      adjacent: '',
      ...change,
    };
    return this;
  }

  #corners(ring: readonly PlanPoint[]) {
    return ring.map(({ x, y }) => ({ id: this.#id('corner'), x, y, wall: unknownWall() }));
  }

  /** A shaft or column cut out of the last room. */
  hole(ring: readonly PlanPoint[]): this {
    this.#enclosureNow().holes.push(this.#corners(ring));
    return this;
  }

  /** An opening in wall i of the last room, its middle `along_m` from the wall's corner. */
  opening(wall: number, along_m: number, width_m: number, change: Partial<Opening> = {}): this {
    const enclosure = this.#enclosureNow();
    const id = this.#id('opening');
    enclosure.openings[id] = {
      id,
      name: `Door ${Object.keys(enclosure.openings).length + 1}`,
      kind: 'door',
      crossing: null, undercut_m: null, ventPath: [],
      wall: this.wall(wall).id,
      along_m,
      width_m,
      bottom_m: 0,
      height_m: 2.1,
      swing: 'out',
      hinge: 'start',
      freeArea_m2: null,
      leadsTo: 'unknown',
      closes: null,
      ...change,
    };
    return this;
  }

  /** A part of the last room's ceiling with a height of its own. */
  ceilingZone(ring: readonly PlanPoint[], height_m: number): this {
    const { ceilingZones } = this.#enclosureNow();
    const id = this.#id('zone');
    ceilingZones[id] = { id, name: `Zone ${Object.keys(ceilingZones).length + 1}`, outline: ring.map(({ x, y }) => ({ x, y })), height_m };
    return this;
  }

  obstruction(kind: Obstruction['kind'], footprint: readonly PlanPoint[], bottom_m: number, top_m: number, change: Partial<Obstruction> = {}): this {
    const id = this.#id('obstruction');
    this.#levelNow().obstructions[id] = { id, name: kind, kind, footprint: footprint.map(({ x, y }) => ({ x, y })), bottom_m, top_m, front_rad: null, voltage_V: null, hasLooseItems: null, hasDrives: null, isPermeable: false, ...change };
    return this;
  }

  /** A detector, sign, button or the like; what is left out is not known. */
  device(kind: DeviceKind, x: number, y: number, change: Partial<Device> = {}): this {
    const id = this.#id('device');
    this.#levelNow().devices[id] = { ...newDevice(kind, id, `${kind} ${id}`, { x, y }), ...change } as Device;
    return this;
  }

  /** A space beside the rooms. */
  adjoining(kind: Adjoining['kind'], outline: readonly PlanPoint[], change: Partial<Adjoining> = {}): this {
    const id = this.#id('adjoining');
    this.#levelNow().adjoining[id] = { id, name: kind, outline: outline.map(({ x, y }) => ({ x, y })), kind, floor_m: 0, gas: 'not-assessed', note: '', ...change };
    return this;
  }

  /** A row of the last room's release matrix. */
  shutdown(kind: Shutdown['kind'], target: string | null, change: Partial<Shutdown> = {}): this {
    const id = this.#id('shutdown');
    this.#enclosureNow().shutdowns[id] = { id, name: `${kind} ${id}`, kind, target, on: 'first-detector', ...change };
    return this;
  }

  dimension(a: PlanPoint, b: PlanPoint, offset_m = 0.5): this {
    const id = this.#id('dimension');
    this.#levelNow().dimensions[id] = { id, a: { x: a.x, y: a.y }, b: { x: b.x, y: b.y }, offset_m };
    return this;
  }

  note(x: number, y: number, text: string): this {
    const id = this.#id('note');
    this.#levelNow().notes[id] = { id, at: { x, y }, text };
    return this;
  }

  /** An imported floor plan at the origin, in metres. Its asset has a made-up digest. */
  underlay(name = 'floor.dxf'): this {
    const asset = this.#id('asset');
    this.plan.assets[asset] = { id: asset, name, file: `${asset}.dxf`, sha256: 'a'.repeat(64) };
    const id = this.#id('underlay');
    this.#levelNow().underlays[id] = {
      id, name, asset, kind: 'dxf', page: 1, at: { x: 0, y: 0 }, rotation_rad: 0, metresPerUnit: 1, calibration: 'file-units',
      knownLengths: [], opacity: 0.6, hiddenLayers: [], visible: true, locked: false,
    };
    return this;
  }

  /** Another network on the level; what follows belongs to it. */
  network(change: Partial<Network> = {}): this {
    const id = this.#id('network');
    this.#network = id;
    this.plan.networks[id] = {
      id, name: `Network ${Object.keys(this.plan.networks).length + 1}`, level: this.#level, profile: SAMPLE_PROFILE.id, source: null,
      cylinders: {}, assembly: [], manifold: null, installation: { bonding: 'unknown', marking: '', finish: '' }, nodes: {}, pipes: {}, nozzles: {}, supports: {}, release: null, ...change,
    };
    return this;
  }

  cylinder(x: number, y: number, back_rad: number): this {
    const { cylinders } = this.#networkNow();
    const id = this.#id('cylinder');
    cylinders[id] = { restraints_m: [], outlet_rad: null, hoseEnd: null, gauge: null, storage: null, exposedTo: null, id, name: `C${this.#count('cylinders') + 1}`, at: { x, y }, mounting: 'wall', back_rad, railHeight_m: null, anchors: null };
    return this;
  }

  #count(part: 'cylinders' | 'nozzles'): number {
    return Object.values(this.plan.networks).reduce((sum, network) => sum + Object.keys(network[part]).length, 0);
  }

  #nodeAt(at: PlanPoint3): string {
    const network = this.#networkNow();
    const known = Object.values(network.nodes).find((node) => distance3_m(node.at, at) < 1e-6);
    if (known) {
      this.#last.node = known.id;
      return known.id;
    }
    const id = this.#id('node');
    network.nodes[id] = { part: null, id, at: { x: at.x, y: at.y, z: at.z } };
    return id;
  }

  /** Straight pipes from place to place; equal places are one node. The network's first place is its source. */
  run(places: readonly PlanPoint3[], size: PipeSize = '3/4', change: Partial<Pipe> = {}): this {
    const network = this.#networkNow();
    const nodes = places.map((at) => this.#nodeAt(at));
    network.source ??= nodes[0] ?? null;
    nodes.slice(1).forEach((to, i) => {
      const id = this.#id('pipe');
      network.pipes[id] = { id, from: nodes[i] ?? '', to, size, schedule: '40', material: 'black-steel', joint: 'threaded', insulation_m: 0, measured_m: null, ...change };
    });
    return this;
  }

  /** A nozzle on the node at a place, made when there is none. Two holes, east and west, unless told otherwise. */
  nozzle(x: number, y: number, z: number, holes_rad: readonly number[] = [0, Math.PI], change: Partial<Nozzle> = {}): this {
    const network = this.#networkNow();
    const node = this.#nodeAt({ x, y, z });
    const id = this.#id('nozzle');
    network.nozzles[id] = { id, name: `N${this.#count('nozzles') + 1}`, node, holes_rad: [...holes_rad], rotation_rad: 0, tilt_rad: 0, orificeArea_m2: null, serves: null, ...change };
    return this;
  }

  /** A support at a place of a pipe. */
  support(x: number, y: number, z: number, kind: Support['kind'] = 'rigid', capacity_N: number | null = null): this {
    const id = this.#id('support');
    this.#networkNow().supports[id] = { brace: 'none', id, at: { x, y, z }, kind, capacity_N };
    return this;
  }

  /** Level that is drawn on. */
  get levelId(): string {
    return this.#level;
  }
  get networkId(): string {
    return this.#network;
  }
  get enclosure(): RefOf<'enclosure'> {
    return { kind: 'enclosure', level: this.#level, id: this.#enclosure };
  }
  get networkRef(): RefOf<'network'> {
    return { kind: 'network', id: this.#network };
  }
  /** Wall i of the last room's outline. */
  wall(i: number): RefOf<'wall'> {
    return { kind: 'wall', level: this.#level, enclosure: this.#enclosure, id: this.#enclosureNow().outline[i]?.id ?? missing('wall') };
  }
  /** Corner i of the last room's outline. */
  corner(i: number): RefOf<'corner'> {
    return { ...this.wall(i), kind: 'corner' };
  }
  /** The thing of a kind on the level that was made last. */
  onLevel<K extends 'underlay' | 'obstruction' | 'device' | 'adjoining' | 'dimension' | 'note'>(kind: K): { kind: K; level: string; id: string } {
    return { kind, level: this.#level, id: this.#last[kind] ?? missing(kind) };
  }
  get lastOpening(): RefOf<'opening'> {
    return { kind: 'opening', level: this.#level, enclosure: this.#enclosure, id: this.#last.opening ?? missing('opening') };
  }
  get lastZone(): RefOf<'ceiling-zone'> {
    return { kind: 'ceiling-zone', level: this.#level, enclosure: this.#enclosure, id: this.#last.zone ?? missing('zone') };
  }
  /** The last cylinder, node, pipe or nozzle of the network. */
  inNetwork<K extends 'cylinder' | 'node' | 'pipe' | 'nozzle' | 'support'>(kind: K): { kind: K; network: string; id: string } {
    return { kind, network: this.#network, id: this.#last[kind] ?? missing(kind) };
  }
  /** The node at a place of the network. */
  nodeAt(x: number, y: number, z: number): RefOf<'node'> {
    const found = Object.values(this.#networkNow().nodes).find((node) => distance3_m(node.at, { x, y, z }) < 1e-3);
    return { kind: 'node', network: this.#network, id: found?.id ?? missing('node') };
  }
  /** The last nozzle. */
  get lastNozzle(): RefOf<'nozzle'> {
    return { kind: 'nozzle', network: this.#network, id: this.#last.nozzle ?? missing('nozzle') };
  }
}

function missing(what: string): never {
  throw new Error(`The builder has no ${what} yet.`);
}
