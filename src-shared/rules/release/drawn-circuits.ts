import type { DerivedNetwork } from '../../derived/derived.ts';
import type { Release } from '../../model/plan.ts';
import type { Place } from '../finding.ts';
import type { Asked } from '../rule.ts';
import { perNetwork } from '../subjects.ts';

/** A releasing circuit as it is drawn up, and where its cylinders stand. */
export interface DrawnCircuit {
  readonly release: Release;
  readonly place: Place | undefined;
}

function drawnCircuit({ ref, network, level }: DerivedNetwork): Asked<DrawnCircuit>[] {
  const { release, name } = network;
  if (!release) return [];
  const at = Object.values(network.cylinders).map((cylinder) => cylinder.at);
  return [{ subject: { release, place: at.length > 0 ? { level: level.id, at } : undefined }, ref, name }];
}

/** Every releasing circuit that is drawn up, under the name of its network; L1 says where one is missing. */
export const drawnCircuitSubjects = perNetwork(drawnCircuit);
