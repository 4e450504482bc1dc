import { type PlanPoint, distance_m } from '../geometry/point.ts';
import { type Ref, takeId } from '../model/plan.ts';
import { command, refuse } from './command.ts';
import { levelOf } from './lookup.ts';
import { JOIN_m, soundCoordinate_m, soundPoint } from './sound-value.ts';

/**
 * Draws a dimension between two places.
 * @param offset_m distance of the line from the places [m], left of a → b positive
 * Refuses two places that are one.
 */
export const addDimension = command('Add dimension', (draft, levelId: string, a: PlanPoint, b: PlanPoint, offset_m: number): readonly Ref[] => {
  const level = levelOf(draft, levelId);
  if (distance_m(a, b) < JOIN_m) refuse('A dimension needs two places apart.');
  const id = takeId(draft, 'dimension');
  level.dimensions[id] = { id, a: soundPoint(a), b: soundPoint(b), offset_m: soundCoordinate_m(offset_m) };
  return [{ kind: 'dimension', level: levelId, id }];
});
