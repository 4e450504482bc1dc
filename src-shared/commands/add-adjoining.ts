import type { PlanPoint } from '../geometry/point.ts';
import { type Adjoining, type Ref, takeId } from '../model/plan.ts';
import { command } from './command.ts';
import { levelOf } from './lookup.ts';
import { nextAdjoiningName } from './next-name.ts';
import { soundRing, woundLeft } from './rings.ts';

/**
 * Draws a space beside, under or over the enclosures. Its floor begins level with the finished floor, and nothing is
 * known yet of gas that drifts into it.
 * @param outline closed ring [m], either winding
 * Refuses an outline that crosses itself or has no area.
 */
export const addAdjoining = command('Draw adjoining space', (draft, levelId: string, outline: readonly PlanPoint[], kind: Adjoining['kind']): readonly Ref[] => {
  const level = levelOf(draft, levelId);
  const ring = woundLeft(soundRing(outline, 'The outline'));
  const id = takeId(draft, 'adjoining');
  level.adjoining[id] = { id, name: nextAdjoiningName(draft, kind), outline: ring, kind, floor_m: 0, gas: 'not-assessed', note: '' };
  return [{ kind: 'adjoining', level: levelId, id }];
});
