import type { PlanPoint } from '../geometry/point.ts';
import type { RefOf } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { enclosureOf } from './lookup.ts';
import { cornersFor, reshape, soundRing, woundLeft } from './rings.ts';

const MOST = 500;

/**
 * Cuts a shaft or column out of an enclosure.
 * @param ring closed ring [m], either winding, last corner not repeated; it may touch the walls
 * Refuses a ring that reaches past the walls, overlaps another shaft, crosses itself, or has no area.
 */
export const addHole = command('Draw shaft', (draft, ref: RefOf<'enclosure'>, ring: readonly PlanPoint[]) => {
  const enclosure = enclosureOf(draft, ref.level, ref.id);
  if (enclosure.holes.length >= MOST) refuse(`An enclosure takes ${MOST} shafts at most.`);
  const corners = cornersFor(draft, woundLeft(soundRing(ring, 'The shaft')).reverse());
  reshape(enclosure, () => {
    enclosure.holes.push(corners);
  });
});
