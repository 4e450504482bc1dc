import type { PlanPoint, PlanPoint3 } from '../geometry/point.ts';
import { type Corner, type Enclosure, type Level, type Network, type Plan, type Ref, refKey, ringOf } from '../model/plan.ts';
import { thingName } from '../model/thing-name.ts';
import { fieldLabel } from './field-words.ts';
import type { ThingShape } from './plan-change.ts';

/** A ring of a thing: its places, and for finished walls the corner ids. */
export interface PartRing {
  readonly label: string;
  readonly places: readonly PlanPoint[];
  readonly corners: readonly Corner[] | null;
}

/** One thing of a plan as it is compared with itself in another state. */
export interface PlanPart {
  readonly key: string;
  readonly ref: Ref | null;
  readonly name: string;
  readonly where: string;
  /** Everything that is said of it but its places. */
  readonly own: object;
  /** Places that are moved with it. */
  readonly anchors: readonly (PlanPoint | PlanPoint3)[];
  readonly rings: readonly PartRing[];
  readonly shape: ThingShape | null;
}

type Parts = Map<string, PlanPart>;

const bare = ({ x, y }: PlanPoint): PlanPoint => ({ x, y });
const open = (level: string, ...places: readonly PlanPoint[]): ThingShape => ({ level, places: places.map(bare), isClosed: false });
const closed = (level: string, places: readonly PlanPoint[]): ThingShape => ({ level, places: places.map(bare), isClosed: true });

/** Where an opening is cut out of its wall; undefined when that wall has gone. */
function openingPlaces({ outline, holes }: Enclosure, wall: string, along_m: number, width_m: number): PlanPoint[] {
  const ring = [outline, ...holes].find((corners) => corners.some(({ id }) => id === wall)) ?? [];
  const from = ring.findIndex(({ id }) => id === wall);
  const [a, b] = [ring[from], ring[(from + 1) % (ring.length || 1)]];
  if (!a || !b) return [];
  const length_m = Math.hypot(b.x - a.x, b.y - a.y) || 1;
  return [along_m - width_m / 2, along_m + width_m / 2].map((t) => ({ x: a.x + ((b.x - a.x) * t) / length_m, y: a.y + ((b.y - a.y) * t) / length_m }));
}

function addLevel(parts: Parts, plan: Plan, level: Level): void {
  const on = { level: level.id };
  const { underlays, enclosures, obstructions, devices, adjoining, dimensions, notes, ...own } = level;
  parts.set(`level/${level.id}`, { key: `level/${level.id}`, ref: null, name: `Level ${level.name}`, where: '', own, anchors: [], rings: [], shape: null });
  const add = (ref: Ref, own: object, where: string, more: Partial<PlanPart>): void => {
    parts.set(refKey(ref), { key: refKey(ref), ref, name: thingName(plan, ref), where, own, anchors: [], rings: [], shape: null, ...more });
  };
  for (const { at, ...own } of Object.values(underlays)) add({ kind: 'underlay', ...on, id: own.id }, own, level.name, { anchors: [at], shape: open(level.id, at) });
  for (const { footprint, ...own } of Object.values(obstructions)) {
    add({ kind: 'obstruction', ...on, id: own.id }, own, level.name, { anchors: footprint, rings: [{ label: 'Outline', places: footprint, corners: null }], shape: closed(level.id, footprint) });
  }
  for (const { at, ...own } of Object.values(devices)) add({ kind: 'device', ...on, id: own.id }, own, level.name, { anchors: [at], shape: open(level.id, at) });
  for (const { outline, ...own } of Object.values(adjoining)) {
    add({ kind: 'adjoining', ...on, id: own.id }, own, level.name, { anchors: outline, rings: [{ label: 'Outline', places: outline, corners: null }], shape: closed(level.id, outline) });
  }
  for (const { a, b, ...own } of Object.values(dimensions)) add({ kind: 'dimension', ...on, id: own.id }, own, level.name, { anchors: [a, b], shape: open(level.id, a, b) });
  for (const { at, ...own } of Object.values(notes)) add({ kind: 'note', ...on, id: own.id }, own, level.name, { anchors: [at], shape: open(level.id, at) });
  for (const enclosure of Object.values(enclosures)) {
    const { outline, holes, openings, ceilingZones, ...own } = enclosure;
    const within = { ...on, enclosure: enclosure.id };
    const rings = [outline, ...holes].map((corners, i): PartRing => ({ label: i === 0 ? '' : `shaft ${i}`, places: corners, corners }));
    add({ kind: 'enclosure', ...on, id: enclosure.id }, own, level.name, { anchors: [outline, ...holes].flatMap(ringOf), rings, shape: closed(level.id, outline) });
    for (const opening of Object.values(openings)) {
      const places = openingPlaces(enclosure, opening.wall, opening.along_m, opening.width_m);
      add({ kind: 'opening', ...within, id: opening.id }, opening, enclosure.name, { shape: open(level.id, ...places) });
    }
    for (const { outline: zone, ...own } of Object.values(ceilingZones)) {
      add({ kind: 'ceiling-zone', ...within, id: own.id }, own, enclosure.name, { anchors: zone, rings: [{ label: 'Outline', places: zone, corners: null }], shape: closed(level.id, zone) });
    }
  }
}

function addNetwork(parts: Parts, plan: Plan, network: Network): void {
  const { cylinders, nodes, pipes, nozzles, supports, ...own } = network;
  const of = { network: network.id };
  const add = (ref: Ref, own: object, more: Partial<PlanPart>): void => {
    parts.set(refKey(ref), { key: refKey(ref), ref, name: thingName(plan, ref), where: ref.kind === 'network' ? '' : network.name, own, anchors: [], rings: [], shape: null, ...more });
  };
  const count = new Map<string, number>();
  for (const end of Object.values(pipes).flatMap(({ from, to }) => [from, to])) count.set(end, (count.get(end) ?? 0) + 1);
  add({ kind: 'network', id: network.id }, own, { shape: network.source && nodes[network.source] ? open(network.level, nodes[network.source]?.at ?? { x: 0, y: 0 }) : null });
  for (const { at, ...own } of Object.values(cylinders)) add({ kind: 'cylinder', ...of, id: own.id }, own, { anchors: [at], shape: open(network.level, at) });
  for (const nozzle of Object.values(nozzles)) {
    const at = nodes[nozzle.node]?.at;
    add({ kind: 'nozzle', ...of, id: nozzle.id }, nozzle, at ? { anchors: [at], shape: open(network.level, at) } : {});
  }
  for (const { at, ...own } of Object.values(nodes)) {
    const name = own.part ? fieldLabel(own.part) : (count.get(own.id) ?? 0) > 2 ? 'Tee' : (count.get(own.id) ?? 0) === 2 ? 'Pipe joint' : 'Pipe end';
    add({ kind: 'node', ...of, id: own.id }, own, { name, anchors: [at], shape: open(network.level, at) });
  }
  for (const pipe of Object.values(pipes)) {
    const ends = [nodes[pipe.from], nodes[pipe.to]].flatMap((node) => (node ? [node.at] : []));
    add({ kind: 'pipe', ...of, id: pipe.id }, pipe, { shape: open(network.level, ...ends) });
  }
  for (const { at, ...own } of Object.values(supports)) add({ kind: 'support', ...of, id: own.id }, own, { anchors: [at], shape: open(network.level, at) });
}

/** What the plan says of its job, by its heading. How it was issued is told by the log. */
function addJob(parts: Parts, { info, settings, basis, profiles, waivers, siteRecord }: Plan): void {
  const { revisions: _, ...project } = info;
  const add = (key: string, name: string, own: object): void => {
    parts.set(key, { key, ref: null, name, where: '', own, anchors: [], rings: [], shape: null });
  };
  add('info', 'Project data', project);
  add('basis', 'Basis of design', basis);
  add('settings', 'Settings of plan and sheets', settings);
  add('site', 'Site record', siteRecord);
  for (const profile of Object.values(profiles)) add(`profile/${profile.id}`, `Unit profile ${profile.name}`, profile);
  for (const waiver of Object.values(waivers)) add(`waiver/${waiver.id}`, `Acceptance of ${waiver.rule}, ${waiver.name}`, waiver);
}

/** Every thing of a plan by its key, and what the plan says of its job. */
export function planParts(plan: Plan): ReadonlyMap<string, PlanPart> {
  const parts: Parts = new Map();
  for (const level of Object.values(plan.levels)) addLevel(parts, plan, level);
  for (const network of Object.values(plan.networks)) addNetwork(parts, plan, network);
  addJob(parts, plan);
  return parts;
}
