import { isDraft, original } from 'immer';
import type { Plan } from '../model/plan.ts';

/**
 * The plan as it stood before a command began. Searching it is far cheaper than searching the draft, which wraps
 * everything that is looked at; what was found is then changed in the draft.
 */
export const asItStood = (draft: Plan): Plan => (isDraft(draft) ? (original(draft) ?? draft) : draft);
