import { type HoldPointTick, tickHoldPoint } from '../commands/tick-hold-point.ts';
import type { Command } from '../commands/command.ts';
import type { Evaluation } from '../evaluate.ts';
import { armingOrder } from './arming-order.ts';

/**
 * Ticks a hold point, once every earlier one and every reading that it stands on holds.
 * Refuses with what is missing, and why it matters.
 */
export function tickInOrder(evaluation: Pick<Evaluation, 'derived' | 'design'>, id: string, tick: HoldPointTick): Command {
  const state = armingOrder(evaluation).find(({ point }) => point.id === id);
  return tickHoldPoint(id, tick, state ? state.lacks : []);
}
