import { useState } from 'react';
import type { Px } from '../pen.ts';

/** What a press holds: the height of something, or the drawing itself. */
export type Hold<H> =
  | { readonly kind: 'height'; readonly handle: H; readonly from: Px; readonly isDragging: boolean }
  | { readonly kind: 'pan'; readonly last: Px };

/** What the pointer does on a board of heights. */
export interface Hands<H> {
  readonly hold: Hold<H> | null;
  /** What is dragged, or would be with the next move. */
  readonly held: H | null;
  /** What the pointer is over. */
  readonly over: H | null;
  become(hold: Hold<H> | null): void;
  hover(handle: H | null): void;
}

/** Remembers what the pointer holds and what it is over. */
export function useHands<H extends object>(): Hands<H> {
  const [hold, become] = useState<Hold<H> | null>(null);
  const [over, hover] = useState<H | null>(null);
  return { hold, held: hold?.kind === 'height' ? hold.handle : null, over, become, hover };
}
