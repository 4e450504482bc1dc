import { addAdjoining } from '#shared/commands/add-adjoining';
import { addCeilingZone } from '#shared/commands/add-ceiling-zone';
import { addCylinder } from '#shared/commands/add-cylinder';
import { addDevice } from '#shared/commands/add-device';
import { addDimension } from '#shared/commands/add-dimension';
import { addEnclosure } from '#shared/commands/add-enclosure';
import { addHole } from '#shared/commands/add-hole';
import { addKnownLength } from '#shared/commands/add-known-length';
import { addLevel } from '#shared/commands/add-level';
import { addNote } from '#shared/commands/add-note';
import { addNozzle } from '#shared/commands/add-nozzle';
import { addObstruction } from '#shared/commands/add-obstruction';
import { addOpening } from '#shared/commands/add-opening';
import { addPipeRun } from '#shared/commands/add-pipe-run';
import { addRevision } from '#shared/commands/add-revision';
import { addSupport } from '#shared/commands/add-support';
import { approveSet } from '#shared/commands/approve-set';
import { addUnderlay } from '#shared/commands/add-underlay';
import { alignToWall } from '#shared/commands/align-to-wall';
import { calibrateUnderlay } from '#shared/commands/calibrate-underlay';
import type { Command } from '#shared/commands/command';
import { copyThings } from '#shared/commands/copy-things';
import { deleteThings } from '#shared/commands/delete-things';
import { editAdjoining } from '#shared/commands/edit-adjoining';
import { editBasis } from '#shared/commands/edit-basis';
import { editCeilingZone } from '#shared/commands/edit-ceiling-zone';
import { editCylinder } from '#shared/commands/edit-cylinder';
import { editDevice } from '#shared/commands/edit-device';
import { editDimension } from '#shared/commands/edit-dimension';
import { editEnclosure } from '#shared/commands/edit-enclosure';
import { editInfo } from '#shared/commands/edit-info';
import { editLevel } from '#shared/commands/edit-level';
import { editLimit } from '#shared/commands/edit-limit';
import { editNetwork } from '#shared/commands/edit-network';
import { editNote } from '#shared/commands/edit-note';
import { editNozzle } from '#shared/commands/edit-nozzle';
import { editObstruction } from '#shared/commands/edit-obstruction';
import { editOpening } from '#shared/commands/edit-opening';
import { editPipe } from '#shared/commands/edit-pipe';
import { editRun } from '#shared/commands/edit-run';
import { editSettings } from '#shared/commands/edit-settings';
import { editSupport } from '#shared/commands/edit-support';
import { editUnderlay } from '#shared/commands/edit-underlay';
import { editWall } from '#shared/commands/edit-wall';
import { insertCorner } from '#shared/commands/insert-corner';
import { insertNode } from '#shared/commands/insert-node';
import { insertPart } from '#shared/commands/insert-part';
import { mirrorThings } from '#shared/commands/mirror-things';
import { issueSet } from '#shared/commands/issue-set';
import { moveCorner } from '#shared/commands/move-corner';
import { moveNozzle } from '#shared/commands/move-nozzle';
import { movePipeNode } from '#shared/commands/move-pipe-node';
import { moveThings } from '#shared/commands/move-things';
import { moveWall } from '#shared/commands/move-wall';
import { placeNode } from '#shared/commands/place-node';
import { placeUnderlay } from '#shared/commands/place-underlay';
import { removeCorner } from '#shared/commands/remove-corner';
import { removeLevel } from '#shared/commands/remove-level';
import { removeNode } from '#shared/commands/remove-node';
import { rotateThings } from '#shared/commands/rotate-things';
import { saveProfileInPlan } from '#shared/commands/save-profile-in-plan';
import { setNozzleHeight } from '#shared/commands/set-nozzle-height';
import { setPipeHeight } from '#shared/commands/set-pipe-height';
import { setProfile } from '#shared/commands/set-profile';
import { stretchPipes } from '#shared/commands/stretch-pipes';
import { turnNozzle } from '#shared/commands/turn-nozzle';
import { rectangle } from '#shared/geometry/outline';
import { type PlanPoint, type PlanPoint3, planPoint } from '#shared/geometry/point';
import { along3 } from '#shared/geometry/segment3';
import type { Plan, Ref, RefKind, RefOf } from '#shared/model/plan';
import { blankProfile } from '#shared/profile/unit-profile';
import { place3, planBuilder } from './plan-builder.ts';

/** Every thing of a plan that has a reference. */
export function refsOf(plan: Plan): Ref[] {
  const refs: Ref[] = [];
  for (const level of Object.values(plan.levels)) {
    const on = { level: level.id };
    for (const id of Object.keys(level.underlays)) refs.push({ kind: 'underlay', ...on, id });
    for (const id of Object.keys(level.obstructions)) refs.push({ kind: 'obstruction', ...on, id });
    for (const id of Object.keys(level.devices)) refs.push({ kind: 'device', ...on, id });
    for (const id of Object.keys(level.adjoining)) refs.push({ kind: 'adjoining', ...on, id });
    for (const id of Object.keys(level.dimensions)) refs.push({ kind: 'dimension', ...on, id });
    for (const id of Object.keys(level.notes)) refs.push({ kind: 'note', ...on, id });
    for (const enclosure of Object.values(level.enclosures)) {
      const within = { ...on, enclosure: enclosure.id };
      refs.push({ kind: 'enclosure', ...on, id: enclosure.id });
      for (const { id } of [enclosure.outline, ...enclosure.holes].flat()) refs.push({ kind: 'corner', ...within, id }, { kind: 'wall', ...within, id });
      for (const id of Object.keys(enclosure.openings)) refs.push({ kind: 'opening', ...within, id });
      for (const id of Object.keys(enclosure.ceilingZones)) refs.push({ kind: 'ceiling-zone', ...within, id });
    }
  }
  for (const network of Object.values(plan.networks)) {
    const within = { network: network.id };
    refs.push({ kind: 'network', id: network.id });
    for (const id of Object.keys(network.cylinders)) refs.push({ kind: 'cylinder', ...within, id });
    for (const id of Object.keys(network.nodes)) refs.push({ kind: 'node', ...within, id });
    for (const id of Object.keys(network.pipes)) refs.push({ kind: 'pipe', ...within, id });
    for (const id of Object.keys(network.supports)) refs.push({ kind: 'support', ...within, id });
    for (const id of Object.keys(network.nozzles)) refs.push({ kind: 'nozzle', ...within, id });
  }
  return refs;
}

/** Chance in a fixed order: numbers that fast-check chose, used one after the other. */
export class Dice {
  #at = 0;
  constructor(readonly numbers: readonly number[]) {}
  below(limit: number): number {
    const number = this.numbers[this.#at % this.numbers.length] ?? 0;
    this.#at += 1;
    return number % limit;
  }
  of<T>(values: readonly T[]): T {
    if (values.length === 0) throw new Error('Nothing to choose from.');
    return values[this.below(values.length)] as T;
  }
  /** A length on a grid of 0.25 m, or anywhere. */
  length(): number {
    return this.below(4) === 0 ? this.below(100_000) / 7919 - 4 : this.below(64) / 4 - 4;
  }
  point(): PlanPoint {
    return planPoint(this.length(), this.length());
  }
  point3(): PlanPoint3 {
    return place3(this.length(), this.length(), this.of([-0.2, 2, 2.3, 2.5]));
  }
  ring(): PlanPoint[] {
    return this.below(4) === 0 ? Array.from({ length: 3 + this.below(4) }, () => this.point()) : rectangle(1 + this.below(20) / 4, 1 + this.below(20) / 4, this.point());
  }
}

/** A reference of a kind, of the plan where it has one; else one that has gone. */
function pick<K extends RefKind>(plan: Plan, dice: Dice, kind: K): RefOf<K> {
  const found = refsOf(plan).filter((ref): ref is RefOf<K> => ref.kind === kind);
  if (found.length > 0) return dice.of(found);
  const lost: Record<string, string> = { kind, id: 'gone', level: 'level-0', enclosure: 'gone', network: 'gone' };
  return lost as unknown as RefOf<K>;
}
const some = (plan: Plan, dice: Dice): Ref[] => {
  const all = refsOf(plan);
  return all.length === 0 ? [] : Array.from({ length: 1 + dice.below(5) }, () => dice.of(all));
};
const levelOf = (plan: Plan, dice: Dice): string => dice.of(Object.keys(plan.levels));
const networkOf = (plan: Plan, dice: Dice): string | null => dice.of([null, null, ...Object.keys(plan.networks)]);

const KINDS_OF_OPENING = ['door', 'relief-vent', 'damper', 'grille', 'penetration', 'window'] as const;
const KINDS_OF_OBSTRUCTION = ['beam', 'duct', 'rack', 'cabinet', 'column', 'light', 'tray', 'panel', 'partition', 'live-part', 'work-place', 'other'] as const;
const KINDS_OF_DEVICE = ['detector', 'sounder', 'sign', 'manual-release', 'abort', 'disconnect', 'lock-out-valve', 'door-button', 'control-panel', 'diffuser', 'air-intake'] as const;
const KINDS_OF_ADJOINING = ['unknown', 'room', 'corridor', 'exit', 'pit', 'shaft', 'outdoors'] as const;
const asset = (dice: Dice) => ({ name: 'floor.dxf', file: `floor-${dice.below(3)}.dxf`, sha256: dice.of(['a', 'b', 'c']).repeat(64) });

type Maker = (plan: Plan, dice: Dice) => Command;
export const MAKERS: readonly Maker[] = [
  (_, d) => addLevel(`Level ${d.below(9)}`, d.length()),
  (p, d) => editLevel(levelOf(p, d), { name: d.of(['Ground', '']), floorElevation_m: d.length() }),
  (p, d) => removeLevel(levelOf(p, d)),
  (p, d) => addUnderlay(levelOf(p, d), asset(d), { kind: 'dxf', page: 1, metresPerUnit: d.of([null, 0.001, 1]), calibration: 'file-units', name: 'Floor' }),
  (p, d) => placeUnderlay(pick(p, d, 'underlay'), { at: d.point(), rotation_rad: d.length() }),
  (p, d) => calibrateUnderlay(pick(p, d, 'underlay'), { a: d.point(), b: d.point(), distance_m: 1 + d.below(9) }),
  (p, d) => addKnownLength(pick(p, d, 'underlay'), { a: d.point(), b: d.point(), distance_m: d.below(9) }),
  (p, d) => editUnderlay(pick(p, d, 'underlay'), d.of([{ locked: true }, { locked: false }, { opacity: d.below(5) / 3 }, { metresPerUnit: null, calibration: 'none' as const }, { knownLengths: [] }])),
  (p, d) => addEnclosure(levelOf(p, d), d.ring()),
  (p, d) => addHole(pick(p, d, 'enclosure'), rectangle(0.5, 0.5, planPoint(d.below(20) / 4, d.below(14) / 4))),
  (p, d) => moveCorner(pick(p, d, 'corner'), d.point()),
  (p, d) => insertCorner(pick(p, d, 'wall'), d.point()),
  (p, d) => removeCorner(pick(p, d, 'corner')),
  (p, d) => moveWall(pick(p, d, 'wall'), d.length() / 4),
  (p, d) => editWall(pick(p, d, 'wall'), { construction: 'block', loadBearing: d.of([true, false, null]), allowablePressure_Pa: d.length() * 100 }),
  (p, d) => editEnclosure(pick(p, d, 'enclosure'), d.of([{ height_m: d.length() }, { slope: { at: d.point(), direction_rad: d.length(), rise: 0.1 } }, { underFloor: { depth_m: d.length(), isProtected: true, exclusion: null } }, { temperature: { least_K: 280 + d.length(), greatest_K: 282 } }])),
  (p, d) => addCeilingZone(pick(p, d, 'enclosure'), d.ring(), d.length()),
  (p, d) => editCeilingZone(pick(p, d, 'ceiling-zone'), { height_m: d.length(), outline: d.ring().map(({ x, y }) => ({ x, y })) }),
  (p, d) => addOpening(pick(p, d, 'wall'), d.of(KINDS_OF_OPENING), d.length(), 0.3 + d.below(8) / 5),
  (p, d) => editOpening(pick(p, d, 'opening'), { kind: d.of(KINDS_OF_OPENING), along_m: d.below(24) / 4, width_m: d.below(8) / 4 }),
  (p, d) => addObstruction(levelOf(p, d), d.of(KINDS_OF_OBSTRUCTION), d.ring(), d.length(), d.length()),
  (p, d) => editObstruction(pick(p, d, 'obstruction'), d.of([{ top_m: d.length() }, { footprint: d.ring().map(({ x, y }) => ({ x, y })) }, { isPermeable: true }, { voltage_V: d.length() * 1000, hasLooseItems: d.of([true, false, null]), hasDrives: null }])),
  (p, d) => addDevice(levelOf(p, d), d.of(KINDS_OF_DEVICE), d.point(), d.of([null, d.length()]), d.of([{}, { height_m: d.length() }, { zone: 'A' }])),
  (p, d) => editDevice(pick(p, d, 'device'), d.of([{ kind: d.of(KINDS_OF_DEVICE) }, { at: d.point() }, { height_m: d.length(), name: `D${d.below(4)}` }, { isGuarded: true }, { facing_rad: null }])),
  (p, d) => addAdjoining(levelOf(p, d), d.ring(), d.of(KINDS_OF_ADJOINING)),
  (p, d) => editAdjoining(pick(p, d, 'adjoining'), d.of([{ kind: d.of(KINDS_OF_ADJOINING), gas: 'alarmed' as const }, { outline: d.ring().map(({ x, y }) => ({ x, y })) }, { floor_m: d.length(), note: 'Seen' }])),
  (p, d) => addCylinder(levelOf(p, d), networkOf(p, d), d.point(), d.length()),
  (p, d) => editCylinder(pick(p, d, 'cylinder'), { name: `C${d.below(5)}`, railHeight_m: d.length() }),
  (p, d) => editNetwork(pick(p, d, 'network'), d.of([{ name: 'East' }, { source: pick(p, d, 'node').id }, { source: null }])),
  (p, d) => addPipeRun(networkOf(p, d), levelOf(p, d), Array.from({ length: 2 + d.below(4) }, () => d.point3()), d.of(['1/2', '3/4', '1'])),
  (p, d) => movePipeNode(pick(p, d, 'node'), d.point3()),
  (p, d) => editPipe(pick(p, d, 'pipe'), { size: d.of(['1/2', '1']), joint: d.of(['threaded', 'welded']) }),
  (p, d) => setPipeHeight([pick(p, d, 'pipe'), pick(p, d, 'pipe')], d.of([2, 2.3, 2.5, 3])),
  (p, d) => { const pipe = pick(p, d, 'pipe'); const network = p.networks[pipe.network]; return addSupport(pipe.network, network?.nodes[network.pipes[pipe.id]?.from ?? '']?.at ?? d.point3(), d.of(['rigid', 'sling'])); },
  (p, d) => editSupport(pick(p, d, 'support'), d.of([{ capacity_N: 100 }, { kind: 'guide' as const }, { at: d.point3() }])),
  (_, d) => editBasis({ holdTime_s: 1 + d.below(900) }),
  (p, d) => insertNode(pick(p, d, 'pipe'), d.point3()),
  (p, d) => removeNode(pick(p, d, 'node')),
  (p, d) => stretchPipes(pick(p, d, 'node'), d.point3(), d.of(['stretch', 'move'])),
  (p, d) => placeNode(pick(p, d, 'node'), d.point3()),
  (p, d) => editRun(pick(p, d, 'pipe'), { size: d.of(['1/2', '1']) }),
  (p, d) => { const pipe = pick(p, d, 'pipe'); const network = p.networks[pipe.network]; const ends = [network?.pipes[pipe.id]?.from, network?.pipes[pipe.id]?.to].map((node) => network?.nodes[node ?? '']?.at ?? d.point3()); return insertPart(pipe, along3({ a: ends[0] ?? d.point3(), b: ends[1] ?? d.point3() }, d.below(8) / 8), d.of(['union', 'coupling'])); },
  (p, d) => addNozzle(networkOf(p, d), d.point3(), [0, d.length()], levelOf(p, d)),
  (p, d) => moveNozzle(pick(p, d, 'nozzle'), d.point3()),
  (p, d) => turnNozzle(pick(p, d, 'nozzle'), d.length()),
  (p, d) => editNozzle(pick(p, d, 'nozzle'), d.of([{ name: `N${d.below(5)}` }, { serves: { enclosure: pick(p, d, 'enclosure').id, space: 'room' as const } }, { tilt_rad: d.length() }])),
  (p, d) => setNozzleHeight(pick(p, d, 'nozzle'), d.of([2, 2.3, 2.5, -0.2])),
  (p, d) => addDimension(levelOf(p, d), d.point(), d.point(), d.length()),
  (p, d) => editDimension(pick(p, d, 'dimension'), { a: { x: d.length(), y: 0 }, offset_m: d.length() }),
  (p, d) => addNote(levelOf(p, d), d.point(), d.of(['Check', ''])),
  (p, d) => editNote(pick(p, d, 'note'), { text: d.of(['Seen', ' ']) }),
  (p, d) => moveThings(some(p, d), d.length(), d.length(), d.of([undefined, 0, 0.5])),
  (p, d) => copyThings(some(p, d), d.length(), d.length(), d.of([null, null, Object.keys(p.levels).at(-1) ?? null])),
  (p, d) => rotateThings(some(p, d), d.point(), d.of([Math.PI / 2, Math.PI, d.length()])),
  (p, d) => mirrorThings(some(p, d), d.point(), d.point()),
  (p, d) => deleteThings(some(p, d)),
  (p, d) => alignToWall(some(p, d), pick(p, d, 'wall'), d.length()),
  (_, d) => editInfo({ project: d.of(['Hut', 'Annex']) }),
  (_, d) => addRevision({ mark: d.of(['A', 'B', '']), date: '', text: '' }),
  (_, d) => issueSet({ mark: `S${d.below(30)}`, date: '2026-03-04', by: d.of(['R. Vale', '']), purpose: 'For approval' }, { sha256: 'c'.repeat(64), plan: d.of([null, asset(d)]), sheets: null }),
  (p, d) => approveSet(p.issuedSets.length > 0 ? d.of(p.issuedSets).id : 'set-0', { by: 'Authority', date: d.of(['2026-03-10', '']), reference: '7' }),
  (_, d) => editSettings({ lengths: d.of(['feet', 'metric']), grid_m: d.length() }),
  (_, d) => saveProfileInPlan(blankProfile(d.of(['own', 'other', 'a/b']), 'Unit')),
  (p, d) => setProfile(pick(p, d, 'network').id, d.of(['own', 'sample-80'])),
  (_, d) => editLimit(d.of(['own', 'sample-80']), 'nozzleToWall_m', d.of([null, { value: d.length(), source: 'manual' }])),
];

/** A small plan with something of most kinds. */
export const smallStart = (): Plan =>
  planBuilder()
    .room(6, 4, 2.7)
    .hole(rectangle(1, 1, planPoint(4, 2)))
    .opening(0, 3, 1)
    .device('detector', 1, 1, { facing_rad: 0 })
    .adjoining('corridor', rectangle(6, 1.5, planPoint(0, -1.7)))
    .obstruction('beam', rectangle(0.25, 4, planPoint(3, 0)), 2.4, 2.7)
    .underlay()
    .network()
    .cylinder(0.25, 2, Math.PI)
    .run([place3(0.25, 2, 2), place3(0.25, 2, 2.5), place3(2, 2, 2.5), place3(2, 1, 2.5), place3(2, 1, 2.3)])
    .nozzle(2, 1, 2.3).plan;
