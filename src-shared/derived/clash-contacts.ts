import type RBush from 'rbush';
import type { Box } from '../geometry/outline.ts';
import { passesOver } from '../geometry/over-face.ts';
import type { Prism } from '../geometry/prism.ts';
import { isFarBelow, pipeBox, pipeToCeiling_m, pipeToPipe_m, pipeToSolid_m } from './clash.ts';
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

/** Whether a prism lies farther below or above a pipe than a margin [m] around its outside. */
const isOffLevel = ({ from, to, outside_m }: ClashPipe, { bottom_m, top_m }: { readonly bottom_m: number; readonly top_m: number }, margin_m: number): boolean => {
  const beyond_m = margin_m + outside_m / 2;
  return bottom_m > Math.max(from.z, to.z) + beyond_m || top_m < Math.min(from.z, to.z) - beyond_m;
};

const toPrism_m = (pipe: ClashPipe, prism: Prism, within_m: number): number =>
  isOffLevel(pipe, prism, within_m) ? Infinity : pipeToSolid_m(pipe, prism);

/** Clearance to what stands still, Infinity where it is told to be far away. */
function clearanceTo_m(pipe: ClashPipe, thing: StandingThing, within_m: number): number {
  switch (thing.kind) {
    case 'solid':
      return toPrism_m(pipe, thing.solid, within_m);
    case 'floor':
      return toPrism_m(pipe, thing.floor.prism, within_m);
    case 'wall':
      return toPrism_m(pipe, thing.wall.prism, within_m);
    case 'ceiling':
      return isFarBelow(pipe, thing.ceiling.faces, within_m) || !passesOver({ a: pipe.from, b: pipe.to }, thing.ceiling.rings) ? Infinity : pipeToCeiling_m(pipe, thing.ceiling.faces, within_m);
  }
}

/** Clearance of a pipe to anything [m], as it is counted between the two; Infinity far away. */
export const clearanceOf_m = (pipe: ClashPipe, thing: ClashThing, within_m: number): number =>
  thing.kind === 'pipe' ? pipeToPipe_m(pipe, thing.pipe) : clearanceTo_m(pipe, thing, within_m);

/** A contact with the place of its thing among all, which tells two that are equally near apart. */
interface Placed extends Contact {
  readonly order: number;
}

const bareOf = ({ thing, clearance_m }: Placed): Contact => ({ thing, clearance_m });

/** Contacts in the order of the plan. */
function inOrder(found: readonly Placed[]): readonly Contact[] {
  const [only] = found;
  return found.length > 1 ? found.toSorted((a, b) => a.order - b.order).map(bareOf) : only ? [bareOf(only)] : NONE;
}

const NONE: readonly Contact[] = [];

/** A pipe near another that does not meet it. */
interface NearPipe {
  readonly entry: PipeEntry;
  readonly clearance_m: number;
}

/** Pipes near one in the order of the plan; those that meet it are put into `joined`. */
function pipesNear(pipe: ClashPipe, pipes: RBush<PipeEntry>, widest_m: number, joined: ClashPipe[]): readonly NearPipe[] {
  const near: NearPipe[] = [];
  const beyond_m = widest_m + pipe.outside_m / 2;
  const lowest_m = Math.min(pipe.from.z, pipe.to.z) - beyond_m;
  const highest_m = Math.max(pipe.from.z, pipe.to.z) + beyond_m;
  for (const entry of pipes.search(pipeBox(pipe, widest_m))) {
    const other = entry.key;
    if (other === pipe) continue;
    if (meet(pipe, other)) {
      joined.push(other);
      continue;
    }
    const half_m = other.outside_m / 2;
    if (Math.max(other.from.z, other.to.z) + half_m < lowest_m || Math.min(other.from.z, other.to.z) - half_m > highest_m) continue;
    const clearance_m = pipeToPipe_m(pipe, other);
    if (clearance_m <= Math.max(pipe.wanted_m, other.wanted_m) + LOOK_AROUND_m) near.push({ entry, clearance_m });
  }
  return near.length > 1 ? near.sort((a, b) => byOrder(a.entry, b.entry)) : near;
}

/** Whether a single piece joins two pipes, so short that they cannot be farther apart: that is one assembly of fittings and no clash. */
const isJoinedBriefly = (pipe: ClashPipe, other: ClashPipe, joined: readonly ClashPipe[]): boolean =>
  other.ref.network === pipe.ref.network &&
  joined.some((piece) => piece.length_m <= Math.max(pipe.wanted_m, other.wanted_m) + LOOK_AROUND_m + (pipe.outside_m + other.outside_m) / 2 && meet(piece, other));

/**
 * All that is near a pipe.
 * @param widest_m  how far any pipe of the plan looks for others [m]
 */
export function contactsOf(entry: PipeEntry, things: RBush<ThingBox>, pipes: RBush<PipeEntry>, widest_m: number): PipeContacts {
  const { key: pipe } = entry;
  const within_m = pipe.wanted_m + LOOK_AROUND_m;
  const joined: ClashPipe[] = [];
  const others: Contact[] = [];
  const beside: Beside[] = [];
  for (const { entry: near, clearance_m } of pipesNear(pipe, pipes, widest_m, joined)) {
    const contact: Contact = { thing: { kind: 'pipe', pipe: near.key }, clearance_m };
    if (isJoinedBriefly(pipe, near.key, joined)) beside.push({ ...contact, why: 'joined' });
    else if (byOrder(near, entry) < 0) beside.push({ ...contact, why: 'told-by-other' });
    else others.push(contact);
  }
  const found: Placed[] = [];
  let unknownCeiling: SolidCeiling | undefined;
  for (const { key: thing, order } of things.search(pipeBox(pipe, within_m))) {
    if (thing.kind === 'ceiling' && thing.ceiling.isUnknown && !unknownCeiling && passesOver({ a: pipe.from, b: pipe.to }, thing.ceiling.rings)) unknownCeiling = thing.ceiling;
    const clearance_m = clearanceTo_m(pipe, thing, within_m);
    if (clearance_m > within_m) continue;
    const isCrossing = thing.kind !== 'solid' && clearance_m < pipe.wanted_m && crosses(pipe, thing, joined);
    if (isCrossing) beside.push({ thing, clearance_m, why: 'crossing' });
    else found.push({ thing, clearance_m, order });
  }
  const standing = inOrder(found);
  const all = others.length === 0 ? standing : [...standing, ...others];
  const contacts = all.length > 1 ? all.toSorted((a, b) => a.clearance_m - b.clearance_m) : all;
  return { pipe, contacts, beside, joined, unknownCeiling };
}
