import type { Design, EnclosureDesign, NetworkDesign } from '../calculations/design/design.ts';
import type { Derived, DerivedLevel, DerivedNetwork, DerivedNozzle, HungNozzle, PipePath, Space } from '../derived/derived.ts';
import { keeping, remembered } from '../derived/remember.ts';
import type { PlanPoint3 } from '../geometry/point.ts';
import type { Place } from './finding.ts';
import type { Asked } from './rule.ts';

/** What a rule is asked about, from a plan and its sums. */
export type SubjectsOf<S> = (derived: Derived, design: Design) => readonly Asked<S>[];

/**
 * Where the subjects of a rule come from, and with that its reach: a rule about a network is asked anew when the
 * network has changed, one about a level when anything on that level has. Take the narrowest that shows all that the
 * rule looks at; what it puts together must follow from nothing but what it is given.
 */
export const perNetwork = <S>(of: (network: DerivedNetwork) => readonly Asked<S>[]): SubjectsOf<S> => ({ networks }) => networks.flatMap(of);
export const perNetworkSums = <S>(of: (sums: NetworkDesign) => readonly Asked<S>[]): SubjectsOf<S> => (_, { networks }) => networks.flatMap(of);
export const perEnclosureSums = <S>(of: (sums: EnclosureDesign) => readonly Asked<S>[]): SubjectsOf<S> => (_, { enclosures }) => enclosures.flatMap(of);
export const perSpace = <S>(of: (space: Space) => readonly Asked<S>[]): SubjectsOf<S> => ({ spaces }) => spaces.flatMap(of);
/** Each space with the nozzles that serve it, on any network. */
export const perServedSpace = <S>(of: (space: Space, nozzles: readonly DerivedNozzle[]) => readonly Asked<S>[]): SubjectsOf<S> => (derived) =>
  derived.spaces.flatMap((space) => of(space, nozzlesServing(space, derived)));
/** Everything on a level but pipe. */
export const perLevel = <S>(of: (level: DerivedLevel) => readonly Asked<S>[]): SubjectsOf<S> => ({ levels }) => levels.flatMap(of);
/** Each network with the level that it hangs on. */
export const perNetworkOnLevel = <S>(of: (network: DerivedNetwork, level: DerivedLevel) => readonly Asked<S>[]): SubjectsOf<S> => ({ networks, levels }) =>
  networks.flatMap((network) => {
    const level = levels.find((each) => each.level === network.level);
    return level ? of(network, level) : [];
  });
/** Asked anew at every change: only for what is quickly told of a whole plan. */
export const perPlan = <S>(of: SubjectsOf<S>): SubjectsOf<S> => of;

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

/** Every nozzle of the plan under its own name. */
export const nozzleSubjects = ({ nozzles }: Pick<Derived, 'nozzles'>) =>
  nozzles.map((nozzle) => ({ subject: byItself(nozzle), ref: nozzle.ref, name: nozzle.nozzle.name }));

/** Every network under its own name. */
export const networkSubjects = ({ networks }: Derived) =>
  networks.map((network) => ({ subject: network, ref: network.ref, name: network.network.name }));

/** Every space that holds or should hold nozzles. */
export const protectedSpaceSubjects = ({ spaces }: Derived) =>
  spaces.filter((space) => space.isProtected).map((space) => ({ subject: space, ref: space.enclosureRef, name: space.name }));

/** A space with the nozzles that serve it, on any network. */
export interface ServedSpace {
  readonly space: Space;
  readonly nozzles: readonly DerivedNozzle[];
}

/** Every space that holds or should hold nozzles, with those that it has. */
export const servedSpaceSubjects = (derived: Derived) =>
  protectedSpaceSubjects(derived).map(({ subject: space, ...named }) => ({ ...named, subject: { space, nozzles: nozzlesServing(space, derived) } satisfies ServedSpace }));

/** A nozzle with the way of the agent to it, which is missing while it hangs on no tree. */
export interface NozzlePath {
  readonly nozzle: DerivedNozzle;
  readonly network: DerivedNetwork;
  readonly path: PipePath | undefined;
}

/** Every nozzle with its path. */
export const pathSubjects = ({ networks }: Derived) =>
  networks.flatMap((network) =>
    network.nozzles.map((nozzle) => ({
      subject: { nozzle, network, path: network.paths.find((path) => path.nozzle === nozzle.nozzle.id) } satisfies NozzlePath,
      ref: nozzle.ref,
      name: nozzle.nozzle.name,
    })),
  );

/** Where a nozzle's finding shows. */
export const placeOfNozzle = ({ level }: NozzleSubject, at: PlanPoint3): Place => ({ level, at: [at], heights: [at] });

/** Where a path's finding shows: the places of its nodes. */
export function placeOfPath({ network, path }: NozzlePath): Place | undefined {
  const at = (path?.nodes ?? []).flatMap((id) => network.network.nodes[id]?.at ?? []);
  return at.length > 0 ? { level: network.level.id, at, heights: at } : undefined;
}

/** Nozzles that serve a space, on any network. */
export const nozzlesServing = (space: Space, { nozzles }: Derived): DerivedNozzle[] =>
  nozzles.filter((nozzle) => nozzle.space?.key === space.key);
