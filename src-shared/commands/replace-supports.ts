import type { PlanPoint3 } from '../geometry/point.ts';
import { heldPipe } from '../model/held-pipe.ts';
import { type RefOf, type Support, takeId } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { networkOf } from './lookup.ts';
import { soundPoint3 } from './sound-value.ts';

/**
 * Takes every support of a network away and puts these in their place.
 * Refuses a place where no pipe of the network runs.
 */
export const replaceSupports = command('Place pipe supports', (draft, ref: RefOf<'network'>, places: readonly { readonly at: PlanPoint3; readonly kind: Support['kind']; readonly capacity_N: number | null }[]) => {
  const network = networkOf(draft, ref.id);
  network.supports = {};
  for (const { at, kind, capacity_N } of places) {
    const place = soundPoint3(at);
    if (!heldPipe(network, place)) refuse('No pipe of this network runs where a support was to go.');
    const id = takeId(draft, 'support');
    network.supports[id] = { brace: 'none', id, at: place, kind, capacity_N };
  }
});
