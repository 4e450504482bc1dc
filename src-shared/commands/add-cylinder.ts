import type { PlanPoint } from '../geometry/point.ts';
import { type Ref, takeId } from '../model/plan.ts';
import { command } from './command.ts';
import { networkOnLevel, networksOn, newNetwork } from './new-network.ts';
import { nextName } from './next-name.ts';
import { soundAngle_rad, soundPoint } from './sound-value.ts';

/**
 * Places a wall-mounted cylinder.
 * @param networkId network that it feeds; null for the one network of the level that has no cylinder yet, or else a
 *                  new network with the plan's first unit profile
 * @param at        axis on the plan [m]
 * @param back_rad  direction from the cylinder to the wall behind it [rad]
 * Refuses a network that has gone or is on another level, and a plan without unit profile.
 */
export const addCylinder = command('Add cylinder', (draft, levelId: string, networkId: string | null, at: PlanPoint, back_rad: number): readonly Ref[] => {
  const bare = networksOn(draft, levelId).filter(({ cylinders }) => Object.keys(cylinders).length === 0);
  const chosen = networkId ?? (bare.length === 1 ? bare[0]?.id : undefined);
  const network = chosen === undefined ? newNetwork(draft, levelId) : networkOnLevel(draft, chosen, levelId);
  const id = takeId(draft, 'cylinder');
  network.cylinders[id] = { restraints_m: [], outlet_rad: null, hoseEnd: null, gauge: null, storage: null, exposedTo: null,
    id,
    name: nextName(draft, 'cylinder', 'C'),
    at: soundPoint(at),
    mounting: 'wall',
    back_rad: soundAngle_rad(back_rad),
    railHeight_m: null,
    anchors: null,
  };
  return [{ kind: 'cylinder', network: network.id, id }];
});
