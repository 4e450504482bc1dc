import type { PlanPoint3 } from '../geometry/point.ts';
import { entryOf } from '../model/find-thing.ts';
import type { Plan, RefOf } from '../model/plan.ts';
import { command } from './command.ts';
import { networkOf, nodeIn, nozzleOf } from './lookup.ts';
import { setHeight } from './nozzle-drops.ts';
import { joinMoved, pipesAt, refuseShortPipes } from './pipe-joins.ts';
import { shiftNodes } from './pipe-columns.ts';
import { soundPoint3 } from './sound-value.ts';

/**
 * Moves a nozzle. On the plan its drop goes with it and the runs to it stretch, keeping their direction where the
 * elbow before can slide along; its height changes the length of the drop alone. A nozzle that hangs on no pipe
 * joins the pipe end that it is moved onto.
 * @param ref refused when the nozzle has gone since the drag began
 * @param to  new place of the orifice [m]; outside the enclosure is allowed, a rule reports it
 * Refuses a place where a pipe would have no length, or that has a nozzle already.
 */
export const moveNozzle = command(
  (plan: Plan, ref: RefOf<'nozzle'>, _to: PlanPoint3) => `Move nozzle ${entryOf(plan.networks, ref.network)?.nozzles[ref.id]?.name ?? ''}`.trim(),
  (draft, ref, to) => {
    const network = networkOf(draft, ref.network);
    const nozzle = nozzleOf(draft, ref);
    const place = soundPoint3(to);
    const { at } = nodeIn(network, nozzle.node);
    const isFree = pipesAt(network, nozzle.node).length === 0;
    shiftNodes(network, [nozzle.node], place.x - at.x, place.y - at.y);
    setHeight(draft, network, nozzle, place.z);
    if (isFree) refuseShortPipes(network, new Set([joinMoved(draft, network, nozzle.node)]));
  },
);
