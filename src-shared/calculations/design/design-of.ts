import type { Derived, DerivedNetwork, Space } from '../../derived/derived.ts';
import type { RefOf } from '../../model/plan.ts';
import type { DischargeSource } from '../discharge/discharge-source.ts';
import { agentOf, cylindersNeededFor, minimumOf } from './agent.ts';
import type { Design, DischargeSums, EnclosureDesign, NetworkDesign } from './design.ts';
import { dischargeOfNetwork, sharesOf } from './discharge.ts';
import { fillOf } from './fill.ts';
import { fillingOf } from './filling.ts';
import { remembered } from '../../derived/remember.ts';
import { flowFrameOf as makeFlowFrame } from './flow-input.ts';
import { holdOf, leaksOf } from './hold.ts';
import { mountsOf } from './mounts.ts';
import { orificesOf } from './orifices.ts';
import { peopleOf } from './people.ts';
import { conduitOf, releaseOf } from './release.ts';
import { supervisionOf } from './supervision.ts';
import { supplyOf } from './supply.ts';
import { supportsOf as makeSupports } from './supports.ts';
import { thrustsOf } from './thrusts.ts';
import { ventOf, weakestOf } from './vent.ts';
import { volumeOf } from './volume.ts';
import type { Worked } from './worked.ts';
import { zonesOf } from './zones.ts';

// What follows from one derived network alone is worked out once for it.
const flowFrameOf = remembered(makeFlowFrame);
const supportsOf = remembered(makeSupports);

function networkDesign(derived: DerivedNetwork, { plan, spaces }: Derived, dischargeOf: DischargeSource): NetworkDesign {
  const { basis } = plan;
  const { ref, network, profile } = derived;
  const frame = flowFrameOf(derived, basis);
  const discharge = dischargeOfNetwork(derived, frame, dischargeOf);
  const supports = supportsOf(derived, basis);
  return {
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
    mounts: mountsOf(derived, spaces, basis),
    release: releaseOf(network, profile),
    conduit: conduitOf(network),
  };
}

function enclosureDesign(ref: RefOf<'enclosure'>, spaces: readonly Space[], derived: Derived, discharges: ReadonlyMap<DerivedNetwork, Worked<DischargeSums>>): EnclosureDesign | undefined {
  const { plan, networks } = derived;
  const { basis } = plan;
  const enclosure = spaces[0]?.enclosure;
  if (!enclosure) return undefined;
  const dischargeOf = (network: DerivedNetwork): Worked<DischargeSums> | undefined => discharges.get(network);
  const volume = volumeOf(spaces);
  const supply = supplyOf(ref, networks, dischargeOf);
  const agent = agentOf(enclosure, volume, basis);
  const weakest = weakestOf(ref, enclosure, plan);
  const leaks = leaksOf(enclosure, basis);
  return {
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
  };
}

/**
 * Works out every sum of a plan, or says of each what is missing.
 * @param dischargeOf  where the transients come from
 */
export function designOf(derived: Derived, dischargeOf: DischargeSource): Design {
  const networks = derived.networks.map((network) => ({ network, design: networkDesign(network, derived, dischargeOf) }));
  const discharges = new Map(networks.map(({ network, design }) => [network, design.discharge]));
  const byEnclosure = new Map<string, { ref: RefOf<'enclosure'>; spaces: Space[] }>();
  for (const space of derived.spaces) {
    if (!space.isProtected) continue;
    const key = `${space.enclosureRef.level}/${space.enclosureRef.id}`;
    const known = byEnclosure.get(key);
    if (known) known.spaces.push(space);
    else byEnclosure.set(key, { ref: space.enclosureRef, spaces: [space] });
  }
  return {
    enclosures: [...byEnclosure.values()].flatMap(({ ref, spaces }) => enclosureDesign(ref, spaces, derived, discharges) ?? []),
    networks: networks.map(({ design }) => design),
  };
}
