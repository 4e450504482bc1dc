import type { Elevation } from '../elevation/elevation.ts';
import type { Settings } from '../model/plan.ts';
import { formatLength } from '../units/length-text.ts';
import { type LadderRow, ladderRows } from './elevation-words.ts';
import { printable, textWidth_mm } from './font-widths.ts';
import type { PaperBox } from './text-box.ts';
import type { TypeSizes } from '../paper/type-sizes.ts';
import { type ViewDraft, type ViewFrame, viewDraft, viewFrame } from './view-draft.ts';

/** Paper above the ceiling, beside the end without heights, and below the last line [mm at factor 1]. */
const ABOVE_mm = 6;
const BESIDE_mm = 13;
const BELOW_mm = 2;
/** From the ladder of heights to the wall, and from its words to the ladder [mm at factor 1]. */
const LADDER_mm = 9;
const WORDS_mm = 7;
/** From the floor to the first line of distances, and one line below the other [mm at factor 1]. */
export const FIRST_LINE_mm = 8;
export const LINE_PITCH_mm = 5.2;
/** Floor beyond the clear space that the strip shows [m]. */
const STRIP_BEYOND_m = 0.1;

/** How one distance along the wall is written: from the datum to a cylinder. */
export interface RunningMark {
  readonly s: number;
  readonly words: string;
}

/** Where everything of an elevation lies on its own paper [mm], from its top left corner. */
export interface ElevationLayout {
  readonly frame: ViewFrame;
  readonly width_mm: number;
  readonly height_mm: number;
  readonly floor_mm: number;
  /** Upright line of the heights, and where their words end that stand away from the wall. */
  readonly ladder_mm: number;
  readonly ladderSide: 'left' | 'right';
  readonly rows: readonly LadderRow[];
  readonly running: readonly RunningMark[];
  /** Cylinders are wide enough on paper to hold their names; else these stand with the distances. */
  readonly hasNamesInside: boolean;
  /** Lines that the running distances take, so that none meets its neighbour. */
  readonly runningLines: number;
  /** Wall face of the plan strip. */
  readonly strip_mm: number;
  /** Lower edge of the strip. */
  readonly stripEnd_mm: number;
}

/** How many lines running figures need so that neighbours on one line stay apart. */
function linesFor(marks: readonly RunningMark[], mm: (length_m: number) => number, sizes: TypeSizes): number {
  const widths = marks.map(({ words }) => textWidth_mm(printable(words), sizes.text_mm, 'bold') + 2.5 * sizes.factor);
  for (let lines = 1; lines < marks.length; lines += 1) {
    const isClear = marks.every(({ s }, i) => {
      const next = marks[i + lines];
      return !next || mm(Math.abs(next.s - s)) >= ((widths[i] ?? 0) + (widths[i + lines] ?? 0)) / 2;
    });
    if (isClear) return lines;
  }
  return Math.max(1, marks.length);
}

/** Lays an elevation out at a scale: the wall, its heights beside it, its distances and the plan strip below it. */
export function elevationLayout(elevation: Elevation, scale: number, sizes: TypeSizes, lengths: Settings['lengths']): ElevationLayout {
  const { factor } = sizes;
  const { shown, datum, frame, top_m, depth_m, cylinders } = elevation;
  const mm = (length_m: number): number => (length_m * 1000) / scale;
  const rows = ladderRows(elevation, lengths);
  const words_mm = Math.max(...rows.map(({ words }) => textWidth_mm(printable(words), sizes.text_mm, 'plain')));
  const ladderPaper = words_mm + (LADDER_mm + WORDS_mm) * factor;
  const [left, right] = datum === 'left' ? [ladderPaper, BESIDE_mm * factor] : [BESIDE_mm * factor, ladderPaper];
  const floor_mm = ABOVE_mm * factor + mm(top_m);
  const from = datum === 'left' ? 0 : frame.length_m;
  const hasNamesInside = cylinders.every(({ cylinder, radius_m }) => textWidth_mm(printable(cylinder.name), sizes.text_mm, 'bold') + 0.8 * factor <= mm(2 * radius_m));
  const running = cylinders
    .map(({ at, cylinder }): RunningMark => ({ s: at.s, words: `${hasNamesInside ? '' : `${cylinder.name}: `}${formatLength(Math.abs(at.s - from), lengths)}` }))
    .sort((a, b) => Math.abs(a.s - from) - Math.abs(b.s - from));
  const runningLines = linesFor(running, mm, sizes);
  const strip_mm = floor_mm + (FIRST_LINE_mm + (runningLines + 2) * LINE_PITCH_mm) * factor;
  const stripEnd_mm = strip_mm + mm(depth_m + STRIP_BEYOND_m);
  const width_mm = left + mm(shown.to_m - shown.from_m) + right;
  return {
    frame: viewFrame(scale, shown.from_m, 0, left, floor_mm),
    width_mm,
    height_mm: stripEnd_mm + BELOW_mm * factor,
    floor_mm,
    ladder_mm: datum === 'left' ? left - LADDER_mm * factor : width_mm - right + LADDER_mm * factor,
    ladderSide: datum,
    rows,
    running,
    hasNamesInside,
    runningLines,
    strip_mm,
    stripEnd_mm,
  };
}

/** An empty view for an elevation. */
export const elevationDraft = ({ frame, width_mm, height_mm }: ElevationLayout, sizes: TypeSizes, lengths: Settings['lengths']): ViewDraft => {
  const room: PaperBox = { left: 0, top: 0, right: width_mm, bottom: height_mm };
  return viewDraft(frame, sizes, lengths, room);
};
