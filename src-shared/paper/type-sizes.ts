import type { Paper } from './papers.ts';

/** Heights of capitals on one paper [mm], and the factor that symbols and gaps grow by. */
export interface TypeSizes {
  /** Captions, notes and long sentences. */
  readonly note_mm: number;
  /** Everything a fitter or reviewer reads off: dimensions, ids, elevations, table cells. */
  readonly text_mm: number;
  readonly heading_mm: number;
  readonly title_mm: number;
  /** 1 on a hand-held sheet. */
  readonly factor: number;
}

const HAND_HELD: TypeSizes = { note_mm: 2.5, text_mm: 2.5, heading_mm: 3.5, title_mm: 5, factor: 1 };

/** A large sheet is read from its half-size print as well: every text is then still 3/32 in (2.4 mm) high. */
const LARGE: TypeSizes = { note_mm: 4.8, text_mm: 4.8, heading_mm: 6, title_mm: 8, factor: 1.9 };

/** Longest side of a sheet that is held in the hand [mm]. */
const HAND_HELD_mm = 450;

/** Text heights for a paper. */
export const typeSizesOf = (paper: Paper): TypeSizes => (Math.max(paper.width_mm, paper.height_mm) <= HAND_HELD_mm ? HAND_HELD : LARGE);
