import type { PlanPoint3 } from '../geometry/point.ts';
import type { RefOf } from '../model/plan.ts';
import { command } from './command.ts';
import { networkOf, nodeOf } from './lookup.ts';
import { refuseShortPipes } from './pipe-joins.ts';
import { soundPoint3 } from './sound-value.ts';

/**
 * Puts a place where pipes meet elsewhere, alone: nothing over, under or beside it goes along.
 * @param to place in space [m]
 * Refuses a place where a pipe would have no length.
 */
export const placeNode = command('Move pipe end', (draft, ref: RefOf<'node'>, to: PlanPoint3) => {
  nodeOf(draft, ref).at = soundPoint3(to);
  refuseShortPipes(networkOf(draft, ref.network), new Set([ref.id]));
});
