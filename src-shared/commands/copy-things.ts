import type { Draft } from 'immer';
import { type Enclosure, type Plan, type Ref, type RefOf, takeId } from '../model/plan.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import { command, refuse } from './command.ts';
import { copyNetwork, copyNetworkParts } from './copy-network.ts';
import { copyOf } from './copy-of.ts';
import { adjoiningOf, deviceOf, dimensionOf, enclosureOf, levelOf, networkOf, noteOf, obstructionOf, openingOf, ceilingZoneOf, underlayOf } from './lookup.ts';
import { type Mapping, mapEnclosure, mappedRing, wholeRefs } from './map-things.ts';
import { nextAdjoiningName, nextDeviceName, nextName, nextObstructionName, nextOpeningName } from './next-name.ts';
import { alongWithin_m, wallLines } from './rings.ts';
import { JOIN_m, soundFilePoint, soundPoint } from './sound-value.ts';

function copyEnclosure(draft: Draft<Plan>, source: Enclosure, mapping: Mapping): Enclosure {
  const copy = copyOf(source);
  copy.id = takeId(draft, 'enclosure');
  copy.name = nextName(draft, 'enclosure', 'Room ');
  const walls = new Map<string, string>();
  for (const corner of [copy.outline, ...copy.holes].flat()) {
    const id = takeId(draft, 'corner');
    walls.set(corner.id, id);
    corner.id = id;
  }
  copy.openings = {};
  copy.ceilingZones = {};
  copy.shutdowns = {};
  const openings = new Map<string, string>();
  for (const opening of Object.values(source.openings)) {
    const id = takeId(draft, 'opening');
    openings.set(opening.id, id);
    copy.openings[id] = { ...copyOf(opening), id, wall: walls.get(opening.wall) ?? refuse(`“${opening.name}” has lost its wall. Delete it first.`) };
  }
  for (const zone of Object.values(source.ceilingZones)) {
    const id = takeId(draft, 'zone');
    copy.ceilingZones[id] = { ...copyOf(zone), id };
  }
  // A row that shuts something outside the enclosure says by its name what that is: the copy has another one.
  for (const row of Object.values(source.shutdowns)) {
    const id = takeId(draft, 'shutdown');
    copy.shutdowns[id] = { ...row, id, target: openings.get(row.target ?? '') ?? null };
  }
  mapEnclosure(copy, mapping);
  return copy;
}

function copyOpening(draft: Draft<Plan>, ref: RefOf<'opening'>, dx: number, dy: number): Ref {
  const source = openingOf(draft, ref);
  const enclosure = enclosureOf(draft, ref.level, ref.enclosure);
  const line = wallLines(enclosure).get(source.wall) ?? refuse(`“${source.name}” has lost its wall. Delete it first.`);
  const shift_m = ((line.b.x - line.a.x) * dx + (line.b.y - line.a.y) * dy) / Math.hypot(line.b.x - line.a.x, line.b.y - line.a.y);
  const id = takeId(draft, 'opening');
  enclosure.openings[id] = { ...copyOf(source), id, name: nextOpeningName(draft, source.kind), along_m: alongWithin_m(source, line, source.along_m + shift_m) };
  return { ...ref, id };
}

/** Copies a thing of a level onto a level; undefined for a part of a network. */
function copyLevelThing(draft: Draft<Plan>, ref: Ref, onto: string | null, mapping: Mapping, dx: number, dy: number): Ref | undefined {
  const level = onto ?? ('level' in ref ? ref.level : '');
  if ((ref.kind === 'opening' || ref.kind === 'ceiling-zone') && level !== ref.level) return refuse('An opening or a part of a ceiling belongs to its enclosure. Copy the enclosure.');
  switch (ref.kind) {
    case 'enclosure': {
      const copy = copyEnclosure(draft, enclosureOf(draft, ref.level, ref.id), mapping);
      levelOf(draft, level).enclosures[copy.id] = copy;
      return { ...ref, level, id: copy.id };
    }
    case 'obstruction': {
      const source = obstructionOf(draft, ref);
      const id = takeId(draft, 'obstruction');
      levelOf(draft, level).obstructions[id] = { ...copyOf(source), id, name: nextObstructionName(draft, source.kind), footprint: mappedRing(source.footprint, mapping) };
      return { ...ref, level, id };
    }
    case 'device': {
      const source = deviceOf(draft, ref);
      const id = takeId(draft, 'device');
      levelOf(draft, level).devices[id] = { ...copyOf(source), id, name: nextDeviceName(draft, source.kind), at: soundPoint(mapping.point(source.at)) };
      return { ...ref, level, id };
    }
    case 'adjoining': {
      const source = adjoiningOf(draft, ref);
      const id = takeId(draft, 'adjoining');
      levelOf(draft, level).adjoining[id] = { ...copyOf(source), id, name: nextAdjoiningName(draft, source.kind), outline: mappedRing(source.outline, mapping) };
      return { ...ref, level, id };
    }
    case 'ceiling-zone': {
      const source = ceilingZoneOf(draft, ref);
      const id = takeId(draft, 'zone');
      const name = nextName(draft, 'ceiling-zone', 'Zone ');
      enclosureOf(draft, ref.level, ref.enclosure).ceilingZones[id] = { id, name, outline: mappedRing(source.outline, mapping), height_m: source.height_m };
      return { ...ref, id };
    }
    case 'dimension': {
      const { a, b, offset_m } = dimensionOf(draft, ref);
      const id = takeId(draft, 'dimension');
      levelOf(draft, level).dimensions[id] = { id, a: soundPoint(mapping.point(a)), b: soundPoint(mapping.point(b)), offset_m };
      return { ...ref, level, id };
    }
    case 'note': {
      const { at, text } = noteOf(draft, ref);
      const id = takeId(draft, 'note');
      levelOf(draft, level).notes[id] = { id, at: soundPoint(mapping.point(at)), text };
      return { ...ref, level, id };
    }
    case 'underlay': {
      const source = underlayOf(draft, ref);
      const id = takeId(draft, 'underlay');
      levelOf(draft, level).underlays[id] = { ...copyOf(source), id, locked: false, at: soundFilePoint(mapping.point(source.at)) };
      return { ...ref, level, id };
    }
    case 'opening':
      return copyOpening(draft, ref, dx, dy);
    case 'corner':
    case 'wall':
      return refuse('A wall or corner cannot be copied on its own. Choose the enclosure.');
    default:
      return undefined;
  }
}

/**
 * Copies everything named, shifted. Copies have ids and names of their own; pipe is copied where both its ends are.
 * Parts of a network stay in it; a whole network, a cylinder with the pipe that begins on it, and everything that
 * comes onto another level make a network of their own.
 * @param dx east [m]  @param dy north [m]  @param onto level that the copies come onto; null leaves each on its own
 * Refuses a shift of nothing on one level, for the copy would hide behind the first; a wall or corner on its own;
 * and a part of an enclosure onto another level.
 */
export const copyThings = command((plan: Plan, refs: readonly Ref[], _dx: number, _dy: number, _onto?: string | null) => `Copy ${thingsInSentence(plan, refs)}`, (draft, refs: readonly Ref[], dx: number, dy: number, onto: string | null = null): readonly Ref[] => {
  if (!Number.isFinite(dx) || !Number.isFinite(dy)) refuse('This distance is not a number.');
  const levels = refs.map((ref) => ('level' in ref ? ref.level : networkOf(draft, ref.kind === 'network' ? ref.id : ref.network).level));
  if (Math.hypot(dx, dy) < JOIN_m && levels.some((level) => onto === null || level === onto)) refuse('The copy would lie on the first. Choose another place for it.');
  const mapping: Mapping = { point: ({ x, y }) => ({ x: x + dx, y: y + dy }), direction: (angle_rad) => angle_rad, isMirrored: false, isShift: true };
  const created: Ref[] = [];
  const networks: Ref[] = [];
  const enclosures = new Map<string, string>();
  for (const ref of wholeRefs(refs)) {
    const copy = copyLevelThing(draft, ref, onto, mapping, dx, dy);
    if (copy) created.push(copy);
    else networks.push(ref);
    if (copy?.kind === 'enclosure') enclosures.set(ref.id, copy.id);
  }
  for (const ref of networks) {
    if (ref.kind !== 'network') continue;
    const network = networkOf(draft, ref.id);
    created.push(copyNetwork(draft, network, onto ?? network.level, mapping, enclosures));
  }
  created.push(...copyNetworkParts(draft, networks.filter(({ kind }) => kind !== 'network'), onto, mapping, enclosures));
  return created;
});
