import type { Draft } from 'immer';
import { assetsInUse } from '../model/assets-in-use.ts';
import { entryOf } from '../model/find-thing.ts';
import type { Enclosure, Network, Pipe, Plan, Ref, RefOf } from '../model/plan.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { asItStood } from './as-it-stood.ts';
import { command, refuse } from './command.ts';
import { adjoiningOf, ceilingZoneOf, cornerOf, cylinderOf, deviceOf, dimensionOf, enclosureOf, levelOf, networkOf, nodeIn, nodeOf, noteOf, nozzleOf, obstructionOf, openingOf, pipeOf, supportOf, underlayOf } from './lookup.ts';
import { wholeRefs } from './map-things.ts';
import { clearNetwork } from './new-network.ts';
import { clearNodes, nozzleAt, otherEnd, pipesAt } from './pipe-joins.ts';
import { reshape } from './rings.ts';
import { JOIN_m } from './sound-value.ts';

/** Items that share a key, in the order of the first of each. */
function grouped<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}

function deleteEnclosure(draft: Draft<Plan>, { level, id }: RefOf<'enclosure'>): void {
  enclosureOf(draft, level, id);
  delete levelOf(draft, level).enclosures[id];
  for (const network of Object.values(asItStood(draft).networks)) {
    for (const nozzle of Object.values(network.nozzles)) {
      const served = nozzle.serves?.enclosure === id ? entryOf(draft.networks, network.id)?.nozzles[nozzle.id] : undefined;
      if (served) served.serves = null;
    }
  }
}

function deleteHole(enclosure: Enclosure, corner: string): void {
  const hole = enclosure.holes.findIndex((ring) => ring.some(({ id }) => id === corner));
  const walls = new Set(enclosure.holes[hole]?.map(({ id }) => id));
  for (const opening of Object.values(enclosure.openings)) if (walls.has(opening.wall)) delete enclosure.openings[opening.id];
  enclosure.holes.splice(hole, 1);
}

/** Corners go together; a wall of a shaft, or so many corners that none is left to hold it, takes the shaft with it. */
function deleteCorners(draft: Draft<Plan>, refs: readonly (RefOf<'corner'> | RefOf<'wall'>)[]): void {
  for (const ref of refs) cornerOf(draft, ref);
  const names = (ref: RefOf<'corner'> | RefOf<'wall'>, id: string) => refs.some((each) => each.level === ref.level && each.enclosure === ref.enclosure && each.id === id);
  for (const ref of refs) {
    const enclosure = enclosureOf(draft, ref.level, ref.enclosure);
    if (![enclosure.outline, ...enclosure.holes].some((ring) => ring.some(({ id }) => id === ref.id))) continue;
    const { ring, index, corner, isHole } = cornerOf(draft, ref);
    const kept = ring.filter(({ id }) => !names(ref, id)).length;
    if (isHole && (ref.kind === 'wall' || kept < 3)) deleteHole(enclosure, ref.id);
    else if (ref.kind === 'wall') refuse('A wall cannot go alone. Delete the enclosure, or remove a corner.');
    else if (kept < 3) refuse('An enclosure keeps at least three corners. Delete the enclosure instead.');
    else {
      const before = ring[(index + ring.length - 1) % ring.length];
      for (const opening of Object.values(enclosure.openings)) if (opening.wall === corner.id && before) opening.wall = before.id;
      ring.splice(index, 1);
    }
  }
}

/** Corners of one enclosure at a time, so that it is checked once when all are gone. */
function deleteCornersSoundly(draft: Draft<Plan>, refs: readonly (RefOf<'corner'> | RefOf<'wall'>)[]): void {
  for (const group of grouped(refs, ({ level, enclosure }) => `${level}/${enclosure}`).values()) {
    const first = group[0];
    if (first) reshape(enclosureOf(draft, first.level, first.enclosure), () => deleteCorners(draft, group));
  }
}

const isAlike = (a: Pipe, b: Pipe): boolean => a.size === b.size && a.schedule === b.schedule && a.material === b.material && a.joint === b.joint;

/** Makes one pipe of two that lie in one line, where a branch between them has gone. */
function healNode(network: Network, node: string): void {
  const [first, second, ...more] = pipesAt(network, node);
  if (!first || !second || more.length > 0 || nozzleAt(network, node) || network.source === node || !isAlike(first, second)) return;
  const [a, p, b] = [otherEnd(first, node), node, otherEnd(second, node)].map((id) => nodeIn(network, id).at);
  if (!a || !p || !b) return;
  const length_m = Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);
  const share = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y) + (p.z - a.z) * (b.z - a.z)) / length_m ** 2;
  const off_m = Math.hypot(a.x + (b.x - a.x) * share - p.x, a.y + (b.y - a.y) * share - p.y, a.z + (b.z - a.z) * share - p.z);
  if (!(share > 0 && share < 1 && off_m < JOIN_m)) return;
  const end = otherEnd(second, node);
  if (first.from === node) first.from = end;
  else first.to = end;
  delete network.pipes[second.id];
  delete network.nodes[node];
}

function deleteParts(draft: Draft<Plan>, network: Network, refs: readonly Ref[]): void {
  const touched = new Set<string>();
  const branches = new Set<string>();
  const dropPipe = (pipe: Pipe): void => {
    for (const end of [pipe.from, pipe.to]) {
      touched.add(end);
      if (pipesAt(network, end).length > 2) branches.add(end);
    }
    delete network.pipes[pipe.id];
  };
  for (const ref of refs) {
    if (ref.kind === 'nozzle') {
      touched.add(nozzleOf(draft, ref).node);
      delete network.nozzles[ref.id];
    } else if (ref.kind === 'cylinder') {
      cylinderOf(draft, ref);
      delete network.cylinders[ref.id];
    } else if (ref.kind === 'support') {
      supportOf(draft, ref);
      delete network.supports[ref.id];
    }
  }
  const pipes = refs.flatMap((ref) => (ref.kind === 'pipe' ? [pipeOf(draft, ref).id] : ref.kind === 'node' ? pipesAt(network, nodeOf(draft, ref).id).map(({ id }) => id) : []));
  for (const id of new Set(pipes)) dropPipe(network.pipes[id] ?? refuse('This pipe is no longer in the plan.'));
  for (const ref of refs) if (ref.kind === 'node') touched.add(ref.id);
  clearNodes(network, touched);
  for (const node of branches) if (entryOf(network.nodes, node)) healNode(network, node);
}

/** Rows of release matrices that shut a thing that goes stay, for it is still to be shut, but name it no longer. */
function forgetTargets(draft: Draft<Plan>, gone: ReadonlySet<string>): void {
  for (const level of Object.values(asItStood(draft).levels)) {
    for (const enclosure of Object.values(level.enclosures)) {
      for (const { id, target } of Object.values(enclosure.shutdowns)) {
        const row = target !== null && gone.has(target) ? entryOf(draft.levels[level.id]?.enclosures ?? {}, enclosure.id)?.shutdowns[id] : undefined;
        if (row) row.target = null;
      }
    }
  }
}

function deleteFromLevel(draft: Draft<Plan>, ref: Ref): void {
  switch (ref.kind) {
    case 'enclosure':
      deleteEnclosure(draft, ref);
      break;
    case 'obstruction':
      delete levelOf(draft, ref.level).obstructions[obstructionOf(draft, ref).id];
      break;
    case 'device':
      delete levelOf(draft, ref.level).devices[deviceOf(draft, ref).id];
      break;
    case 'adjoining':
      delete levelOf(draft, ref.level).adjoining[adjoiningOf(draft, ref).id];
      break;
    case 'dimension':
      delete levelOf(draft, ref.level).dimensions[dimensionOf(draft, ref).id];
      break;
    case 'note':
      delete levelOf(draft, ref.level).notes[noteOf(draft, ref).id];
      break;
    case 'opening':
      delete enclosureOf(draft, ref.level, ref.enclosure).openings[openingOf(draft, ref).id];
      break;
    case 'ceiling-zone':
      delete enclosureOf(draft, ref.level, ref.enclosure).ceilingZones[ceilingZoneOf(draft, ref).id];
      break;
    case 'underlay': {
      const { asset } = underlayOf(draft, ref);
      delete levelOf(draft, ref.level).underlays[ref.id];
      if (!assetsInUse(draft).has(asset)) delete draft.assets[asset];
      break;
    }
    case 'network':
      networkOf(draft, ref.id);
      delete draft.networks[ref.id];
      break;
    default:
      break;
  }
}

/**
 * Deletes everything named. A node takes its pipes along but not a nozzle at it; a nozzle leaves its pipe; nodes that
 * hold nothing any more go, and two pieces of pipe become one where the branch between them has gone. A wall of a
 * shaft takes the shaft along. An imported file goes with the last floor plan that shows it.
 * A row of a release matrix stays when what it shuts goes.
 * Refuses a thing that has gone already, a wall of an outline, and corners that the outline cannot do without.
 */
export const deleteThings = command((plan: Plan, refs: readonly Ref[]) => `Delete ${thingsInSentence(plan, refs)}`, (draft, refs: readonly Ref[]) => {
  const whole = wholeRefs(refs);
  const corners = whole.flatMap((ref) => (ref.kind === 'corner' || ref.kind === 'wall' ? [ref] : []));
  const parts = whole.flatMap((ref) => ('network' in ref ? [ref] : []));
  for (const ref of whole) if (ref.kind !== 'corner' && ref.kind !== 'wall') deleteFromLevel(draft, ref);
  forgetTargets(draft, new Set(whole.flatMap(({ kind, id }) => (kind === 'opening' || kind === 'obstruction' || kind === 'device' ? [id] : []))));
  deleteCornersSoundly(draft, corners);
  for (const [id, group] of grouped(parts, ({ network }) => network)) {
    const network = networkOf(draft, id);
    deleteParts(draft, network, group);
    clearNetwork(draft, network);
  }
});
