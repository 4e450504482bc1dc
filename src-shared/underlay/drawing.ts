import type { Box } from '../geometry/outline.ts';

/** Kinds of floor plan that can be drawn over. */
export type UnderlayKind = 'dxf' | 'pdf' | 'svg' | 'png' | 'jpeg';

/** A text of the imported plan, in file units, y up. */
export interface UnderlayText {
  readonly x: number;
  readonly y: number;
  /** Cap height, file units. */
  readonly height: number;
  readonly rotation_rad: number;
  readonly text: string;
}

/** Lines, fills and texts of one layer. A PDF or SVG without layers has one called "0". */
export interface UnderlayLayer {
  readonly name: string;
  /** Shown when the file says so. */
  readonly visible: boolean;
  /** `#rrggbb` as the file has it; painted in the program's own ink where contrast asks for it. */
  readonly colour: string;
  /** Straight pieces, four numbers each: x1, y1, x2, y2; curves are flattened. */
  readonly segments: Float64Array;
  /** Closed rings that are filled, x and y in turn, last corner not repeated. */
  readonly fills: readonly Float64Array[];
  /** Closed polylines that may serve as an enclosure's outline, x and y in turn, last corner not repeated. */
  readonly closed: readonly Float64Array[];
  readonly texts: readonly UnderlayText[];
}

/** A picture inside the plan, or the whole of a scanned one. */
export interface UnderlayImage {
  readonly mime: 'image/png' | 'image/jpeg';
  readonly bytes: Uint8Array;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** Maps the unit square (0,0 lower left to 1,1 upper right) to file units: x = a·u + c·v + e, y = b·u + d·v + f. */
  readonly matrix: readonly [a: number, b: number, c: number, d: number, e: number, f: number];
}

/** A floor plan as it was read: in the file's own units, y up. */
export interface UnderlayDrawing {
  readonly kind: UnderlayKind;
  /** Metres on site per file unit when the file says so; null otherwise (paper units do not count). */
  readonly metresPerUnit: number | null;
  /** What the file says of its units, in words: "millimetres ($INSUNITS 4)", "no units given". */
  readonly unitsText: string;
  /** Why the unit is doubtful, in words, or null. */
  readonly unitsDoubt: string | null;
  readonly extents: Box;
  readonly layers: readonly UnderlayLayer[];
  readonly images: readonly UnderlayImage[];
  /** Pages in the file; 1 for anything but PDF. */
  readonly pageCount: number;
  /** What was left out or guessed, in sentences. */
  readonly warnings: readonly string[];
}

/** What is wrong with an imported file: what, where, and what to do. Thrown by readers. */
export class UnderlayProblem extends Error {
  constructor(
    readonly what: string,
    readonly where: string,
    readonly remedy: string,
  ) {
    super(`${what} ${where ? `(${where}) ` : ''}${remedy}`);
  }
}

/** Lets a long read report how far it is (0 … 1) and stop when the user cancels: a reader calls it often. */
export type ReadProgress = (done: number, what: string) => void;

/** Largest file a reader takes [bytes]. */
export const LARGEST_UNDERLAY_bytes = 200 * 1024 * 1024;
/** Most segments a drawing may hold; more is refused with advice, so that memory stays bounded. */
export const MOST_SEGMENTS = 4_000_000;
