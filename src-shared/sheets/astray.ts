import type { SheetSettings } from '../model/plan.ts';
import type { Sheet } from './sheet.ts';

/** What the user put on sheets and no sheet shows any more. */
export interface Astray {
  readonly notes: readonly SheetSettings['notes'][string][];
  /** Keys of views and of dimensions. */
  readonly views: readonly string[];
  readonly dimensions: readonly string[];
}

export const NOTHING_ASTRAY: Astray = { notes: [], views: [], dimensions: [] };

/** Looks which notes, placed views and moved dimension texts found no place. @param sheets  the whole set: a field set leaves sheets out on purpose */
export function astrayOf({ notes, views, dimensions }: Pick<SheetSettings, 'notes' | 'views' | 'dimensions'>, sheets: readonly Pick<Sheet, 'home' | 'views' | 'dimensions'>[]): Astray {
  const homes = new Set(sheets.map(({ home }) => home));
  const drawn = new Set(sheets.flatMap((sheet) => sheet.views.map(({ key }) => key)));
  const written = new Set(sheets.flatMap((sheet) => sheet.dimensions.map(({ key }) => key)));
  return {
    notes: Object.values(notes).filter(({ sheet }) => !homes.has(sheet)),
    views: Object.keys(views).filter((key) => !drawn.has(key)),
    dimensions: Object.keys(dimensions).filter((key) => !written.has(key)),
  };
}
