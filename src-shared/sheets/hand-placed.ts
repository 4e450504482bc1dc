import type { SheetSettings } from '../model/plan.ts';

/** Where the user put the text of a dimension: its middle from that of the measured way, its line from the thing [mm]. */
export type TextPlace = SheetSettings['dimensions'][string];

/** Dimension texts of one view that the user put in their places. */
export interface HandPlaced {
  /** Key of the view. */
  readonly view: string;
  readonly places: SheetSettings['dimensions'];
  /** What is drawn now: those that the user placed, all but those, or all. */
  round: 'placed' | 'others' | 'all';
}

/** What lies between the key of a view and what is dimensioned in it; no id and no key of a view holds it. */
const BETWEEN = '|';

/** Key of the dimensions of a view: the same however often it is drawn, whatever is renamed or moved. @param of  what is dimensioned */
export const dimensionKey = (view: string, of: string): string => `${view}${BETWEEN}${of}`;

/** Key of the view that a dimension is drawn in. */
export const viewOfDimension = (key: string): string => key.split(BETWEEN, 1)[0] ?? key;

/** The texts that the user placed in a view; undefined where there is no view to come back to. */
export const handPlaced = (view: string | undefined, places: SheetSettings['dimensions']): HandPlaced | undefined => (view === undefined ? undefined : { view, places, round: 'all' });

/** Draws the dimensions of a view: first those that the user placed, so that the others keep off them. */
export function drawInRounds({ hand }: { readonly hand?: HandPlaced | undefined }, draw: () => void): void {
  if (!hand || !Object.keys(hand.places).some((key) => viewOfDimension(key) === hand.view)) {
    draw();
    return;
  }
  for (const round of ['placed', 'others'] as const) {
    hand.round = round;
    draw();
  }
  hand.round = 'all';
}
