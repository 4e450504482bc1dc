import { distance3_m } from '../geometry/point.ts';
import { SAME_PLACE_m } from '../geometry/tolerance.ts';
import type { Enclosure, Network, Plan } from './plan.ts';
import { type PlanFailure, RESTORE_COPY, planFailure } from './plan-problem.ts';
import { type Effort, findOutside, findOverlap, findRingFault, usualEffort } from './ring-relations.ts';
import type { Outline } from '../geometry/outline.ts';

/** Largest serial that leaves room for what is still to be drawn. */
const LARGEST_SERIAL = 900_000_000;

class Unmendable extends Error {
  constructor(
    readonly what: string,
    readonly where: string,
  ) {
    super(what);
  }
}

const has = (record: object, key: string): boolean => Object.hasOwn(record, key);
const place = ({ x, y }: { x: number; y: number }): string => `x ${x.toFixed(3)} m, y ${y.toFixed(3)} m`;

/** Every entry stands under its own id. */
function checkKeys(record: Readonly<Record<string, { readonly id: string }>>, where: string): void {
  const wrong = Object.entries(record).find(([key, { id }]) => key !== id);
  if (wrong) throw new Unmendable('A part of the plan stands under another name than its own.', `${where} › ${wrong[0]}`);
}

function checkIds(ids: readonly string[], where: string): void {
  const seen = new Set<string>();
  for (const id of ids) {
    if (seen.has(id)) throw new Unmendable('Two parts of the plan have the same name.', `${where} › ${id}`);
    seen.add(id);
  }
}

function checkRing(ring: Outline, what: string, where: string, effort: Effort): void {
  const fault = findRingFault(ring, effort);
  if (!fault) return;
  const sentence = {
    crossing: `${what} crosses or touches itself.`,
    'no-length': `${what} has a side without length.`,
    'no-area': `${what} has no area.`,
    'too-much': 'The outlines of the plan have too many corners to be checked.',
  }[fault.kind];
  throw new Unmendable(sentence, `${where}, at ${place(fault.at)}`);
}

function mendEnclosure(enclosure: Enclosure, where: string, effort: Effort, remarks: string[]): void {
  const { name, outline, holes, openings, ceilingZones, temperature } = enclosure;
  const rings = [outline, ...holes];
  checkIds(rings.flatMap((ring) => ring.map(({ id }) => id)), where);
  checkKeys(openings, `${where} › openings`);
  checkKeys(ceilingZones, `${where} › ceilingZones`);
  checkRing(outline, `The outline of “${name}”`, where, effort);
  for (const [i, hole] of holes.entries()) {
    checkRing(hole, `A shaft in “${name}”`, `${where} › holes › ${i + 1}`, effort);
    const outside = findOutside(hole, outline, effort);
    if (outside) throw new Unmendable(`A shaft in “${name}” reaches past its walls.`, `${where} › holes › ${i + 1}, at ${place(outside)}`);
    for (const other of holes.slice(i + 1)) {
      const both = findOverlap(hole, other, effort);
      if (both) throw new Unmendable(`Two shafts in “${name}” overlap.`, `${where} › holes › ${i + 1}, at ${place(both)}`);
    }
  }
  for (const zone of Object.values(ceilingZones)) checkRing(zone.outline, `The ceiling zone “${zone.name}”`, `${where} › ceilingZones › ${zone.id}`, effort);
  const walls = new Set(rings.flatMap((ring) => ring.map(({ id }) => id)));
  for (const opening of Object.values(openings)) {
    if (walls.has(opening.wall)) continue;
    delete openings[opening.id];
    remarks.push(`“${opening.name}” of “${name}” was left out: the wall that it was in is not in the plan.`);
  }
  if (temperature && temperature.least_K > temperature.greatest_K) {
    enclosure.temperature = { least_K: temperature.greatest_K, greatest_K: temperature.least_K };
    remarks.push(`The least and the greatest temperature of “${name}” were exchanged: they stood the wrong way round.`);
  }
}

function mendNetwork(network: Network, plan: Plan, where: string, remarks: string[]): void {
  const { name, nodes, pipes, nozzles, cylinders, supports } = network;
  for (const [part, record] of Object.entries({ nodes, pipes, nozzles, cylinders, supports })) checkKeys(record, `${where} › ${part}`);
  checkIds(network.assembly.map(({ id }) => id), `${where} › assembly`);
  checkIds((network.release?.devices ?? []).map(({ id }) => id), `${where} › release`);
  if (!has(plan.levels, network.level)) throw new Unmendable(`“${name}” is on a level that is not in the plan.`, `${where} › level › ${network.level}`);
  if (!has(plan.profiles, network.profile)) {
    remarks.push(`The unit profile of “${name}” is not in the plan. Choose one: until then its limits are not checked.`);
  }
  for (const pipe of Object.values(pipes)) {
    const from = has(nodes, pipe.from) ? nodes[pipe.from] : undefined;
    const to = has(nodes, pipe.to) ? nodes[pipe.to] : undefined;
    if (from && to && distance3_m(from.at, to.at) > SAME_PLACE_m) continue;
    delete pipes[pipe.id];
    remarks.push(`A pipe of “${name}” (${pipe.id}) was left out: ${from && to ? 'it has no length' : 'one of its ends is not in the plan'}.`);
  }
  const taken = new Set<string>();
  for (const nozzle of Object.values(nozzles)) {
    const isLost = !has(nodes, nozzle.node);
    if (isLost || taken.has(nozzle.node)) {
      delete nozzles[nozzle.id];
      remarks.push(`Nozzle “${nozzle.name}” was left out: ${isLost ? 'its place is not in the plan' : 'another nozzle is at the same place'}.`);
      continue;
    }
    taken.add(nozzle.node);
    const { serves } = nozzle;
    if (serves && !Object.values(plan.levels).some(({ enclosures }) => has(enclosures, serves.enclosure))) {
      nozzle.serves = null;
      remarks.push(`Nozzle “${nozzle.name}” now serves the space that it hangs in: the one it named is not in the plan.`);
    }
  }
  if (network.source !== null && !has(nodes, network.source)) {
    network.source = null;
    remarks.push(`The start of the pipe of “${name}” is not in the plan. Choose where its pipe begins.`);
  }
}

function mendLevel(level: Plan['levels'][string], plan: Plan, where: string, effort: Effort, remarks: string[]): void {
  const { underlays, enclosures, obstructions, dimensions, notes } = level;
  for (const [part, record] of Object.entries({ underlays, enclosures, obstructions, dimensions, notes })) checkKeys(record, `${where} › ${part}`);
  for (const enclosure of Object.values(enclosures)) mendEnclosure(enclosure, `${where} › enclosures › ${enclosure.id}`, effort, remarks);
  for (const thing of Object.values(obstructions)) {
    checkRing(thing.footprint, `The footprint of “${thing.name}”`, `${where} › obstructions › ${thing.id}`, effort);
    if (thing.bottom_m > thing.top_m) {
      [thing.bottom_m, thing.top_m] = [thing.top_m, thing.bottom_m];
      remarks.push(`The bottom and the top of “${thing.name}” were exchanged: they stood the wrong way round.`);
    }
  }
  for (const underlay of Object.values(underlays)) {
    if (!has(plan.assets, underlay.asset)) remarks.push(`The file of floor plan “${underlay.name}” is not with the plan. Import it again to see it.`);
  }
}

/** Every id that was taken from the plan's serial. */
function* serialIds(plan: Plan): Generator<string> {
  yield* Object.keys(plan.assets);
  for (const { id } of plan.issuedSets) yield id;
  for (const level of Object.values(plan.levels)) {
    yield level.id;
    for (const part of [level.underlays, level.obstructions, level.devices, level.adjoining, level.dimensions, level.notes]) yield* Object.keys(part);
    for (const enclosure of Object.values(level.enclosures)) {
      yield enclosure.id;
      yield* Object.keys(enclosure.openings);
      yield* Object.keys(enclosure.ceilingZones);
      for (const ring of [enclosure.outline, ...enclosure.holes]) for (const { id } of ring) yield id;
    }
  }
  for (const network of Object.values(plan.networks)) {
    yield network.id;
    for (const part of [network.nodes, network.pipes, network.nozzles, network.cylinders, network.supports]) yield* Object.keys(part);
    for (const { id } of [...network.assembly, ...(network.release?.devices ?? [])]) yield id;
  }
}

function mendSerial(plan: Plan, remarks: string[]): void {
  let largest = 0;
  for (const id of serialIds(plan)) largest = Math.max(largest, Number(/-(\d{1,9})$/.exec(id)?.[1] ?? 0));
  if (largest > LARGEST_SERIAL || plan.nextSerial > LARGEST_SERIAL) throw new Unmendable('The plan has used up its numbers.', 'plan.json, nextSerial');
  if (largest < plan.nextSerial) return;
  plan.nextSerial = largest + 1;
  remarks.push('The plan’s own count of its parts was behind and has been set right.');
}

/** Whether a file may have this name inside a plan file: it leads nowhere else. */
export const isSafeFileName = (file: string): boolean => /^[A-Za-z0-9][A-Za-z0-9._-]{0,119}$/.test(file);

/** A set whose files are not named by the plan is still in the log, but was not kept. */
function mendIssuedSets(plan: Plan, remarks: string[]): void {
  checkIds(plan.issuedSets.map(({ id }) => id), 'issuedSets');
  for (const set of plan.issuedSets) {
    for (const part of ['plan', 'sheets'] as const) {
      const asset = set[part];
      if (asset === null || has(plan.assets, asset)) continue;
      set[part] = null;
      remarks.push(`The ${part === 'plan' ? 'plan' : 'sheets'} of issued set ${set.mark} ${part === 'plan' ? 'is' : 'are'} not with the plan any more. Look for an older copy of the plan file.`);
    }
  }
}

function checkAssets(plan: Plan): void {
  checkKeys(plan.assets, 'assets');
  for (const { id, file } of Object.values(plan.assets)) {
    if (!isSafeFileName(file)) throw new Unmendable('The name of a file that belongs to the plan is not allowed.', `assets › ${id} › file`);
  }
}

/**
 * Makes sure that whatever one part of a plan names is there, so that everything after may rely on it.
 * What has lost its place is left out and what can stay is kept, each with a remark; damage that would
 * have to be guessed at is a problem instead.
 * @param plan just read and owned by the caller; it is changed
 */
export function mendPlan(plan: Plan): { readonly ok: true; readonly remarks: string[] } | PlanFailure {
  const remarks: string[] = [];
  const effort = usualEffort();
  try {
    checkAssets(plan);
    checkKeys(plan.levels, 'levels');
    checkKeys(plan.networks, 'networks');
    checkKeys(plan.profiles, 'profiles');
    if (Object.keys(plan.levels).length === 0) throw new Unmendable('The plan has no level to draw on.', 'levels');
    for (const level of Object.values(plan.levels)) mendLevel(level, plan, `levels › ${level.id} “${level.name}”`, effort, remarks);
    for (const network of Object.values(plan.networks)) mendNetwork(network, plan, `networks › ${network.id} “${network.name}”`, remarks);
    mendIssuedSets(plan, remarks);
    mendSerial(plan, remarks);
    if (effort.left < 0) throw new Unmendable('The outlines of the plan have too many corners to be checked.', 'levels');
    return { ok: true, remarks };
  } catch (problem) {
    if (problem instanceof Unmendable) return planFailure('damaged', problem.what, `plan.json, ${problem.where}`, RESTORE_COPY);
    throw problem;
  }
}
