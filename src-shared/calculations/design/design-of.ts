import type { Derived, DerivedNetwork, Space } from '../../derived/derived.ts';
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

/** The protected spaces of each enclosure, in the order of the plan; the very same list while its spaces are the same. */
function protectedSpaces({ spaces }: Derived): Protected[] {
  const byRoom = new Map<string, [Space, ...Space[]]>();
  for (const space of spaces) {
    if (!space.isProtected) continue;
    const key = `${space.enclosureRef.level}/${space.enclosureRef.id}`;
    const known = byRoom.get(key);
    if (known) known.push(space);
    else byRoom.set(key, [space]);
  }
  return [...byRoom.values()].map((found) => {
    const last = lastSpaces.get(found[0]);
    const list = last && sameList(last, found) === last ? last : found;
    lastSpaces.set(found[0], list);
    return list;
  });
}

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

/**
 * Works out every sum of a plan, or says of each what is missing. What a change does not touch is the very same object,
 * and so is all of it for the same plan and source.
 * @param dischargeOf  where the transients come from
 */
export const designOf = remembered((derived: Derived, dischargeOf: DischargeSource): Design => {
  const { networks, levels } = derived;
  const { basis } = derived.plan;
  const spacesOn = new Map(levels.map(({ level, spaces }) => [level, spaces]));
  const made = networks.map((network) => networkMade(network, spacesOn.get(network.level) ?? NO_SPACES, basis, dischargeOf));
  const serving = servingByEnclosure(networks);
  const pick = <T>(all: readonly T[], places: readonly number[]): T[] => places.flatMap((i) => all[i] ?? []);
  return {
    enclosures: protectedSpaces(derived).map((spaces) => {
      const places = serving.get(refKey(spaces[0].enclosureRef)) ?? [];
      return enclosureMade(spaces, basis, filledBy(spaces, pick(networks, places), pick(made, places).map(({ design }) => design.discharge)));
    }),
    networks: made.map(({ design }) => design),
    asked: made.flatMap(({ asked }) => asked),
  };
});
