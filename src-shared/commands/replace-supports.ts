import { type PlanPoint3, distance3_m } from '../geometry/point.ts';
import { heldPipe } from '../model/held-pipe.ts';
import { type RefOf, type Support, takeId } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { networkOf } from './lookup.ts';
import { soundPoint3 } from './sound-value.ts';

/** A support stands where another stood [m]. */
const SAME_SUPPORT_m = 0.01;

/**
 * Takes every support of a network away and puts these in their place. One that stands where another stood braces as
 * that one did.
 * Refuses a place where no pipe of the network runs.
 */
export const replaceSupports = command('Place pipe supports', (draft, ref: RefOf<'network'>, places: readonly { readonly at: PlanPoint3; readonly kind: Support['kind']; readonly capacity_N: number | null }[]) => {
  const network = networkOf(draft, ref.id);
  const stood = Object.values(network.supports);
  network.supports = {};
  for (const { at, kind, capacity_N } of places) {
    const place = soundPoint3(at);
    if (!heldPipe(network, place)) refuse('No pipe of this network runs where a support was to go.');
    const id = takeId(draft, 'support');
    const brace = stood.find((support) => distance3_m(support.at, place) <= SAME_SUPPORT_m)?.brace ?? 'none';
    network.supports[id] = { brace, id, at: place, kind, capacity_N };
  }
});
