import type { RefOf } from '../model/plan.ts';
import { command } from './command.ts';
import { networkOf, nodeIn, nodeOf } from './lookup.ts';
import { asItStands, joinMoved, nozzleAt, pipesAt } from './pipe-joins.ts';
import { type Shift, downstreamOf, stretchOf } from './pipe-stretch.ts';
import { JOIN_m, soundPoint3 } from './sound-value.ts';

/**
 * Moves a place where pipes meet, and keeps every pipe straight and in its direction: right angles stay right angles.
 * `stretch`: neighbours become longer or shorter, runs beside them shift as far as they must. `move`: all that follows
 * toward the nozzles goes along as it is. An open end joins what it is moved onto.
 * @param to place in space [m]
 * Refuses where the pipe would have to leave the cylinders, turn back on itself, lie askew, or lose its length.
 */
export const stretchPipes = command(
  (_plan, _ref: RefOf<'node'>, _to: { x: number; y: number; z: number }, how: 'stretch' | 'move') => (how === 'move' ? 'Move pipe with all that follows' : 'Stretch pipe'),
  (draft, ref, to, how) => {
    const network = networkOf(draft, ref.network);
    const { at } = nodeOf(draft, ref);
    const place = soundPoint3(to);
    const shift: Shift = { x: place.x - at.x, y: place.y - at.y, z: place.z - at.z };
    const still = asItStands(network);
    const moved = how === 'move' ? downstreamOf(still, ref.id) : new Set([ref.id]);
    for (const [id, by] of stretchOf(still, moved, shift, JOIN_m)) {
      const node = nodeIn(network, id);
      node.at = soundPoint3({ x: node.at.x + by.x, y: node.at.y + by.y, z: node.at.z + by.z });
    }
    const isOpen = network.source !== ref.id && !nozzleAt(network, ref.id) && pipesAt(network, ref.id).length <= 1;
    if (isOpen) joinMoved(draft, network, ref.id);
  },
);
