import type { Design, EnclosureDesign } from '../calculations/design/design.ts';
import type { Derived, DerivedLevel, DerivedNetwork } from '../derived/derived.ts';
import { type Neighbour, neighboursByEnclosure } from '../derived/neighbours.ts';
import { placesThatDiffer } from '../derived/places-that-differ.ts';
import { remembered, rememberedPart, sameList } from '../derived/remember.ts';
import { type Enclosure, type Plan, type RefOf, ringOf, refKey } from '../model/plan.ts';
import type { Place } from './finding.ts';
import { per } from './subjects.ts';

/** Another enclosure that a network of this one blows into. */
export interface SharedNetwork {
  readonly network: string;
  readonly enclosure: string;
  readonly dischargedWith: string;
}

/** An enclosure that some nozzle blows into, with all that stands in and around it. */
export interface ServedRoom {
  readonly ref: RefOf<'enclosure'>;
  readonly name: string;
  readonly enclosure: Enclosure;
  readonly sums: EnclosureDesign;
  /** Its level with everything on it but pipe. */
  readonly on: DerivedLevel;
  /** Every drawn space that touches it. */
  readonly neighbours: readonly Neighbour[];
  /** Names of the other enclosures that are said to be discharged together with it. */
  readonly together: readonly string[];
  readonly sharedNetworks: readonly SharedNetwork[];
}

const keyOf = remembered(({ ref }: EnclosureDesign): string => refKey(ref));

const NOBODY: readonly Neighbour[] = [];

/** Enclosures that a network blows into, by their keys. */
const servedBy = remembered(({ nozzles }: DerivedNetwork): ReadonlyMap<string, Enclosure> => new Map(nozzles.flatMap(({ space }) => (space ? [[refKey(space.enclosureRef), space.enclosure] as const] : []))));

/** Names of enclosures by the name that they are discharged under. */
const groupsOf = rememberedPart((levels: Plan['levels']): ReadonlyMap<string, readonly Enclosure[]> => {
  const groups = new Map<string, Enclosure[]>();
  for (const level of Object.values(levels)) {
    for (const enclosure of Object.values(level.enclosures)) {
      const group = groupName(enclosure);
      if (group) groups.set(group, [...(groups.get(group) ?? []), enclosure]);
    }
  }
  return groups;
});

/** The name that an enclosure is discharged under; blank: by itself. */
export const groupName = ({ dischargedWith }: Pick<Enclosure, 'dischargedWith'>): string => dischargedWith.trim().toLowerCase();

/** Whether two enclosures are said to be discharged together. */
export const areTogether = (one: Pick<Enclosure, 'dischargedWith'>, other: Pick<Enclosure, 'dischargedWith'>): boolean => groupName(one) !== '' && groupName(one) === groupName(other);

const lastTogether = new WeakMap<EnclosureDesign, readonly string[]>();
const lastShared = new WeakMap<EnclosureDesign, readonly SharedNetwork[]>();
const sharedKept = new Map<string, SharedNetwork>();

/** The very same object for the same words. */
function sharedNetwork(network: string, enclosure: string, dischargedWith: string): SharedNetwork {
  const key = JSON.stringify([network, enclosure, dischargedWith]);
  const known = sharedKept.get(key);
  if (known) return known;
  if (sharedKept.size > 10_000) sharedKept.clear();
  const fresh = { network, enclosure, dischargedWith };
  sharedKept.set(key, fresh);
  return fresh;
}

const roomOf = remembered(
  (sums: EnclosureDesign, on: DerivedLevel, neighbours: readonly Neighbour[], together: readonly string[], sharedNetworks: readonly SharedNetwork[]): ServedRoom => ({
    ref: sums.ref,
    name: sums.name,
    enclosure: sums.enclosure,
    sums,
    on,
    neighbours,
    together,
    sharedNetworks,
  }),
);

/** Networks by the enclosures that they blow into, of some enclosures only if told so. */
function servingOf(networks: readonly DerivedNetwork[], wanted?: ReadonlySet<string>): ReadonlyMap<string, readonly DerivedNetwork[]> {
  const serving = new Map<string, DerivedNetwork[]>();
  for (const network of networks) {
    for (const key of servedBy(network).keys()) {
      if (wanted && !wanted.has(key)) continue;
      const known = serving.get(key);
      if (known) known.push(network);
      else serving.set(key, [network]);
    }
  }
  return serving;
}

/** The other enclosures that a network blows into besides one. */
const sharedWith = (key: string) => (network: DerivedNetwork): SharedNetwork[] => [...servedBy(network)].flatMap(([other, { name, dischargedWith }]) => (other === key ? [] : [sharedNetwork(network.network.name, name, dischargedWith)]));

const levelsById = remembered((levels: Derived['levels']): ReadonlyMap<string, DerivedLevel> => new Map(levels.map((each) => [each.level.id, each])));

/** An enclosure with all that stands in and around it; undefined where no nozzle blows into it. */
function servedRoomOf(sums: EnclosureDesign, derived: Derived, networks: readonly DerivedNetwork[] | undefined): ServedRoom | undefined {
  const on = levelsById(derived.levels).get(sums.ref.level);
  if (!on || !networks) return undefined;
  const { levels } = derived.plan;
  const key = keyOf(sums);
  const others = (groupsOf(levels).get(groupName(sums.enclosure)) ?? []).filter((other) => other !== sums.enclosure).map(({ name }) => name);
  const together = sameList(lastTogether.get(sums), others);
  lastTogether.set(sums, together);
  const sharedNetworks = sameList(lastShared.get(sums), networks.flatMap(sharedWith(key)));
  lastShared.set(sums, sharedNetworks);
  return roomOf(sums, on, neighboursByEnclosure(levels).get(key) ?? NOBODY, together, sharedNetworks);
}

interface RoomsBefore {
  readonly networks: readonly DerivedNetwork[];
  readonly enclosures: readonly EnclosureDesign[];
  /** Places of enclosures by their keys. */
  readonly places: ReadonlyMap<string, number>;
  /** One for each enclosure; undefined where no nozzle blows into it. */
  readonly rooms: readonly (ServedRoom | undefined)[];
}

/** The last of the plans with the same levels. */
const lastRooms = new WeakMap<Derived['levels'], RoomsBefore>();

/** Keys of the enclosures that are touched by what changed of the networks and sums; undefined where they are not all told so. */
function touchedRooms({ networks, enclosures }: RoomsBefore, now: readonly DerivedNetwork[], sums: readonly EnclosureDesign[]): ReadonlySet<string> | undefined {
  if (networks.length !== now.length || enclosures.length !== sums.length) return undefined;
  const touched = new Set<string>();
  for (const i of placesThatDiffer(now, networks)) for (const all of [now, networks]) for (const key of all[i] ? servedBy(all[i]).keys() : []) touched.add(key);
  for (const i of placesThatDiffer(sums, enclosures)) {
    const [one, other] = [sums[i], enclosures[i]];
    if (!one || !other || keyOf(one) !== keyOf(other)) return undefined;
    touched.add(keyOf(one));
  }
  return touched;
}

/** The served enclosures of a plan; each the very same object for as long as nothing of it and around it changes. */
const servedRooms = remembered((derived: Derived, { enclosures }: Design): readonly ServedRoom[] => {
  const last = lastRooms.get(derived.levels);
  const touched = last && touchedRooms(last, derived.networks, enclosures);
  const serving = servingOf(derived.networks, touched);
  const roomNow = (sums: EnclosureDesign): ServedRoom | undefined => servedRoomOf(sums, derived, serving.get(keyOf(sums)));
  const isKept = last !== undefined && touched !== undefined;
  const places = isKept ? last.places : new Map(enclosures.map((sums, i) => [keyOf(sums), i]));
  const rooms = isKept ? last.rooms.slice() : enclosures.map(roomNow);
  for (const key of touched ?? []) {
    const place = places.get(key);
    const sums = place === undefined ? undefined : enclosures[place];
    if (place !== undefined && sums) rooms[place] = roomNow(sums);
  }
  lastRooms.set(derived.levels, { networks: derived.networks, enclosures, places, rooms });
  return rooms.filter((room) => room !== undefined);
});

/** Subjects from each enclosure that is served, with its sums and what stands in and around it. */
export const perServedRoom = per(servedRooms, ({ sums }: ServedRoom) => keyOf(sums));

/** Where a finding about a whole served room shows. */
export const placeOfRoom = ({ ref, enclosure }: Pick<ServedRoom, 'ref' | 'enclosure'>): Place => ({ level: ref.level, at: ringOf(enclosure.outline) });
