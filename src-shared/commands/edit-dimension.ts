import { distance_m } from '../geometry/point.ts';
import type { Dimension, RefOf } from '../model/plan.ts';
import { dimensionSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';
import { dimensionOf } from './lookup.ts';
import { JOIN_m } from './sound-value.ts';

const PICK = { a: true, b: true, offset_m: true } as const;
const FIELDS = dimensionSchema.pick(PICK).partial();

/** Moves the places or the line of a dimension. Refuses two places that are one, and places too far off. */
export const editDimension = command('Edit dimension', (draft, ref: RefOf<'dimension'>, change: Partial<Pick<Dimension, keyof typeof PICK>>) => {
  const dimension = dimensionOf(draft, ref);
  applyChange(dimension, FIELDS, change);
  if (distance_m(dimension.a, dimension.b) < JOIN_m) refuse('A dimension needs two places apart.');
});
