import { elevationsOf } from '../elevation/elevations-of.ts';
import type { Elevation } from '../elevation/elevation.ts';
import { type BlockSheets, type ViewBlock, packBlocks } from './block-sheets.ts';
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
/** Notes below a wall are at least this wide, however narrow the wall is [mm at factor 1]: as wide as most titles. */
const NOTES_mm = 126;
/** Width of notes beside a wall, and from them to it [mm at factor 1]. */
const BESIDE_mm = 70;
const APART_mm = 5;
/** From the upper edge of a wall's paper to notes beside it [mm at factor 1]. */
const ABOVE_mm = 6;

/** From one ordinary scale to the next, 1/2 in to 3/8 in to the foot. */
const ONE_STEP = 4 / 3;

/** Where the notes to a wall stand: beside it they leave room for another wall below. */
export type NotesAt = 'below' | 'beside';

function notesOf({ layout: { sizes }, derived }: ViewSet, elevation: Elevation, width_mm: number): string[] {
  return mountNotes(elevation, derived.plan.settings.lengths).flatMap((note) => wrapText(printable(note), width_mm, sizes.note_mm, 'plain'));
}

/** Where the notes of a wall lie on its own paper, and how much of that wall, title and notes take [mm]. */
function placesOf(set: ViewSet, elevation: Elevation, at: NotesAt, wall: { readonly width_mm: number; readonly height_mm: number }, title_mm = 0): { readonly words: readonly string[]; readonly x: number; readonly y: number; readonly wall_mm: number; readonly width_mm: number; readonly height_mm: number } {
  const { factor, note_mm } = set.layout.sizes;
  const under = wall.height_mm + VIEW_TITLE_mm * factor;
  if (at === 'below') {
    const width_mm = Math.max(wall.width_mm, title_mm, NOTES_mm * factor);
    const words = notesOf(set, elevation, width_mm);
    return { words, x: 0, y: under, wall_mm: width_mm, width_mm, height_mm: under + words.length * note_mm * NOTE_PITCH + 2 * factor };
  }
  const words = notesOf(set, elevation, BESIDE_mm * factor);
  const x = wall.width_mm + APART_mm * factor;
  const y = ABOVE_mm * factor;
  return { words, x, y, wall_mm: wall.width_mm, width_mm: Math.max(title_mm, x + BESIDE_mm * factor), height_mm: Math.max(under, y + words.length * note_mm * NOTE_PITCH) + 2 * factor };
}

/** Paper that a wall takes at a scale with its title and notes [mm]. */
const sizeAt = (set: ViewSet, elevation: Elevation, scale: number, at: NotesAt): { readonly width_mm: number; readonly height_mm: number } =>
  placesOf(set, elevation, at, elevationLayout(elevation, scale, set.layout.sizes, set.derived.plan.settings.lengths));

/** The finest scale at which every wall fits on the paper and, where there are several, two stand in a row; the user's where it does. */
function scaleFor(set: ViewSet, elevations: readonly Elevation[], at: NotesAt): number {
  const area = viewArea(set.layout);
  const width = area.right - area.left;
  const gap = 7 * set.layout.sizes.factor;
  /** Rows that the walls take in their order; undefined where one of them is larger than the paper. */
  const rowsAt = (scale: number): number | undefined => {
    let [rows, left] = [0, 0];
    for (const elevation of elevations) {
      const { width_mm, height_mm } = sizeAt(set, elevation, scale, at);
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

function blockOf(set: ViewSet, elevation: Elevation, scale: number, at: NotesAt): ViewBlock {
  const { layout, derived } = set;
  const { sizes } = layout;
  const { lengths } = derived.plan.settings;
  const view = composeElevation(elevation, derived.spaces, scale, sizes, lengths, derived.plan.lastIssue);
  const title = viewTitle(0, view.layout.height_mm, elevationTitle(elevation), scale, lengths, layout);
  const { words, x, y, wall_mm, width_mm, height_mm } = placesOf(set, elevation, at, view.layout, title.width_mm);
  const notes = words.map((each, i) => text(x, y + sizes.note_mm * (1 + i * NOTE_PITCH), each, { height_mm: sizes.note_mm }));
  const drawn: DraftView = {
    key: `elevation/${elevation.key}`,
    title: elevationTitle(elevation),
    marks: [...shiftMarks(view.marks, (wall_mm - view.layout.width_mm) / 2, 0), ...title.marks, ...notes],
    scale,
    used: view.used,
    ground: null,
    again: (wish) => blockOf(set, elevation, wish.scale, at).views[0],
  };
  return { plans: [], sections: [], walls: [elevation.network.network.name], scale, views: [drawn], used: view.used, unplaced: view.unplaced.length, width_mm, height_mm };
}

/** Every wall that carries cylinders as a block, all to one scale so that they can be compared. */
export function elevationBlocks(set: ViewSet, at: NotesAt): ViewBlock[] {
  const elevations = elevationsOf(set.derived);
  if (elevations.length === 0) return [];
  // To save a sheet walls may be drawn smaller by one step of the ordinary scales, no more; their texts stay as high.
  const scale = Math.min(scaleFor(set, elevations, at), scaleFor(set, elevations, 'below') * ONE_STEP);
  return elevations.map((elevation) => blockOf(set, elevation, scale, at));
}

/** Sections and cylinder walls on their sheets, the notes of the walls where fewer sheets are needed. */
export function wallSheets(set: ViewSet, sections: readonly ViewBlock[]): BlockSheets {
  const below = packBlocks(set, [...sections, ...elevationBlocks(set, 'below')]);
  if (below.drafts.length < 2) return below;
  const area = viewArea(set.layout);
  const walls = elevationBlocks(set, 'beside');
  if (walls.some(({ width_mm, height_mm }) => width_mm > area.right - area.left || height_mm > area.bottom - area.top)) return below;
  const beside = packBlocks(set, [...sections, ...walls]);
  return beside.drafts.length < below.drafts.length ? beside : below;
}
