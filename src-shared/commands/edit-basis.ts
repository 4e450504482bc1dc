import { type BasisOfDesign, basisSchema } from '../model/basis-of-design.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';

const FIELDS = basisSchema.partial();

/** Changes the basis of design: which edition, method and allowance the sums follow. Refuses a value out of range. */
export const editBasis = command('Change basis of design', (draft, change: Partial<BasisOfDesign>) => {
  applyChange(draft.basis, FIELDS, change);
});
