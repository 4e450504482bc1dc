import type { Level, Plan } from '../model/plan.ts';
import type { Derived } from './derived.ts';
import { derivedNetworkOf } from './network.ts';
import { rememberedPart } from './remember.ts';
import { solidsOf } from './solids.ts';
import { spaceIndexOf } from './space-index.ts';
import { spacesOf } from './spaces.ts';

/** Stands for a level that a damaged plan has lost, so that the pipe on it still shows. */
const lostLevel = (id: string): Level => ({
  id,
  name: 'Lost level',
  floorElevation_m: 0,
  underlays: {},
  enclosures: {},
  obstructions: {},
  dimensions: {},
  notes: {},
});

/**
 * Derives everything that follows from a plan without any limit or judgement.
 * What two plans share is derived once and answers with the very same objects, so that a drag derives only the network
 * or enclosure that it touches.
 */
export const derivePlan = rememberedPart((plan: Plan): Derived => {
  const levels = Object.values(plan.levels).map((level) => {
    const index = solidsOf(level.obstructions, level.id);
    return { level, solids: index.solids, spaces: spacesOf(level.enclosures, level, index) };
  });
  const byId = new Map(levels.map((each) => [each.level.id, each]));
  const networks = Object.values(plan.networks).map((network) => {
    const { level, spaces } = byId.get(network.level) ?? { level: lostLevel(network.level), spaces: [] };
    return derivedNetworkOf(network, level, plan.profiles[network.profile], spaceIndexOf(spaces));
  });
  return {
    plan,
    spaces: levels.flatMap(({ spaces }) => spaces),
    solids: levels.flatMap(({ solids }) => solids),
    networks,
    nozzles: networks.flatMap(({ nozzles }) => nozzles),
  };
});
