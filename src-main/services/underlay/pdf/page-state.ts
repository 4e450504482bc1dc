import { IDENTITY, type Matrix } from '#shared/underlay/matrix';

/** Graphics state of a page that matters for a plan. */
export interface PageState {
  /** Carries what is painted now to the drawing. */
  readonly matrix: Matrix;
  /** `#rrggbb`, or "none" where a pattern or nothing is painted. */
  readonly stroke: string;
  readonly fill: string;
  readonly strokeAlpha: number;
  readonly fillAlpha: number;
  readonly font: string;
  readonly fontSize: number;
  readonly letterSpacing: number;
  readonly wordSpacing: number;
  readonly stretch: number;
  readonly leading: number;
  readonly rise: number;
  readonly textMode: number;
}

export const startState = (matrix: Matrix): PageState => ({
  matrix,
  stroke: '#000000',
  fill: '#000000',
  strokeAlpha: 1,
  fillAlpha: 1,
  font: '',
  fontSize: 1,
  letterSpacing: 0,
  wordSpacing: 0,
  stretch: 1,
  leading: 0,
  rise: 0,
  textMode: 0,
});

/** Where the next letter goes, in the page's text frame. */
export interface TextCursor {
  readonly matrix: Matrix;
  readonly x: number;
  readonly y: number;
  readonly lineX: number;
  readonly lineY: number;
}

export const startCursor = (matrix: Matrix = IDENTITY): TextCursor => ({ matrix, x: 0, y: 0, lineX: 0, lineY: 0 });
