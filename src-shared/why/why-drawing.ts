import type { Box, Outline } from '../geometry/outline.ts';
import type { PlanPoint } from '../geometry/point.ts';

/** What a line of a small drawing stands for: how it is drawn follows from that. */
export type WhyLine = 'wall' | 'pipe' | 'ray' | 'measure' | 'limit' | 'ceiling' | 'floor' | 'hole';
/** What an area stands for: the room, a thing in it, what a finding shows. */
export type WhyArea = 'room' | 'thing' | 'zone';
/** What a place stands for. */
export type WhyDot = 'nozzle' | 'cylinder' | 'place';

/** One mark of a small drawing; lengths in metres, y up. */
export type WhyShape =
  | { readonly kind: 'line'; readonly as: WhyLine; readonly a: PlanPoint; readonly b: PlanPoint }
  | { readonly kind: 'area'; readonly as: WhyArea; /** Closed rings; further ones are holes. */ readonly rings: readonly Outline[] }
  | { readonly kind: 'circle'; readonly as: 'limit' | 'cylinder'; readonly at: PlanPoint; readonly radius_m: number }
  | { readonly kind: 'dot'; readonly as: WhyDot; readonly at: PlanPoint }
  | { readonly kind: 'text'; readonly at: PlanPoint; readonly words: string; readonly isMain: boolean };

/** A small drawing of what a finding measured. */
export interface WhyDrawing {
  /** Seen from above, or from the side with heights true. */
  readonly view: 'plan' | 'section';
  /** What is shown; everything beyond it is cut off. */
  readonly bounds: Box;
  readonly shapes: readonly WhyShape[];
  /** For whoever cannot see it. */
  readonly words: string;
}
