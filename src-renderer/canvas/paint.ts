import type { Pen } from './pen.ts';
import type { Viewport } from './viewport.ts';

/** What a paint answers when a strip of it does not fit beside what it drew before. Anything else that it answers does not matter. */
export const ANEW = 'anew';

/** Draws one picture of a layer for what the board shows. */
export type Paint = (pen: Pen, view: Viewport) => unknown;
