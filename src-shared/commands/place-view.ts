import type { SheetSettings } from '../model/plan.ts';
import { placedViewSchema } from '../model/schema.ts';
import { applyChange } from './apply-change.ts';
import { command, refuse } from './command.ts';

type PlacedView = SheetSettings['views'][string];

/** Smaller parts of a plan show nothing [m]. */
const LEAST_PART_m = 0.1;

/** A view that nobody placed. */
const asComposed = (): PlacedView => ({ sheet: null, at: null, scale: null, crop: null });

/**
 * Puts a view of the sheets where the user wants it: place [mm], scale, shown part [m], another sheet by its name. What is
 * not named stays as it was. Refuses a part without extent.
 * @param key  that of the view, as composing names it
 */
export const placeView = command('Place view', (draft, key: string, change: Partial<PlacedView>) => {
  const { views } = draft.settings.sheets;
  const { crop } = change;
  if (crop && (crop.most.x - crop.least.x < LEAST_PART_m || crop.most.y - crop.least.y < LEAST_PART_m)) refuse('This part of the plan is too small to show anything.');
  const next: PlacedView = { ...(views[key] ?? asComposed()) };
  applyChange(next, placedViewSchema.partial(), change);
  views[key] = next;
});
