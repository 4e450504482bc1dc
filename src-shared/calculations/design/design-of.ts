import type { Derived, DerivedNetwork, Space } from '../../derived/derived.ts';
import { keeping, remembered, rememberedPart, sameList } from '../../derived/remember.ts';
import type { DischargeSource } from '../discharge/discharge-source.ts';
import { agentOf as makeAgent, cylindersNeededFor, minimumOf } from './agent.ts';
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
import { supplyOf } from './supply.ts';
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
const volumeOf = remembered(makeVolume);
const agentOf = remembered(makeAgent);
const leaksOf = rememberedPart(makeLeaks);
const holdOf = remembered(makeHold);
/** Deep enough for rows within a group of sums and the references in them. */
const DEPTH = 6;
// Lines and findings of a thing are kept by its design: equal sums are the very same object.
const keptNetwork = keeping<DerivedNetwork, NetworkDesign>(DEPTH);
const keptEnclosure = keeping<Space, EnclosureDesign>(DEPTH);

function networkDesign(derived: DerivedNetwork, { plan, spaces }: Derived, dischargeOf: DischargeSource): NetworkDesign {
  const { basis } = plan;
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
  });
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

function enclosureDesign(spaces: Protected, { plan, networks }: Derived, dischargeOf: (network: DerivedNetwork) => Worked<DischargeSums> | undefined): EnclosureDesign {
  const { basis } = plan;
  const { enclosure, enclosureRef: ref } = spaces[0];
  const volume = volumeOf(spaces);
  const supply = supplyOf(ref, networks, dischargeOf);
  const agent = agentOf(enclosure, volume, basis);
  const weakest = weakestOf(ref, enclosure, plan);
  const leaks = leaksOf(enclosure, basis);
  return keptEnclosure(spaces[0], {
    ref,
    name: enclosure.name,
    enclosure,
    volume,
    supply,
    agent,
    cylindersNeeded: cylindersNeededFor(agent, supply),
    minimum: minimumOf(enclosure, basis),
    people: peopleOf(agent, supply, basis),
    fill: fillOf(enclosure, agent, supply, basis),
    weakest,
    vent: ventOf(ref, enclosure, agent, supply, weakest, leaks, networks, dischargeOf, basis),
    leaks,
    hold: holdOf(enclosure, spaces, agent, leaks, basis),
    filling: fillingOf(ref, enclosure, spaces, networks, dischargeOf, basis),
  });
}

/**
 * Works out every sum of a plan, or says of each what is missing.
 * @param dischargeOf  where the transients come from
 */
export function designOf(derived: Derived, dischargeOf: DischargeSource): Design {
  const networks = derived.networks.map((network) => networkDesign(network, derived, dischargeOf));
  const discharges = new Map(derived.networks.map((network, i) => [network, networks[i]?.discharge]));
  return {
    enclosures: protectedSpaces(derived).map((spaces) => enclosureDesign(spaces, derived, (network) => discharges.get(network))),
    networks,
  };
}
