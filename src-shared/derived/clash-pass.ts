import RBush from 'rbush';
import { type Box, boxesTouch } from '../geometry/outline.ts';
import { passesOver } from '../geometry/over-face.ts';
import { pipeBox, pipeToCeiling_m, pipeToSolid_m } from './clash.ts';
import { type SolidCeiling, solidCeilingOf } from './clash-ceiling.ts';
import { networkBox, pipesNear } from './clash-pairs.ts';
import type { Derived, DerivedNetwork, DerivedPipe, Solid } from './derived.ts';
import { remembered, sameList } from './remember.ts';
import { type SolidIndex, solidsOf } from './solids.ts';

/** What a pipe may run into. */
export type ClashThing = { readonly kind: 'solid'; readonly solid: Solid } | { readonly kind: 'ceiling'; readonly ceiling: SolidCeiling } | { readonly kind: 'pipe'; readonly pipe: DerivedPipe };

/** A thing near a pipe. */
export interface Contact {
  readonly thing: ClashThing;
  /** Between their outsides [m]; negative by as much as they run into each other at least. */
  readonly clearance_m: number;
}

/** A pipe with all that is near it. */
export interface PipeContacts {
  readonly pipe: DerivedPipe;
  /** Nearest first. Of two pipes near each other only the one that comes first in the plan has the other here. */
  readonly contacts: readonly Contact[];
  /** A room over which it runs and whose ceiling is not known. */
  readonly unknownCeiling: SolidCeiling | undefined;
}

/** Things farther from a pipe than this beyond the clearance wanted are of no interest [m]. */
const LOOK_AROUND_m = 0.25;

/** Clearance that the unit's manual wants around the pipe of a network [m]; 0 while it is blank. */
const wanted_m = ({ profile }: DerivedNetwork): number => Math.max(0, profile?.limits.pipeClearance_m?.value ?? 0);

const widened = ({ minX, minY, maxX, maxY }: Box, by_m: number): Box => ({ minX: minX - by_m, minY: minY - by_m, maxX: maxX + by_m, maxY: maxY + by_m });

/** What each pipe of a network is near to in its own network and in the building around it. */
const ownContacts = remembered((network: DerivedNetwork, solids: readonly Solid[], ceilings: readonly SolidCeiling[]): readonly PipeContacts[] => {
  const within_m = wanted_m(network) + LOOK_AROUND_m;
  const index = new RBush<Box & { readonly solid: Solid }>();
  index.load(solids.map((solid) => ({ ...solid.bounds, solid })));
  const orders = new Map(network.pipes.map((pipe, order) => [pipe, order]));
  return network.pipes.map((pipe, order): PipeContacts => {
    const contacts: Contact[] = [];
    const box = pipeBox(pipe, within_m);
    const lowest_m = Math.min(pipe.from.z, pipe.to.z) - within_m - pipe.outside_m / 2;
    const highest_m = Math.max(pipe.from.z, pipe.to.z) + within_m + pipe.outside_m / 2;
    for (const { solid } of index.search(box)) {
      if (solid.bottom_m > highest_m || solid.top_m < lowest_m) continue;
      const clearance_m = pipeToSolid_m(pipe, solid);
      if (clearance_m <= within_m) contacts.push({ thing: { kind: 'solid', solid }, clearance_m });
    }
    let unknownCeiling: SolidCeiling | undefined;
    for (const ceiling of ceilings) {
      if (!boxesTouch(ceiling.bounds, box) || !passesOver({ a: pipe.from, b: pipe.to }, ceiling.rings)) continue;
      if (ceiling.isUnknown) unknownCeiling ??= ceiling;
      const clearance_m = pipeToCeiling_m(pipe, ceiling.faces, within_m);
      if (clearance_m <= within_m) contacts.push({ thing: { kind: 'ceiling', ceiling }, clearance_m });
    }
    for (const near of pipesNear(pipe, network, within_m)) {
      if ((orders.get(near.pipe) ?? 0) > order) contacts.push({ thing: { kind: 'pipe', pipe: near.pipe }, clearance_m: near.clearance_m });
    }
    return { pipe, contacts, unknownCeiling };
  });
});

/** Contacts of pipes with those of one other network, by the pipe's id. */
type PairContacts = ReadonlyMap<string, readonly Contact[]>;

/** Keeps what two networks have to do with each other, for as long as both stand. */
const pairsOf = remembered((_network: DerivedNetwork) => new WeakMap<DerivedNetwork, PairContacts>());

function pairContacts(one: DerivedNetwork, other: DerivedNetwork): PairContacts {
  const kept = pairsOf(one).get(other);
  if (kept) return kept;
  const within_m = Math.max(wanted_m(one), wanted_m(other)) + LOOK_AROUND_m;
  const otherBox = networkBox(other);
  const found = new Map<string, readonly Contact[]>();
  for (const pipe of one.pipes) {
    if (!boxesTouch(pipeBox(pipe, within_m), otherBox)) continue;
    const near = pipesNear(pipe, other, within_m);
    if (near.length > 0) found.set(pipe.ref.id, near.map(({ pipe: thing, clearance_m }) => ({ thing: { kind: 'pipe', pipe: thing }, clearance_m })));
  }
  pairsOf(one).set(other, found);
  return found;
}

const everyContact = remembered((own: readonly PipeContacts[], others: readonly PairContacts[]): readonly PipeContacts[] =>
  own.map((each) => {
    const contacts = [...each.contacts, ...others.flatMap((pairs) => pairs.get(each.pipe.ref.id) ?? [])];
    return { ...each, contacts: contacts.sort((a, b) => a.clearance_m - b.clearance_m) };
  }),
);

/** What stands on a level. */
interface Standing {
  readonly solids: SolidIndex;
  readonly ceilings: readonly SolidCeiling[];
}
const NOTHING: Standing = { solids: solidsOf({}, ''), ceilings: [] };

/** Boxes of the solids that only one of two indexes has. */
const changedSolids = remembered((after: SolidIndex, before: SolidIndex): readonly Box[] => {
  const [then, now] = [new Set(before.solids), new Set(after.solids)];
  return [...after.solids.filter((solid) => !then.has(solid)), ...before.solids.filter((solid) => !now.has(solid))].map(({ bounds }) => bounds);
});

/** What the last pass found around a network. Lists of the same things are the same list. */
interface Around extends Standing {
  readonly within_m: number;
  readonly nearSolids: readonly Solid[];
  readonly nearCeilings: readonly SolidCeiling[];
}
const lastAround = new WeakMap<DerivedNetwork, Around>();
const lastOthers = new WeakMap<DerivedNetwork, readonly PairContacts[]>();

/** Solids and ceilings near a network; sought anew only where something near it has changed. */
function aroundOf(network: DerivedNetwork, { solids, ceilings }: Standing, box: Box, within_m: number): Around {
  const last = lastAround.get(network);
  const isKept = last?.within_m === within_m;
  const hasSolids = isKept && (last.solids === solids || !changedSolids(solids, last.solids).some((changed) => boxesTouch(changed, box)));
  const hasCeilings = isKept && sameList(last.ceilings, ceilings) === last.ceilings;
  const around: Around = {
    within_m,
    solids,
    ceilings,
    nearSolids: hasSolids ? last.nearSolids : sameList(last?.nearSolids, solids.near(box)),
    nearCeilings: hasCeilings ? last.nearCeilings : sameList(last?.nearCeilings, ceilings.filter(({ bounds }) => boxesTouch(bounds, box))),
  };
  lastAround.set(network, around);
  return around;
}

type NetworkBox = Box & { readonly network: DerivedNetwork; readonly order: number };

/** The ceilings of every level's rooms, by level id. */
const ceilingsByLevel = remembered((spaces: Derived['spaces']): ReadonlyMap<string, readonly SolidCeiling[]> => {
  const byLevel = new Map<string, SolidCeiling[]>();
  for (const space of spaces) {
    if (space.kind !== 'room') continue;
    const ceiling = solidCeilingOf(space);
    const others = byLevel.get(space.level.id);
    if (others) others.push(ceiling);
    else byLevel.set(space.level.id, [ceiling]);
  }
  return byLevel;
});

const firstLike = new WeakMap<DerivedNetwork['paths'], DerivedNetwork>();

/** The first of the derived networks that have the very same pipe and profile, whatever has changed on their level since. */
function standing(network: DerivedNetwork): DerivedNetwork {
  const first = firstLike.get(network.paths);
  if (first?.network === network.network && first.profile === network.profile && first.level.id === network.level.id) return first;
  firstLike.set(network.paths, network);
  return network;
}

/**
 * What every pipe of a plan is near to, network by network. Each network's answer stands, the very same list, for as long
 * as it and what is near it are the same, so that a drag asks only about the network or the thing that it touches.
 */
export const clashPass = remembered((derived: Derived): readonly (readonly PipeContacts[])[] => {
  const networks = derived.networks.map(standing);
  const index = new RBush<NetworkBox>();
  index.load(networks.flatMap((network, order) => (network.pipes.length === 0 ? [] : [{ ...networkBox(network), network, order }])));
  const ceilings = ceilingsByLevel(derived.spaces);
  const levels = new Map(derived.networks.map(({ level }) => [level.id, level]));
  const on = new Map([...levels].map(([id, { obstructions }]) => [id, { solids: solidsOf(obstructions, id), ceilings: ceilings.get(id) ?? [] }]));
  const widest_m = Math.max(0, ...networks.map(wanted_m)) + LOOK_AROUND_m;
  return networks.map((network, order) => {
    if (network.pipes.length === 0) return [];
    const level = network.level.id;
    const box = widened(networkBox(network), widest_m);
    const { nearSolids, nearCeilings } = aroundOf(network, on.get(level) ?? NOTHING, box, widest_m);
    const others = sameList(
      lastOthers.get(network),
      index
        .search(box)
        .filter((other) => other.order > order && other.network.level.id === level)
        .sort((a, b) => a.order - b.order)
        .map((other) => pairContacts(network, other.network)),
    );
    lastOthers.set(network, others);
    return everyContact(ownContacts(network, nearSolids, nearCeilings), others);
  });
});
