import type { PlanPoint3 } from '../geometry/point.ts';
import type { RefOf } from '../model/plan.ts';
import { command } from './command.ts';
import { networkOf, nodeOf } from './lookup.ts';
import { joinMoved, refuseShortPipes } from './pipe-joins.ts';
import { shiftNodes } from './pipe-columns.ts';
import { soundPoint3 } from './sound-value.ts';

/**
 * Moves the place where pipes meet. On the plan, whatever stands upright over or under it goes with it; its height
 * changes alone. It joins what it is moved onto: another node, or a pipe, which is cut there.
 * Refuses a place where a pipe would have no length or where a nozzle would meet another.
 */
export const movePipeNode = command('Move pipe end', (draft, ref: RefOf<'node'>, to: PlanPoint3) => {
  const network = networkOf(draft, ref.network);
  const node = nodeOf(draft, ref);
  const place = soundPoint3(to);
  const rise_m = place.z - node.at.z;
  if (rise_m !== 0) node.at = { x: node.at.x, y: node.at.y, z: place.z };
  shiftNodes(network, [ref.id], place.x - node.at.x, place.y - node.at.y);
  const left = joinMoved(draft, network, ref.id);
  refuseShortPipes(network, new Set([left]));
});
