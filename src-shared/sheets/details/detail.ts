import type { ViewDraft } from '../view-draft.ts';

/** One detail of the details sheet: what it shows, what it rests on, and what to mind. */
export interface Detail {
  readonly title: string;
  /** What it holds for: names of cylinders, nozzles, networks; blank: for the whole plan. */
  readonly where: string;
  /** Figures and instructions below the drawing, each a sentence. */
  readonly notes: readonly string[];
  readonly source: string;
  readonly caution: string;
  /** Draws into a view whose places are millimetres of the detail, x right and y up from its lower left corner. */
  readonly draw: (view: ViewDraft) => void;
}

/** Paper of every drawing [mm at factor 1]. */
export const DETAIL_WIDTH_mm = 88;
export const DETAIL_HEIGHT_mm = 58;

/** So many variants of one detail are drawn; the others are in the schedules. */
export const MOST_VARIANTS = 3;

/** Things that need the same drawing, by a key that says what is drawn. */
export function alike<T>(things: readonly T[], keyOf: (thing: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const key = keyOf(thing);
    const group = groups.get(key);
    if (group) group.push(thing);
    else groups.set(key, [thing]);
  }
  return [...groups.values()];
}

/** Names in words: all of them while they are few, else the first and how many more. */
export const namesText = (names: readonly string[]): string => (names.length <= 6 ? names.join(', ') : `${names.slice(0, 5).join(', ')} and ${names.length - 5} more`);

/** Sources in words, each once, blank ones left out. */
export const sourcesText = (sources: readonly (string | undefined)[]): string => [...new Set(sources.filter((source): source is string => source !== undefined && source !== ''))].join('; ');
