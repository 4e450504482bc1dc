import { type Outline, isCounterClockwise } from './outline.ts';

/** The ring wound counter-clockwise, its inside on the left of every side. */
export const counterClockwise = (outline: Outline): Outline => (isCounterClockwise(outline) ? outline : outline.toReversed());

/** The ring wound clockwise, its inside on the right of every side. */
export const clockwise = (outline: Outline): Outline => (isCounterClockwise(outline) ? outline.toReversed() : outline);
