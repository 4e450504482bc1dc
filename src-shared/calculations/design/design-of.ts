import type { Derived, DerivedNetwork, Space } from '../../derived/derived.ts';
import { placesThatDiffer } from '../../derived/places-that-differ.ts';
import { keeping, remembered, rememberedPart, sameList } from '../../derived/remember.ts';
import type { BasisOfDesign } from '../../model/basis-of-design.ts';
import { refKey } from '../../model/plan.ts';
import type { AskedDischarge, DischargeSource } from '../discharge/discharge-source.ts';
import { agentOf as makeAgent, cylindersNeededFor, minimumOf } from './agent.ts';
import { batteryOf as makeBattery } from './battery.ts';
import type { Design, DischargeSums, EnclosureDesign, NetworkDesign } from './design.ts';
import { dischargeOfNetwork, sharesOf as makeShares } from './discharge.ts';
import { fillOf } from './fill.ts';
import { fillingOf } from './filling.ts';
import { flowFrameOf as makeFlowFrame } from './flow-input.ts';
import { holdOf as makeHold, leaksOf as makeLeaks } from './hold.ts';
import { mountsOf as makeMounts } from './mounts.ts';
import { orificesOf } from './orifices.ts';
import { peopleOf } from './people.ts';
import { conduitOf as makeConduit, releaseOf as makeRelease } from './release.ts';
import { supervisionOf } from './supervision.ts';
import { servedBy, supplyOf } from './supply.ts';
import { supportsOf as makeSupports } from './supports.ts';
import { thrustsOf as makeThrusts } from './thrusts.ts';
import { turnThrustsOf as makeTurnThrusts } from './turn-thrusts.ts';
import { ventOf, weakestOf } from './vent.ts';
import { volumeOf as makeVolume } from './volume.ts';
import type { Worked } from './worked.ts';
import { zonesOf as makeZones } from './zones.ts';

// A drag asks for every sum at every frame: what does not follow from the thing that moves is kept.
const flowFrameOf = remembered(makeFlowFrame);
const supportsOf = remembered(makeSupports);
const sharesOf = remembered(makeShares);
const thrustsOf = remembered(makeThrusts);
const turnThrustsOf = remembered(makeTurnThrusts);
const zonesOf = remembered(makeZones);
const mountsOf = remembered(makeMounts);
const releaseOf = rememberedPart(makeRelease);
const conduitOf = rememberedPart(makeConduit);
const batteryOf = rememberedPart(makeBattery);
const volumeOf = remembered(makeVolume);
const agentOf = remembered(makeAgent);
const leaksOf = rememberedPart(makeLeaks);
const holdOf = remembered(makeHold);
/** Deep enough for rows within a group of sums and the references in them. */
const DEPTH = 6;
// Lines and findings of a thing are kept by its design: equal sums are the very same object.
const keptNetwork = keeping<DerivedNetwork, NetworkDesign>(DEPTH);
const keptEnclosure = keeping<Space, EnclosureDesign>(DEPTH);

function networkDesign(derived: DerivedNetwork, spaces: readonly Space[], basis: BasisOfDesign, dischargeOf: DischargeSource): NetworkDesign {
  const { ref, network, profile } = derived;
  const frame = flowFrameOf(derived, basis);
  const discharge = dischargeOfNetwork(derived, frame, dischargeOf);
  const supports = supportsOf(derived, basis);
  return keptNetwork(derived, {
    ref,
    name: network.name,
    network,
    profile,
    discharge,
    orifices: orificesOf(derived, frame, dischargeOf),
    shares: sharesOf(derived, discharge),
    zones: zonesOf(derived, discharge, basis),
    supervision: supervisionOf(profile),
    supports,
    thrusts: thrustsOf(derived, discharge, supports),
    turnThrusts: turnThrustsOf(derived, discharge),
    mounts: mountsOf(derived, spaces, basis),
    release: releaseOf(network, profile),
    conduit: conduitOf(network),
    battery: batteryOf(network, basis),
  });
}

/** A network worked out, and what it follows from. */
interface MadeNetwork {
  readonly design: NetworkDesign;
  readonly spaces: readonly Space[];
  readonly basis: BasisOfDesign;
  readonly source: DischargeSource;
  readonly asked: readonly AskedDischarge[];
}

const lastNetwork = new WeakMap<DerivedNetwork, MadeNetwork>();

/** A network worked out: as it was while it, the rooms of its level, the basis of design and the discharges that it asked for are the same. */
function networkMade(derived: DerivedNetwork, spaces: readonly Space[], basis: BasisOfDesign, source: DischargeSource): MadeNetwork {
  const last = lastNetwork.get(derived);
  if (last && last.basis === basis && last.spaces === spaces) {
    if (last.source === source) return last;
    if (last.asked.every(({ network, input, answer }) => source(network, input) === answer)) {
      const same = { ...last, source };
      lastNetwork.set(derived, same);
      return same;
    }
  }
  const asked: AskedDischarge[] = [];
  const design = networkDesign(derived, spaces, basis, (network, input) => {
    const answer = source(network, input);
    asked.push({ network, input, answer });
    return answer;
  });
  const made = { design, spaces, basis, source, asked };
  lastNetwork.set(derived, made);
  return made;
}

/** The protected spaces of one enclosure: its room first. */
type Protected = readonly [room: Space, ...voids: Space[]];

const lastSpaces = new WeakMap<Space, Protected>();

/** The protected spaces of each enclosure by its key, in the order of the plan; the very same list while its spaces are the same. */
const protectedSpaces = remembered((spaces: Derived['spaces']): ReadonlyMap<string, Protected> => {
  const byRoom = new Map<string, [Space, ...Space[]]>();
  for (const space of spaces) {
    if (!space.isProtected) continue;
    const key = refKey(space.enclosureRef);
    const known = byRoom.get(key);
    if (known) known.push(space);
    else byRoom.set(key, [space]);
  }
  return new Map(
    [...byRoom].map(([key, found]) => {
      const last = lastSpaces.get(found[0]);
      const list = last && sameList(last, found) === last ? last : found;
      lastSpaces.set(found[0], list);
      return [key, list];
    }),
  );
});

/** What the sums of an enclosure follow from: its spaces, the networks that blow into it and their discharges, and the basis of design. */
interface Filled {
  readonly serving: readonly DerivedNetwork[];
  readonly discharges: readonly Worked<DischargeSums>[];
}

function enclosureDesign(spaces: Protected, basis: BasisOfDesign, { serving, discharges }: Filled): EnclosureDesign {
  const { enclosure, enclosureRef: ref, level } = spaces[0];
  const dischargeOf = (network: DerivedNetwork): Worked<DischargeSums> | undefined => discharges[serving.indexOf(network)];
  const volume = volumeOf(spaces);
  const supply = supplyOf(ref, serving, dischargeOf);
  const agent = agentOf(enclosure, volume, basis);
  const weakest = weakestOf(ref, enclosure, { levels: { [level.id]: level }, networks: {} });
  const leaks = leaksOf(enclosure, basis);
  return keptEnclosure(spaces[0], {
    ref,
    name: enclosure.name,
    enclosure,
    isServed: serving.length > 0,
    volume,
    supply,
    agent,
    cylindersNeeded: cylindersNeededFor(agent, supply),
    minimum: minimumOf(enclosure, basis),
    people: peopleOf(agent, supply, basis),
    fill: fillOf(enclosure, agent, supply, basis),
    weakest,
    vent: ventOf(ref, enclosure, agent, supply, weakest, leaks, serving, dischargeOf, basis),
    leaks,
    hold: holdOf(enclosure, spaces, agent, leaks, basis),
    filling: fillingOf(ref, enclosure, spaces, serving, dischargeOf, basis),
  });
}

const enclosureMade = remembered(enclosureDesign);
const lastFilled = new WeakMap<Protected, Filled>();

/** The very same object while the networks that blow into an enclosure and their discharges are the same. */
function filledBy(spaces: Protected, serving: readonly DerivedNetwork[], discharges: readonly Worked<DischargeSums>[]): Filled {
  const last = lastFilled.get(spaces);
  if (last && sameList(last.serving, serving) === last.serving && sameList(last.discharges, discharges) === last.discharges) return last;
  const filled = { serving, discharges };
  lastFilled.set(spaces, filled);
  return filled;
}

/** The networks that blow into each enclosure, by its key. */
function servingByEnclosure(networks: readonly DerivedNetwork[]): ReadonlyMap<string, number[]> {
  const serving = new Map<string, number[]>();
  for (const [i, network] of networks.entries()) {
    for (const key of servedBy(network)) {
      const known = serving.get(key);
      if (known) known.push(i);
      else serving.set(key, [i]);
    }
  }
  return serving;
}

const NO_SPACES: readonly Space[] = [];

/** Every sum of a plan, and what was put together for it. */
interface MadeDesign {
  readonly derived: Derived;
  readonly source: DischargeSource;
  readonly made: readonly MadeNetwork[];
  readonly serving: ReadonlyMap<string, readonly number[]>;
  readonly enclosures: ReadonlyMap<string, EnclosureDesign>;
}

/** The last of the plans with the same levels: pipe is dragged far more often than a room is drawn. */
const lastDesign = new WeakMap<Derived['levels'], MadeDesign>();

const NO_KEYS: ReadonlySet<string> = new Set();
const servedIn = (networks: readonly DerivedNetwork[], i: number): ReadonlySet<string> => {
  const network = networks[i];
  return network ? servedBy(network) : NO_KEYS;
};

const isSameSet = (one: ReadonlySet<string>, other: ReadonlySet<string>): boolean => one.size === other.size && [...one].every((each) => other.has(each));

/** The places of the networks that are others than in a design, when all else is the same; undefined: work out all. */
function networksOtherThan({ derived: before, source }: MadeDesign, { plan, networks }: Derived, dischargeOf: DischargeSource): readonly number[] | undefined {
  if (source !== dischargeOf || before.plan.basis !== plan.basis || before.networks.length !== networks.length) return undefined;
  const places = placesThatDiffer(networks, before.networks);
  return places.every((i) => isSameSet(servedIn(networks, i), servedIn(before.networks, i))) ? places : undefined;
}

function designMade(derived: Derived, dischargeOf: DischargeSource, last: MadeDesign | undefined): MadeDesign {
  const { networks, levels, plan: { basis } } = derived;
  const changed = last && networksOtherThan(last, derived, dischargeOf);
  const spacesOn = new Map(levels.map(({ level, spaces }) => [level, spaces]));
  const makeNetwork = (network: DerivedNetwork) => networkMade(network, spacesOn.get(network.level) ?? NO_SPACES, basis, dischargeOf);
  const before = changed && last;
  const made = before ? networks.map((network, i) => (network === before.derived.networks[i] && before.made[i]) || makeNetwork(network)) : networks.map(makeNetwork);
  const serving = before?.serving ?? servingByEnclosure(networks);
  const rooms = protectedSpaces(derived.spaces);
  const enclosures = new Map(before?.enclosures);
  const touched = before ? new Set(changed.flatMap((i) => [...servedIn(networks, i)])) : rooms.keys();
  for (const key of touched) {
    const spaces = rooms.get(key);
    if (!spaces) continue;
    const places = serving.get(key) ?? [];
    const pick = <T>(all: readonly T[]): T[] => places.flatMap((i) => all[i] ?? []);
    enclosures.set(key, enclosureMade(spaces, basis, filledBy(spaces, pick(networks), pick(made).map(({ design }) => design.discharge))));
  }
  return { derived, source: dischargeOf, made, serving, enclosures };
}

/**
 * Works out every sum of a plan, or says of each what is missing. What a change does not touch is the very same object,
 * and so is all of it for the same plan and source.
 * @param dischargeOf  where the transients come from
 */
export const designOf = remembered((derived: Derived, dischargeOf: DischargeSource): Design => {
  const now = designMade(derived, dischargeOf, lastDesign.get(derived.levels));
  lastDesign.set(derived.levels, now);
  const { made, enclosures } = now;
  return { enclosures: [...enclosures.values()], networks: made.map(({ design }) => design), asked: made.flatMap(({ asked }) => asked) };
});
