import type RBush from 'rbush';
import type { Box } from '../geometry/outline.ts';
import { passesOver } from '../geometry/over-face.ts';
import { segmentToPrism_m } from '../geometry/prism.ts';
import { pipeBox, pipeToCeiling_m, pipeToPipe_m, pipeToSolid_m } from './clash.ts';
import type { SolidCeiling } from './clash-ceiling.ts';
import { crosses } from './clash-crossing.ts';
import type { ClashPipe } from './clash-pipe.ts';
import type { StandingThing } from './clash-standing.ts';
import type { Entry } from './realign.ts';

/** What a pipe may run into. */
export type ClashThing = StandingThing | { readonly kind: 'pipe'; readonly pipe: ClashPipe };

/** A thing near a pipe. */
export interface Contact {
  readonly thing: ClashThing;
  /** Between their outsides [m]; negative by as much as they run into each other at least. */
  readonly clearance_m: number;
}

/** A thing near a pipe that is no clash of it. */
export interface Beside extends Contact {
  /** The other pipe has it among its contacts, the pipe crosses it squarely, or one short piece joins the two. */
  readonly why: 'told-by-other' | 'crossing' | 'joined';
}

/** A pipe with all that is near it. */
export interface PipeContacts {
  readonly pipe: ClashPipe;
  /** Nearest first. Of two pipes near each other only the one that comes first in the plan has the other here. */
  readonly contacts: readonly Contact[];
  readonly beside: readonly Beside[];
  /** Pipes that meet it at a node. */
  readonly joined: readonly ClashPipe[];
  /** A room over which it runs and whose ceiling is not known. */
  readonly unknownCeiling: SolidCeiling | undefined;
}

/** A thing in the index of its level. */
export interface ThingBox extends Box, Entry<StandingThing> {}

/** Pipes that are told one after the other. */
export interface PipeGroup {
  /** Place of their network among all networks. */
  order: number;
}

/** A pipe in the index of its level. */
export interface PipeEntry extends Box, Entry<ClashPipe> {
  readonly group: PipeGroup;
  found: PipeContacts | undefined;
}

/** Which of two pipes comes first in the plan: below 0 the first one. */
const byOrder = (one: PipeEntry, other: PipeEntry): number => one.group.order - other.group.order || one.order - other.order;

/** Things farther from a pipe than this beyond the clearance wanted are of no interest [m]. */
export const LOOK_AROUND_m = 0.25;

const meet = ({ ref, pipe }: ClashPipe, other: ClashPipe): boolean =>
  ref.network === other.ref.network && (pipe.from === other.pipe.from || pipe.from === other.pipe.to || pipe.to === other.pipe.from || pipe.to === other.pipe.to);

/** Heights that a pipe takes up with a margin [m]. */
interface Heights {
  readonly lowest_m: number;
  readonly highest_m: number;
}
const heightsOf = ({ from, to, outside_m }: ClashPipe, margin_m: number): Heights => ({
  lowest_m: Math.min(from.z, to.z) - margin_m - outside_m / 2,
  highest_m: Math.max(from.z, to.z) + margin_m + outside_m / 2,
});

function clearanceTo_m(pipe: ClashPipe, thing: StandingThing, { lowest_m, highest_m }: Heights, within_m: number): number {
  const toPrism_m = ({ bottom_m, top_m }: { readonly bottom_m: number; readonly top_m: number }, far: () => number): number => (bottom_m > highest_m || top_m < lowest_m ? Infinity : far());
  switch (thing.kind) {
    case 'solid':
      return toPrism_m(thing.solid, () => pipeToSolid_m(pipe, thing.solid));
    case 'floor':
      return toPrism_m(thing.floor.prism, () => segmentToPrism_m({ a: pipe.from, b: pipe.to }, thing.floor.prism) - pipe.outside_m / 2);
    case 'wall':
      return toPrism_m(thing.wall.prism, () => segmentToPrism_m({ a: pipe.from, b: pipe.to }, thing.wall.prism) - pipe.outside_m / 2);
    case 'ceiling':
      return passesOver({ a: pipe.from, b: pipe.to }, thing.ceiling.rings) ? pipeToCeiling_m(pipe, thing.ceiling.faces, within_m) : Infinity;
  }
}

/** Clearance of a pipe to anything [m], as it is counted between the two; Infinity far away. */
export const clearanceOf_m = (pipe: ClashPipe, thing: ClashThing, within_m: number): number =>
  thing.kind === 'pipe' ? pipeToPipe_m(pipe, thing.pipe) : clearanceTo_m(pipe, thing, heightsOf(pipe, within_m), within_m);

/** Pipes near one, those that meet it and those that a short piece joins to it told apart. */
function pipesAround(entry: PipeEntry, pipes: RBush<PipeEntry>, widest_m: number): { contacts: Contact[]; beside: Beside[]; joined: ClashPipe[] } {
  const { key: pipe } = entry;
  const { lowest_m, highest_m } = heightsOf(pipe, widest_m);
  const joined: ClashPipe[] = [];
  const near: { readonly entry: PipeEntry; readonly pipe: ClashPipe; readonly clearance_m: number }[] = [];
  for (const found of pipes.search(pipeBox(pipe, widest_m))) {
    const other = found.key;
    if (other === pipe) continue;
    if (meet(pipe, other)) {
      joined.push(other);
      continue;
    }
    const beyond_m = other.outside_m / 2;
    if (Math.max(other.from.z, other.to.z) + beyond_m < lowest_m || Math.min(other.from.z, other.to.z) - beyond_m > highest_m) continue;
    const clearance_m = pipeToPipe_m(pipe, other);
    if (clearance_m <= Math.max(pipe.wanted_m, other.wanted_m) + LOOK_AROUND_m) near.push({ entry: found, pipe: other, clearance_m });
  }
  // What a single piece joins, so short that they cannot be farther apart, is one assembly of fittings and no clash.
  const isJoinedBriefly = ({ pipe: other }: { pipe: ClashPipe }): boolean =>
    other.ref.network === pipe.ref.network &&
    joined.some((piece) => piece.length_m <= Math.max(pipe.wanted_m, other.wanted_m) + LOOK_AROUND_m + (pipe.outside_m + other.outside_m) / 2 && meet(piece, other));
  const contacts: Contact[] = [];
  const beside: Beside[] = [];
  for (const each of near.sort((a, b) => byOrder(a.entry, b.entry))) {
    const contact: Contact = { thing: { kind: 'pipe', pipe: each.pipe }, clearance_m: each.clearance_m };
    if (isJoinedBriefly(each)) beside.push({ ...contact, why: 'joined' });
    else if (byOrder(each.entry, entry) < 0) beside.push({ ...contact, why: 'told-by-other' });
    else contacts.push(contact);
  }
  return { contacts, beside, joined };
}

/**
 * All that is near a pipe.
 * @param widest_m  how far any pipe of the plan looks for others [m]
 */
export function contactsOf(entry: PipeEntry, things: RBush<ThingBox>, pipes: RBush<PipeEntry>, widest_m: number): PipeContacts {
  const { key: pipe } = entry;
  const within_m = pipe.wanted_m + LOOK_AROUND_m;
  const heights = heightsOf(pipe, within_m);
  const { contacts: others, beside, joined } = pipesAround(entry, pipes, widest_m);
  const found: (Contact & { order: number })[] = [];
  let unknownCeiling: SolidCeiling | undefined;
  for (const { key: thing, order } of things.search(pipeBox(pipe, within_m))) {
    if (thing.kind === 'ceiling' && thing.ceiling.isUnknown && !unknownCeiling && passesOver({ a: pipe.from, b: pipe.to }, thing.ceiling.rings)) unknownCeiling = thing.ceiling;
    const clearance_m = clearanceTo_m(pipe, thing, heights, within_m);
    if (clearance_m > within_m) continue;
    const isCrossing = (thing.kind === 'wall' || thing.kind === 'floor' || thing.kind === 'ceiling') && clearance_m < pipe.wanted_m && crosses(pipe, thing, joined);
    if (isCrossing) beside.push({ thing, clearance_m, why: 'crossing' });
    else found.push({ thing, clearance_m, order });
  }
  found.sort((a, b) => a.order - b.order);
  const standing = found.map(({ thing, clearance_m }): Contact => ({ thing, clearance_m }));
  const contacts = [...standing, ...others].sort((a, b) => a.clearance_m - b.clearance_m);
  return { pipe, contacts, beside, joined, unknownCeiling };
}
