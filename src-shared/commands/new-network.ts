import type { Draft } from 'immer';
import type { AssemblyPart, Network, Plan } from '../model/plan.ts';
import { takeId } from '../model/plan.ts';
import { asItStood } from './as-it-stood.ts';
import { refuse } from './command.ts';
import { levelOf, networkOf } from './lookup.ts';
import { nextName } from './next-name.ts';

/**
 * Discharge assembly of a unit whose manual gives a regulator's set pressure: hose, check valve and regulator, in flow
 * order, their lengths still to be measured. A unit without one gets no parts.
 */
function usualAssembly(draft: Draft<Plan>, profile: string): AssemblyPart[] {
  if (!draft.profiles[profile]?.limits.regulatorPressure_Pa) return [];
  const kinds = [['hose', 'Discharge hose'], ['check-valve', 'Check valve'], ['regulator', 'Pressure regulator']] as const;
  return kinds.map(([kind, name]) => ({ id: takeId(draft, 'part'), kind, name, length_m: 0, setPressure_Pa: null, arrowDownstream: true }));
}

/** Makes an empty network on a level, with the plan's first unit profile. Refuses when the plan has no profile. */
export function newNetwork(draft: Draft<Plan>, levelId: string): Network {
  levelOf(draft, levelId);
  const profile = Object.keys(draft.profiles)[0] ?? refuse('The plan has no unit profile. Load or make one first.');
  const id = takeId(draft, 'network');
  draft.networks[id] = { manifold: null, installation: { bonding: 'unknown', marking: '', finish: '' },
    id,
    name: nextName(draft, 'network', 'Network '),
    level: levelId,
    profile,
    source: null,
    cylinders: {},
    assembly: usualAssembly(draft, profile),
    nodes: {},
    pipes: {},
    nozzles: {},
    supports: {},
    release: null,
  };
  return networkOf(draft, id);
}

/** The networks of a level as they stood before the command, for searching. */
export const networksOn = (draft: Draft<Plan>, levelId: string): readonly Network[] => Object.values(asItStood(draft).networks).filter(({ level }) => level === levelId);

/** The named network; refuses when it has gone or is on another level. */
export function networkOnLevel(draft: Draft<Plan>, networkId: string, levelId: string): Network {
  const network = networkOf(draft, networkId);
  return network.level === levelId ? network : refuse(`“${network.name}” is on another level. Choose a network of this level.`);
}

/** Takes a network away that holds nothing any more. */
export function clearNetwork(draft: Draft<Plan>, network: Network): void {
  const isEmpty = [network.cylinders, network.nodes, network.pipes, network.nozzles].every((part) => Object.keys(part).length === 0);
  if (isEmpty) delete draft.networks[network.id];
}
