import { PAPER_IDS, type PaperId } from '../model/paper-ids.ts';
import type { Settings } from '../model/plan.ts';

/** A paper and its size, landscape. */
export interface Paper {
  readonly id: PaperId;
  readonly name: string;
  /** Landscape width and height [mm]. */
  readonly width_mm: number;
  readonly height_mm: number;
}

const INCH_mm = 25.4;
const metric = (id: PaperId, width_mm: number, height_mm: number): Paper => ({ id, name: id, width_mm, height_mm });
const inch = (id: PaperId, width_in: number, height_in: number): Paper => ({
  id,
  name: `${id.replace('-', ' ')} (${height_in} × ${width_in} in)`,
  width_mm: width_in * INCH_mm,
  height_mm: height_in * INCH_mm,
});

/**
 * Papers a sheet is printed on, all landscape.
 * Source: ISO 216 for A sizes; ASME Y14.1 for ANSI sizes and the trade's ARCH sizes, both from memory.
 */
export const PAPERS: Readonly<Record<PaperId, Paper>> = {
  A4: metric('A4', 297, 210),
  A3: metric('A3', 420, 297),
  A2: metric('A2', 594, 420),
  A1: metric('A1', 841, 594),
  'ANSI-A': inch('ANSI-A', 11, 8.5),
  'ANSI-B': inch('ANSI-B', 17, 11),
  'ANSI-C': inch('ANSI-C', 22, 17),
  'ANSI-D': inch('ANSI-D', 34, 22),
  'ARCH-C': inch('ARCH-C', 24, 18),
  'ARCH-D': inch('ARCH-D', 36, 24),
};

/** Whether a text names a paper that the program knows. */
export const isPaperId = (id: string): id is PaperId => PAPER_IDS.some((known) => known === id);

/** Papers that are tried in turn when the user leaves the choice open: smallest first. */
export const ordinaryPapers = (lengths: Settings['lengths']): readonly Paper[] =>
  lengths === 'feet' ? [PAPERS['ANSI-B'], PAPERS['ARCH-C'], PAPERS['ARCH-D']] : [PAPERS.A3, PAPERS.A2, PAPERS.A1];
