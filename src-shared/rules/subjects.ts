import type { Design, EnclosureDesign, NetworkDesign } from '../calculations/design/design.ts';
import type { Derived, DerivedLevel, DerivedNetwork, DerivedNozzle, HungNozzle, PipePath, Space } from '../derived/derived.ts';
import { placeByPlace } from '../derived/place-by-place.ts';
import { placesThatDiffer } from '../derived/places-that-differ.ts';
import { keeping, remembered, sameList } from '../derived/remember.ts';
import type { PlanPoint3 } from '../geometry/point.ts';
import type { Place } from './finding.ts';
import type { Asked } from './rule.ts';

/** Where the subjects of a rule come from: owners whose identity stands for their content, and what is asked about each. */
export interface SubjectsOf<S> {
  /** Every owner of a plan. An owner is the very same object for as long as nothing of it changes. */
  owners(derived: Derived, design: Design): readonly object[];
  /** Tells which owner of an earlier plan is this one, whatever has changed of it. */
  keyOf(owner: object): string;
  of(owner: object): readonly Asked<S>[];
}

/** Subjects put together for each owner of a kind. */
export function per<O extends object>(owners: (derived: Derived, design: Design) => readonly O[], keyOf: (owner: O) => string) {
  // Rules with the same owners share their list.
  const shared = remembered(owners);
  return <S>(of: (owner: O) => readonly Asked<S>[]): SubjectsOf<S> => ({ owners: shared, keyOf, of }) as { owners: typeof owners; keyOf(owner: object): string; of(owner: object): readonly Asked<S>[] };
}

type Pair<A, B> = readonly [A, B];

/** The same pair for as long as both of it are the same. */
const pair = <A extends object, B>() => remembered((first: A, second: B): Pair<A, B> => [first, second]);

const isThere = <T>(each: T | undefined): each is T => each !== undefined;
const without = remembered(<T>(list: readonly (T | undefined)[]): readonly T[] => list.filter(isThere)) as <T>(list: readonly (T | undefined)[]) => readonly T[];

/** Each of a list with what belongs to it on the levels of the plan; what has none there is left out. */
function pairsOnLevels<A extends object, B>(firsts: (derived: Derived, design: Design) => readonly A[], secondOn: (levels: Derived['levels']) => (first: A) => B | undefined) {
  const pairs = placeByPlace((first: A, levels: Derived['levels']): Pair<A, B> | undefined => {
    const second = secondOn(levels)(first);
    return second === undefined ? undefined : [first, second];
  });
  return (derived: Derived, design: Design): readonly Pair<A, B>[] => without(pairs(firsts(derived, design), derived.levels));
}

/**
 * Each of a list with the thing at the same place of another list; what has none is left out. A pair is the very same for
 * as long as both of it are: most stand where they stood in the last plan with the same levels.
 */
function pairsOf<A extends object, B>(firsts: (derived: Derived, design: Design) => readonly A[], seconds: (derived: Derived, design: Design) => readonly (B | undefined)[]) {
  const made = pair<A, B>();
  const lastPlaces = new WeakMap<Derived['levels'], readonly (Pair<A, B> | undefined)[]>();
  return (derived: Derived, design: Design): readonly Pair<A, B>[] => {
    const last = lastPlaces.get(derived.levels);
    const all = seconds(derived, design);
    const fresh = firsts(derived, design).map((first, i) => {
      const its = all[i];
      const known = last?.[i];
      if (its === undefined) return undefined;
      return known && known[0] === first && known[1] === its ? known : made(first, its);
    });
    const places = sameList(last, fresh);
    lastPlaces.set(derived.levels, places);
    return without(places);
  };
}

const spaceKey = ({ level, key }: Space): string => `${level.id}/${key}`;

/**
 * Where the subjects of a rule come from, and with that its reach: a rule about a network is asked anew when the
 * network has changed, one about a level when anything on that level has. Take the narrowest that shows all that the
 * rule looks at; what it puts together must follow from nothing but what it is given.
 */
export const perNetwork = per(({ networks }) => networks, ({ ref }: DerivedNetwork) => ref.id);
export const perNetworkSums = per((_, { networks }) => networks, ({ ref }: NetworkDesign) => ref.id);
export const perEnclosureSums = per((_, { enclosures }) => enclosures, ({ ref }: EnclosureDesign) => `${ref.level}/${ref.id}`);
export const perSpace = per(({ spaces }) => spaces, spaceKey);
/** Everything on a level but pipe. */
export const perLevel = per(({ levels }) => levels, ({ level }: DerivedLevel) => level.id);

/** Two owners at once. */
function perPair<A extends object, B>(owners: (derived: Derived, design: Design) => readonly (readonly [A, B])[], keyOf: (first: A) => string) {
  const pairs = per(owners, ([first]: readonly [A, B]) => keyOf(first));
  return <S>(of: (first: A, second: B) => readonly Asked<S>[]): SubjectsOf<S> => pairs(([first, second]) => of(first, second));
}

const served = pair<Space, readonly DerivedNozzle[]>();
const lastServing = new WeakMap<Space, readonly DerivedNozzle[]>();
const NO_NOZZLES: readonly DerivedNozzle[] = [];

interface Served {
  readonly networks: readonly DerivedNetwork[];
  /** Each space with its nozzles, in the order of the plan. */
  readonly lists: ReadonlyMap<Space, readonly [Space, readonly DerivedNozzle[]]>;
  /** The same as a list. */
  readonly pairs: readonly (readonly [Space, readonly DerivedNozzle[]])[];
}

/** The last of the plans with the same levels. */
const lastServed = new WeakMap<Derived['levels'], Served>();

/** The spaces that a network blows into. */
const spacesServedBy = remembered(({ nozzles }: DerivedNetwork): readonly Space[] => [...new Set(nozzles.flatMap(({ space }) => space ?? []))]);

/** Nozzles by the spaces that they serve, of some spaces only if told so. */
function nozzlesBySpace(networks: readonly DerivedNetwork[], wanted?: ReadonlySet<Space>): ReadonlyMap<Space, readonly DerivedNozzle[]> {
  const bySpace = new Map<Space, DerivedNozzle[]>();
  for (const network of networks) {
    if (wanted && !spacesServedBy(network).some((space) => wanted.has(space))) continue;
    for (const nozzle of network.nozzles) {
      if (!nozzle.space || (wanted && !wanted.has(nozzle.space))) continue;
      const known = bySpace.get(nozzle.space);
      if (known) known.push(nozzle);
      else bySpace.set(nozzle.space, [nozzle]);
    }
  }
  return bySpace;
}

/** Each space with its nozzles; every rule about served spaces asks for the same plan. */
const servedNow = remembered(({ levels, spaces, networks }: Derived): Served => {
  const last = lastServed.get(levels);
  const before = last?.networks.length === networks.length ? last : undefined;
  const touched = before && new Set(placesThatDiffer(networks, before.networks).flatMap((i) => [networks[i], before.networks[i]].flatMap((each) => (each ? spacesServedBy(each) : []))));
  const bySpace = nozzlesBySpace(networks, touched);
  const lists = new Map(before?.lists);
  for (const space of spaces) {
    if (touched && !touched.has(space)) continue;
    const serving = sameList(lastServing.get(space), bySpace.get(space) ?? NO_NOZZLES);
    lastServing.set(space, serving);
    lists.set(space, served(space, serving));
  }
  const now = { networks, lists, pairs: [...lists.values()] };
  lastServed.set(levels, now);
  return now;
});
/** Each space with the nozzles that serve it, on any network. */
export const perServedSpace = perPair((derived) => servedNow(derived).pairs, spaceKey);

/** For each nozzle of a network in turn, all the nozzles that serve the same space. */
const amongOf = remembered(({ nozzles }: DerivedNetwork, ...lists: readonly (readonly DerivedNozzle[])[]): readonly (readonly DerivedNozzle[])[] => {
  const bySpace = new Map(lists.map((list) => [list[0]?.space, list]));
  return nozzles.map(({ space }) => (space && bySpace.get(space)) ?? NO_NOZZLES);
});

interface Among extends Served {
  /** For each network in turn. */
  readonly among: readonly (readonly (readonly DerivedNozzle[])[])[];
}

/** The last of the plans with the same levels. */
const lastAmong = new WeakMap<Derived['levels'], Among>();

/** What `amongOf` says of every network; one that is the same, as are the nozzles of its spaces, is not asked. */
function amongNow(derived: Derived): Among['among'] {
  const now = servedNow(derived);
  const last = lastAmong.get(derived.levels);
  if (last?.lists === now.lists) return last.among;
  const among = now.networks.map((network, i) => {
    const spaces = spacesServedBy(network);
    const known = last?.networks[i] === network ? last.among[i] : undefined;
    if (known && spaces.every((space) => last?.lists.get(space) === now.lists.get(space))) return known;
    return amongOf(network, ...spaces.map((space) => now.lists.get(space)?.[1] ?? NO_NOZZLES));
  });
  lastAmong.set(derived.levels, { ...now, among });
  return among;
}

/** Each network with, for each of its nozzles in turn, all the nozzles that serve the same space. */
export const perNetworkAmongNozzles = perPair(pairsOf(({ networks }) => networks, amongNow), ({ ref }: DerivedNetwork) => ref.id);

const levelByLevel = remembered((levels: Derived['levels']) => new Map(levels.map((each) => [each.level, each])));
const levelById = remembered((levels: Derived['levels']) => new Map(levels.map((each) => [each.level.id, each])));

/** Each network with the level that it hangs on. */
export const perNetworkOnLevel = perPair(
  pairsOnLevels(({ networks }) => networks, (levels) => ({ level }) => levelByLevel(levels).get(level)),
  ({ ref }: DerivedNetwork) => ref.id,
);

const withSums = remembered(pairsOf(({ networks }) => networks, (_, { networks }) => networks));
/** Each network with its sums. */
export const perNetworkWithSums = perPair(withSums, ({ ref }: DerivedNetwork) => ref.id);

/** Stands for the level that a damaged plan has lost. */
const LOST = {};
const networksWithSumsOnLevels = perPair(
  pairsOnLevels(withSums, (levels) => ([{ level }]): DerivedLevel | typeof LOST => levelByLevel(levels).get(level) ?? LOST),
  ([{ ref }]: readonly [DerivedNetwork, NetworkDesign]) => ref.id,
);
const isLevel = (level: DerivedLevel | typeof LOST): level is DerivedLevel => level !== LOST;
/** Each network with its sums and the level that it hangs on, which is missing where a damaged plan has lost it. */
export const perNetworkWithSumsOnLevel = <S>(of: (network: DerivedNetwork, sums: NetworkDesign, level: DerivedLevel | undefined) => readonly Asked<S>[]): SubjectsOf<S> =>
  networksWithSumsOnLevels(([network, sums], level) => of(network, sums, isLevel(level) ? level : undefined));

/** The sums of each enclosure with the level that it is drawn on. */
export const perEnclosureSumsOnLevel = perPair(
  pairsOnLevels((_, { enclosures }) => enclosures, (levels) => ({ ref }) => levelById(levels).get(ref.level)),
  ({ ref }: EnclosureDesign) => `${ref.level}/${ref.id}`,
);

/** Asked anew at every change: only for what is quickly told of a whole plan. */
export const perPlan = <S>(of: (derived: Derived, design: Design) => readonly Asked<S>[]): SubjectsOf<S> =>
  per(
    (derived, design) => [[derived, design] as const],
    () => 'plan',
  )(([derived, design]) => of(derived, design));

/** A nozzle by itself: the very same while it and its space are, however its network changes. */
export interface NozzleSubject extends HungNozzle {
  /** Level id. */
  readonly level: string;
}

/** Its reference, its lists of holes and blockers. */
const NOZZLE_DEPTH = 2;
const kept = keeping<DerivedNozzle['nozzle'], NozzleSubject>(NOZZLE_DEPTH);
const byItself = remembered(({ network, ...hung }: DerivedNozzle): NozzleSubject => {
  const fresh = { ...hung, level: network.level.id };
  return Object.isFrozen(hung.nozzle) ? kept(hung.nozzle, fresh) : fresh;
});

/** A nozzle under its own name. */
export const askedNozzle = (nozzle: DerivedNozzle): Asked<NozzleSubject> => ({ subject: byItself(nozzle), ref: nozzle.ref, name: nozzle.nozzle.name });

/** A network under its own name. */
export const askedNetwork = (network: DerivedNetwork): Asked<DerivedNetwork> => ({ subject: network, ref: network.ref, name: network.network.name });

/** Every nozzle of the plan. */
export const nozzleSubjects = perNetwork(({ nozzles }) => nozzles.map(askedNozzle));

/** Every network. */
export const networkSubjects = perNetwork((network) => [askedNetwork(network)]);

/** Every network with pipe. While one has none P1 says so. */
export const networksWithPipe = perNetwork((network) => (network.pipes.length > 0 ? [askedNetwork(network)] : []));

/** A space with the nozzles that serve it, on any network. */
export interface ServedSpace {
  readonly space: Space;
  readonly nozzles: readonly DerivedNozzle[];
}

/** Every space that holds or should hold nozzles, with those that it has. */
export const servedSpaceSubjects = perServedSpace((space, nozzles) => (space.isProtected ? [{ subject: { space, nozzles } satisfies ServedSpace, ref: space.enclosureRef, name: space.name }] : []));

/** A nozzle with the way of the agent to it, which is missing while it hangs on no tree. */
export interface NozzlePath {
  readonly nozzle: DerivedNozzle;
  readonly network: DerivedNetwork;
  readonly path: PipePath | undefined;
}

const pathsByNozzle = remembered(({ paths }: DerivedNetwork): ReadonlyMap<string, PipePath> => new Map(paths.map((path) => [path.nozzle, path])));

/** Every nozzle with its path. */
export const pathSubjects = perNetwork((network) =>
  network.nozzles.map((nozzle) => ({
    subject: { nozzle, network, path: pathsByNozzle(network).get(nozzle.nozzle.id) } satisfies NozzlePath,
    ref: nozzle.ref,
    name: nozzle.nozzle.name,
  })),
);

/** Where a nozzle's finding shows. */
export const placeOfNozzle = ({ level }: NozzleSubject, at: PlanPoint3): Place => ({ level, at: [at], heights: [at] });

const nodesAlong = remembered(({ nodes }: PipePath, network: DerivedNetwork) => nodes.flatMap((id) => network.network.nodes[id]?.at ?? []));

/** Where a path's finding shows: the places of its nodes. */
export function placeOfPath({ network, path }: NozzlePath): Place | undefined {
  const at = path ? nodesAlong(path, network) : [];
  return at.length > 0 ? { level: network.level.id, at, heights: at } : undefined;
}
