import type { FieldRoomAnswer } from '../margins/field-room.ts';
import type { PaperId } from '../model/paper-ids.ts';
import type { Box } from '../geometry/outline.ts';
import type { Paper } from '../paper/papers.ts';
import type { RevisedSince } from './changes-table.ts';
import type { PaperBox, TurnedBox } from './text-box.ts';

/** How a mark is drawn: widths and dashes in mm on paper, colours `#rrggbb`. */
export interface Stroke {
  readonly width_mm: number;
  readonly colour: string;
  /** Dash and gap lengths in turn; solid when missing. */
  readonly dash_mm?: readonly number[];
}

export type FontName = 'plain' | 'bold';

/** What a viewer of the sheets can hide and show by itself, in the order in which it lists them. */
export const SHEET_LAYERS = ['underlay', 'coverage', 'building', 'pipe', 'supports', 'cylinders', 'nozzles', 'devices', 'dimensions', 'findings', 'notes'] as const;
export type SheetLayer = (typeof SHEET_LAYERS)[number];

/** Closed or open run of places on paper, x and y in turn [mm]. */
export type Places = readonly number[];

/**
 * One thing painted on paper, in mm from the sheet's top left corner, y down.
 * A drawing list is painted from first to last; nothing in it knows of the plan.
 */
export type Mark = Ink & {
  /** Layer that it can be hidden with; without one it is always seen. */
  readonly layer?: SheetLayer;
};

type Ink =
  | { readonly kind: 'line'; readonly places: Places; readonly stroke: Stroke; readonly closed?: boolean; readonly fill?: string }
  /** Many separate straight pieces, four numbers each: one mark for a whole underlay layer. */
  | { readonly kind: 'segments'; readonly places: Places | Float64Array; readonly stroke: Stroke }
  | { readonly kind: 'circle'; readonly x: number; readonly y: number; readonly radius_mm: number; readonly stroke?: Stroke; readonly fill?: string }
  /** Arc counter-clockwise as seen on paper, angles [rad] from the paper's right, y up. */
  | { readonly kind: 'arc'; readonly x: number; readonly y: number; readonly radius_mm: number; readonly from_rad: number; readonly to_rad: number; readonly stroke: Stroke }
  /** Several rings filled together, even-odd. */
  | { readonly kind: 'area'; readonly rings: readonly Places[]; readonly fill: string; readonly opacity?: number }
  /** One line of text; x, y is the baseline's start, middle or end; rotation counter-clockwise on paper. */
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      /** Height of capitals [mm]. */
      readonly height_mm: number;
      readonly font: FontName;
      readonly colour: string;
      readonly align: 'left' | 'middle' | 'right';
      readonly rotation_rad?: number;
      /** White box behind it, so that lines do not run through. */
      readonly halo?: boolean;
      /** Name by which other texts of the set lead here, as `placeName` makes it. */
      readonly place?: string;
      /** Name of the place that it leads to; one that the set does not hold is no link. */
      readonly goesTo?: string;
      /** Of the text of a dimension that can be moved. */
      readonly dimension?: DimensionText;
    }
  | { readonly kind: 'image'; readonly bytes: Uint8Array; readonly mime: 'image/png' | 'image/jpeg'; /** Maps the unit square, y up, to paper mm. */ readonly matrix: readonly [number, number, number, number, number, number]; readonly opacity: number }
  /** Everything in it is cut at the box. */
  | { readonly kind: 'clip'; readonly x: number; readonly y: number; readonly width_mm: number; readonly height_mm: number; readonly marks: readonly Mark[] };

/** How the text of a dimension stands, and by what it is found again. */
export interface DimensionText {
  readonly key: string;
  /** Measured direction on paper, counter-clockwise from its right [rad]. */
  readonly along_rad: number;
  /** From the middle of the measured way to that of the text, along it [mm]. */
  readonly along_mm: number;
  /** From the thing to the dimension line, to the left of the measured way [mm]. */
  readonly off_mm: number;
  readonly isByHand: boolean;
  /** Put by hand where a symbol or another text stands. */
  readonly isOver?: boolean;
}

/** What a form field holds: words, a tick ("yes" or nothing), or words that only identify the form. */
export interface FormCell {
  /** The same however often the plan is printed, e.g. "net-1/nozzle-3/first#measured". */
  readonly name: string;
  readonly kind: 'text' | 'tick' | 'fixed';
  /** Shown by a viewer beside the field. */
  readonly tooltip: string;
  readonly value: string;
  /** Several lines may be written. */
  readonly isLong?: boolean;
}

/** A field to be filled in on a screen, its box in mm from the sheet's top left corner. Ink works in the same box. */
export interface SheetField extends FormCell {
  readonly x: number;
  readonly y: number;
  readonly width_mm: number;
  readonly height_mm: number;
}

/** A view on a sheet, as it can be taken hold of there. */
export interface SheetView {
  readonly key: string;
  readonly title: string;
  /** Paper that it fills with its title [mm]. */
  readonly box: PaperBox;
  /** The corner by which it is placed [mm]. */
  readonly corner: { readonly x_mm: number; readonly y_mm: number };
  /** Site length over paper length; null where it is not to scale. */
  readonly scale: number | null;
  /** Part of the plan that it shows, its north-west corner at `corner`; null for what cannot be cropped. */
  readonly shown: Box | null;
}

/** The text of a dimension on a sheet, as it can be taken hold of there. */
export interface SheetDimension extends DimensionText {
  readonly words: string;
  /** Paper that its words fill. */
  readonly box: TurnedBox;
}

/** A note of the user on a sheet. */
export interface SheetNotePlace {
  readonly id: string;
  readonly box: PaperBox;
}

/** One sheet, composed. */
export interface Sheet {
  readonly number: string;
  readonly title: string;
  /** Name by which the user's views and notes find it again. */
  readonly home: string;
  readonly views: readonly SheetView[];
  readonly dimensions: readonly SheetDimension[];
  readonly notes: readonly SheetNotePlace[];
  /** What became of what the user placed: told in the window, not printed. */
  readonly placing: readonly string[];
  readonly paper: Paper;
  readonly marks: readonly Mark[];
  /** Fields of a form, in the order of filling in; a painter that knows no forms leaves them. */
  readonly fields?: readonly SheetField[];
}

/** A photograph and how it lies: its matrix takes the unit square, y up, to a frame of this width and height. */
export interface SheetPhoto {
  readonly bytes: Uint8Array;
  readonly mime: 'image/png' | 'image/jpeg';
  readonly matrix: readonly [number, number, number, number, number, number];
  readonly width: number;
  readonly height: number;
}

/** What the user chooses for a set. */
export interface SheetOptions {
  readonly paper: PaperId | 'auto';
  /** Paper : site, 50 for 1:50; `auto` picks the largest standard scale that fits. */
  readonly scale: number | 'auto';
  readonly set: 'submittal' | 'field';
  /** Length that pipe is bought in and width of a saw cut [m]; the usual ones when missing. */
  readonly takeOff?: { readonly stock_m: number; readonly kerf_m: number } | null;
  /** Where each nozzle may be put, by its key; a set without it says “ask”. Working it out tries many places: who prints asks for it. */
  readonly rooms?: ReadonlyMap<string, FieldRoomAnswer>;
  /** What the newest revision changed, to be listed; nothing is listed without it. */
  readonly changes?: RevisedSince | undefined;
  /** Mark of the revision that has replaced the set: it is said across every sheet. */
  readonly supersededBy?: string | undefined;
  /** Picture of the user's own title block, and its size. */
  readonly logo?: { readonly bytes: Uint8Array; readonly mime: 'image/png' | 'image/jpeg'; readonly width_px: number; readonly height_px: number } | undefined;
  /** Photographs from the site by the id of their file, or `later` while one is still being read; one that is missing is named in its place. */
  readonly photos?: ReadonlyMap<string, SheetPhoto | 'later'> | undefined;
  /** What each measured dimension comes to, in words by its id; a set without it judges the bare deviation. Working it out checks the plan as built: who prints asks for it. */
  readonly answers?: ReadonlyMap<string, string>;
  /** Time printed on the sheet, as text that the caller made, e.g. "2026-03-04 15:20". */
  readonly printedAt: string;
}
