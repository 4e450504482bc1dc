import type { PlanPoint } from '../geometry/point.ts';
import { type Ref, type RefOf, takeId } from '../model/plan.ts';
import { command } from './command.ts';
import { enclosureOf } from './lookup.ts';
import { nextName } from './next-name.ts';
import { soundRing, woundLeft } from './rings.ts';
import { soundSize_m } from './sound-value.ts';

/**
 * Draws a part of an enclosure's ceiling that has a height of its own.
 * @param ring     closed ring [m], either winding; only what lies inside the enclosure counts
 * @param height_m finished floor to ceiling there [m]
 * Refuses a ring that crosses itself or has no area, and a height that is not more than 0.
 */
export const addCeilingZone = command('Draw ceiling zone', (draft, ref: RefOf<'enclosure'>, ring: readonly PlanPoint[], height_m: number): readonly Ref[] => {
  const enclosure = enclosureOf(draft, ref.level, ref.id);
  const outline = woundLeft(soundRing(ring, 'The ceiling zone'));
  const id = takeId(draft, 'zone');
  enclosure.ceilingZones[id] = { id, name: nextName(draft, 'ceiling-zone', 'Zone '), outline, height_m: soundSize_m('Height', height_m) };
  return [{ kind: 'ceiling-zone', level: ref.level, enclosure: ref.id, id }];
});
