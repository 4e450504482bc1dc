import type { PlanPoint3 } from '../geometry/point.ts';
import { heldPipe } from '../model/held-pipe.ts';
import { type Ref, type Support, takeId } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { networkOf } from './lookup.ts';
import { soundPoint3 } from './sound-value.ts';

/** Puts a support on a pipe of a network; what it bears is not known yet. Refuses a place where no pipe of it runs. */
export const addSupport = command('Add pipe support', (draft, networkId: string, at: PlanPoint3, kind: Support['kind']): readonly Ref[] => {
  const network = networkOf(draft, networkId);
  const place = soundPoint3(at);
  if (!heldPipe(network, place)) refuse('No pipe of this network runs here. Choose a place on its pipe.');
  const id = takeId(draft, 'support');
  network.supports[id] = { brace: 'none', id, at: place, kind, capacity_N: null };
  return [{ kind: 'support', network: networkId, id }];
});
