import { elevationsOf } from '../elevation/elevations-of.ts';
import type { Elevation } from '../elevation/elevation.ts';
import type { ViewBlock } from './block-sheets.ts';
import type { DraftView } from './draft-view.ts';
import { elevationLayout } from './elevation-frame.ts';
import { composeElevation } from './elevation-view.ts';
import { elevationTitle, mountNotes } from './elevation-words.ts';
import { printable } from './font-widths.ts';
import { shiftMarks, text } from './marks.ts';
import { coarserUntil, ordinaryScales } from '../paper/scales.ts';
import { VIEW_TITLE_mm, viewTitle } from './sheet-draft.ts';
import { wrapText } from './text-box.ts';
import { type ViewSet, viewArea } from './view-set.ts';

/** Line pitch of the notes over the height of their capitals. */
const NOTE_PITCH = 1.7;
/** Notes are at least this wide, however narrow the wall is [mm at factor 1]: as wide as most titles. */
const NOTES_mm = 126;

function notesOf({ layout: { sizes }, derived }: ViewSet, elevation: Elevation, width_mm: number): string[] {
  return mountNotes(elevation, derived.plan.settings.lengths).flatMap((note) => wrapText(printable(note), width_mm, sizes.note_mm, 'plain'));
}

/** Paper that a wall takes at a scale with its title and notes [mm]. */
function sizeAt(set: ViewSet, elevation: Elevation, scale: number): { readonly width_mm: number; readonly height_mm: number } {
  const { sizes } = set.layout;
  const { width_mm, height_mm } = elevationLayout(elevation, scale, sizes, set.derived.plan.settings.lengths);
  const width = Math.max(width_mm, NOTES_mm * sizes.factor);
  const notes = notesOf(set, elevation, width).length * sizes.note_mm * NOTE_PITCH;
  return { width_mm: width, height_mm: height_mm + VIEW_TITLE_mm * sizes.factor + notes + 2 * sizes.factor };
}

/** The finest scale at which every wall fits on the paper and, where there are several, two stand in a row; the user's where it does. */
function scaleFor(set: ViewSet, elevations: readonly Elevation[]): number {
  const area = viewArea(set.layout);
  const width = area.right - area.left;
  const gap = 7 * set.layout.sizes.factor;
  /** Rows that the walls take in their order; undefined where one of them is larger than the paper. */
  const rowsAt = (scale: number): number | undefined => {
    let [rows, left] = [0, 0];
    for (const elevation of elevations) {
      const { width_mm, height_mm } = sizeAt(set, elevation, scale);
      if (width_mm > width || height_mm > area.bottom - area.top) return undefined;
      if (rows === 0 || left < width_mm) [rows, left] = [rows + 1, width];
      left -= width_mm + gap;
    }
    return rows;
  };
  const ordinary = ordinaryScales(set.derived.plan.settings.lengths);
  const wish = set.scale;
  const wished = wish === 'auto' ? ordinary : [wish, ...ordinary.filter((scale) => scale > wish)];
  const inPairs = wished.find((scale) => (rowsAt(scale) ?? Infinity) <= Math.ceil(elevations.length / 2));
  const fits = (scale: number): boolean => rowsAt(scale) !== undefined;
  return (wish === 'auto' ? inPairs : undefined) ?? wished.find(fits) ?? coarserUntil(fits, wished.at(-1) ?? 100);
}

function blockOf(set: ViewSet, elevation: Elevation, scale: number): ViewBlock {
  const { layout, derived } = set;
  const { sizes } = layout;
  const { lengths } = derived.plan.settings;
  const view = composeElevation(elevation, derived.spaces, scale, sizes, lengths, derived.plan.lastIssue);
  const { width_mm, height_mm } = view.layout;
  const title = viewTitle(0, height_mm, elevationTitle(elevation), scale, lengths, layout);
  const width = Math.max(width_mm, title.width_mm, NOTES_mm * sizes.factor);
  const top = height_mm + VIEW_TITLE_mm * sizes.factor;
  const pitch = sizes.note_mm * NOTE_PITCH;
  const notes = notesOf(set, elevation, width);
  const drawn: DraftView = {
    key: `elevation/${elevation.key}`,
    title: elevationTitle(elevation),
    marks: [...shiftMarks(view.marks, (width - width_mm) / 2, 0), ...title.marks, ...notes.map((words, i) => text(0, top + sizes.note_mm + i * pitch, words, { height_mm: sizes.note_mm }))],
    scale,
    used: view.used,
    ground: null,
    again: (wish) => blockOf(set, elevation, wish.scale).views[0],
  };
  return {
    plans: [],
    sections: [],
    walls: [elevation.network.network.name],
    scale,
    views: [drawn],
    used: view.used,
    unplaced: view.unplaced.length,
    width_mm: width,
    height_mm: top + notes.length * pitch + 2 * sizes.factor,
  };
}

/** Every wall that carries cylinders as a block, all to one scale so that they can be compared. */
export function elevationBlocks(set: ViewSet): ViewBlock[] {
  const elevations = elevationsOf(set.derived);
  if (elevations.length === 0) return [];
  const scale = scaleFor(set, elevations);
  return elevations.map((elevation) => blockOf(set, elevation, scale));
}
