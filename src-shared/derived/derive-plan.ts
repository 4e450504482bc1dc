import { type Level, type Plan, emptyLevel } from '../model/plan.ts';
import type { Derived, DerivedLevel, DerivedNetwork } from './derived.ts';
import { derivedNetworkOf } from './network.ts';
import { remembered, rememberedPart } from './remember.ts';
import { solidsOf } from './solids.ts';
import { spaceIndexOf } from './space-index.ts';
import { spacesOf } from './spaces.ts';

/** Stands for a level that a damaged plan has lost, so that the pipe on it still shows. */
const lostLevel = (id: string): Level => emptyLevel(id, 'Lost level', 0);

/** What stands on a level, whatever pipe runs through it. */
const derivedLevelOf = rememberedPart((level: Level): DerivedLevel => {
  const index = solidsOf(level.obstructions, level.id);
  return { level, solids: index.solids, spaces: spacesOf(level.enclosures, level, index) };
});

/** The same of every level. */
const levelsOf = rememberedPart((levels: Plan['levels']) => {
  const each = Object.values(levels).map((level) => derivedLevelOf(level));
  return {
    levels: each,
    byId: new Map(each.map((one) => [one.level.id, one])),
    solids: each.flatMap(({ solids }) => solids),
    spaces: each.flatMap(({ spaces }) => spaces),
  };
});

/** Put together when it is read: a step of a drag seldom does. */
const nozzlesOf = remembered((networks: Derived['networks']) => networks.flatMap(({ nozzles }) => nozzles));

/** The last of the plans with the same levels: pipe is dragged far more often than a room is drawn. */
const lastNetworks = new WeakMap<Derived['levels'], Pick<Derived, 'plan' | 'networks'>>();

/** Every network of a plan; those of the last plan that are the same are the very same objects. */
function networksOf(plan: Plan, levels: readonly DerivedLevel[], byId: ReadonlyMap<string, DerivedLevel>): readonly DerivedNetwork[] {
  const last = lastNetworks.get(levels);
  const before = last?.plan.profiles === plan.profiles ? last : undefined;
  const networks = Object.values(plan.networks).map((network, i) => {
    const known = before?.networks[i];
    if (known?.network === network && Object.isFrozen(network)) return known;
    const on = byId.get(network.level) ?? { level: lostLevel(network.level), spaces: [] };
    return derivedNetworkOf(network, on.level, plan.profiles[network.profile], spaceIndexOf(on.spaces));
  });
  lastNetworks.set(levels, { plan, networks });
  return networks;
}

/**
 * Derives everything that follows from a plan without any limit or judgement.
 * What two plans share is derived once and answers with the very same objects, so that a drag derives only the network
 * or enclosure that it touches.
 */
export const derivePlan = rememberedPart((plan: Plan): Derived => {
  const { levels, byId, solids, spaces } = levelsOf(plan.levels);
  const networks = networksOf(plan, levels, byId);
  return {
    plan,
    levels,
    spaces,
    solids,
    networks,
    get nozzles() {
      return nozzlesOf(networks);
    },
  };
});
