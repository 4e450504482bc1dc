import { PRINT, WEIGHT } from './print-ink.ts';
import type { FontName, Mark, Places, Stroke } from './sheet.ts';

export type TextMark = Extract<Mark, { kind: 'text' }>;

/** A pen of the given width [mm]; ink black and solid unless told otherwise. */
export const pen = (width_mm: number, colour: string = PRINT.ink, dash_mm?: readonly number[]): Stroke =>
  dash_mm ? { width_mm, colour, dash_mm } : { width_mm, colour };

/** One run of straight pieces through places on paper. */
export const line = (stroke: Stroke, ...places: number[]): Mark => ({ kind: 'line', places, stroke });

/** A closed ring, filled when a colour is given. */
export const ring = (stroke: Stroke, places: Places, fill?: string): Mark =>
  fill ? { kind: 'line', places, stroke, closed: true, fill } : { kind: 'line', places, stroke, closed: true };

/** A box from its top left corner. */
export const box = (stroke: Stroke, x: number, y: number, width_mm: number, height_mm: number, fill?: string): Mark =>
  ring(stroke, [x, y, x + width_mm, y, x + width_mm, y + height_mm, x, y + height_mm], fill);

/** A circle about a place on paper. */
export const circle = (stroke: Stroke | undefined, x: number, y: number, radius_mm: number, fill?: string): Mark => ({
  kind: 'circle',
  x,
  y,
  radius_mm,
  ...(stroke ? { stroke } : {}),
  ...(fill ? { fill } : {}),
});

export interface TextStyle {
  readonly height_mm: number;
  readonly font?: FontName;
  readonly colour?: string;
  readonly align?: TextMark['align'];
  readonly rotation_rad?: number;
  readonly halo?: boolean;
  /** Name of its place on the sheets, and of the place it leads to. */
  readonly place?: string;
  readonly goesTo?: string;
}

/** One line of text from its baseline. */
export const text = (x: number, y: number, words: string, style: TextStyle): TextMark => ({
  kind: 'text',
  x,
  y,
  text: words,
  height_mm: style.height_mm,
  font: style.font ?? 'plain',
  colour: style.colour ?? PRINT.ink,
  align: style.align ?? 'left',
  ...(style.rotation_rad ? { rotation_rad: style.rotation_rad } : {}),
  ...(style.halo ? { halo: true } : {}),
  ...(style.place === undefined ? {} : { place: style.place }),
  ...(style.goesTo === undefined ? {} : { goesTo: style.goesTo }),
});

/** Straight pieces of one pen in one mark, four numbers each. */
export const segments = (stroke: Stroke, places: Places | Float64Array): Mark => ({ kind: 'segments', places, stroke });

const shiftPlaces = (places: ArrayLike<number>, dx: number, dy: number): number[] => {
  const moved: number[] = new Array(places.length);
  for (let i = 0; i < places.length; i += 1) moved[i] = (places[i] ?? 0) + (i % 2 === 0 ? dx : dy);
  return moved;
};

/** The same marks moved on paper [mm]. */
export const shiftMarks = (marks: readonly Mark[], dx: number, dy: number): Mark[] =>
  marks.map((mark): Mark => {
    switch (mark.kind) {
      case 'line':
        return { ...mark, places: shiftPlaces(mark.places, dx, dy) };
      case 'segments':
        return { ...mark, places: Float64Array.from(shiftPlaces(mark.places, dx, dy)) };
      case 'area':
        return { ...mark, rings: mark.rings.map((places) => shiftPlaces(places, dx, dy)) };
      case 'image': {
        const [a, b, c, d, e, f] = mark.matrix;
        return { ...mark, matrix: [a, b, c, d, e + dx, f + dy] };
      }
      case 'clip':
        return { ...mark, x: mark.x + dx, y: mark.y + dy, marks: shiftMarks(mark.marks, dx, dy) };
      default:
        return { ...mark, x: mark.x + dx, y: mark.y + dy };
    }
  });

/** A line that is drawn twice, so that it reads as the high-pressure side. */
export const doubleLine = (colour: string, factor: number, places: Places): Mark[] => [
  { kind: 'line', places, stroke: pen(WEIGHT.heavy * 2.6 * factor, colour) },
  { kind: 'line', places, stroke: pen(WEIGHT.heavy * 1.1 * factor, PRINT.paper) },
];
