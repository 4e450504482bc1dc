import { type Isometric, layoutIsometric, middleRun_m } from '../isometric/layout-isometric.ts';
import type { Settings } from '../model/plan.ts';
import { drawIsometricAssembly } from './draw-assembly.ts';
import { drawIsometric, drawNorth, labelIsometricNodes, labelIsometricRuns, labelLooseSupports } from './draw-isometric.ts';
import { printable, textWidth_mm } from './font-widths.ts';
import type { SheetLayout } from './frame.ts';
import { isometricTable } from './isometric-table.ts';
import { settleLabels } from './labels.ts';
import { line, pen, text } from './marks.ts';
import { WEIGHT } from './print-ink.ts';
import type { Mark } from './sheet.ts';
import { type SheetDraft, VIEW_TITLE_mm, missingLabels } from './sheet-draft.ts';
import { type Table, drawTable, layTable, tableHeight_mm } from './tables.ts';
import { type PaperBox, boxHolds, marksBox, shortened } from './text-box.ts';
import type { TypeSizes } from './type-sizes.ts';
import { type ViewDraft, marksOf, viewDraft, viewFrame } from './view-draft.ts';
import type { ViewSet } from './view-set.ts';

/** Isometric sheets, and the tables of nodes that found no room on them. */
export interface IsometricSheets {
  readonly drafts: SheetDraft[];
  readonly tables: Table[];
}

/** Paper around the pipe for texts and the discharge assembly, the most liked first [mm at factor 1]. */
const MARGINS: readonly { readonly side_mm: number; readonly above_mm: number }[] = [
  { side_mm: 34, above_mm: 20 },
  { side_mm: 26, above_mm: 14 },
  { side_mm: 18, above_mm: 10 },
];
/** The middle run is not drawn longer than this on paper [mm at factor 1]. */
const LONGEST_mm = 30;
/** Width of the table of nodes beside its drawing [mm at factor 1]. */
const TABLE_mm = 128;
/** A drawing beside its table keeps at least this share of the paper's width. */
const LEAST_SHARE = 0.52;

function composeIsometric(iso: Isometric, room: PaperBox, sizes: TypeSizes, lengths: Settings['lengths'], margin: (typeof MARGINS)[number], isTerse: boolean): ViewDraft {
  const xs = iso.nodes.map(({ place }) => place.x);
  const ys = iso.nodes.map(({ place }) => place.y);
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const free = (from: number, to: number, margin_mm: number): number => Math.max(10, to - from - 2 * margin_mm * sizes.factor);
  const across = free(room.left, room.right, margin.side_mm) / Math.max(right - left, 1e-6);
  const down = free(room.top, room.bottom, margin.above_mm) / Math.max(top - bottom, 1e-6);
  const mmPerMetre = Math.min(across, down, (LONGEST_mm * sizes.factor) / middleRun_m(iso));
  const [middleX, middleY] = [(room.left + room.right) / 2, (room.top + room.bottom) / 2];
  const view = viewDraft(viewFrame(1000 / mmPerMetre, (left + right) / 2, (bottom + top) / 2, middleX, middleY), sizes, lengths, room);
  drawNorth(view, iso, room.left + 11 * sizes.factor, room.top + 9 * sizes.factor);
  drawIsometric(view, iso);
  drawIsometricAssembly(view, iso);
  labelIsometricNodes(view, iso, isTerse);
  labelIsometricRuns(view, iso);
  labelLooseSupports(view, iso);
  settleLabels(view);
  return view;
}

/** The drawing in which most labels find room: all that stands at a node if it can be, else less. */
function bestDrawing(iso: Isometric, room: PaperBox, sizes: TypeSizes, lengths: Settings['lengths']): ViewDraft | undefined {
  let best: ViewDraft | undefined;
  for (const [isTerse, margin] of [false, true].flatMap((terse) => MARGINS.map((each) => [terse, each] as const))) {
    const view = composeIsometric(iso, room, sizes, lengths, margin, isTerse);
    if (!boxHolds({ left: room.left - 1, top: room.top - 1, right: room.right + 1, bottom: room.bottom + 1 }, marksBox(marksOf(view)))) continue;
    if (!best || view.unplaced.length < best.unplaced.length) best = view;
    if (best.unplaced.length === 0) break;
  }
  return best;
}

/** Title below the drawing: its network, where it is seen from, and that only its printed lengths count. */
function isometricTitle(iso: Isometric, room: PaperBox, { sizes }: SheetLayout): Mark[] {
  const { factor, heading_mm, text_mm } = sizes;
  const zones = iso.zone === 'high' ? 'no regulator drawn: all pipe at high pressure' : 'double line: high pressure, single line: behind the regulator';
  const note = `not to scale, seen from the ${iso.view}`;
  const base = room.bottom + heading_mm + 2 * factor;
  const noteWidth = textWidth_mm(note, text_mm, 'plain');
  const words = shortened(printable(`Isometric: ${iso.network.network.name}`), room.right - room.left - noteWidth - 6 * factor, heading_mm, 'bold');
  const nameWidth = textWidth_mm(words, heading_mm, 'bold');
  const right = room.left + nameWidth + 5 * factor + noteWidth;
  return [
    text(room.left, base, words, { height_mm: heading_mm, font: 'bold' }),
    text(room.left + nameWidth + 5 * factor, base, note, { height_mm: text_mm }),
    line(pen(WEIGHT.wide), room.left, base + 1.6 * factor, right, base + 1.6 * factor),
    text(room.left, base + 2.6 * factor + text_mm, zones, { height_mm: text_mm }),
  ];
}

/** One sheet for each network that has pipe: the isometric, its table of nodes beside it where both have room. */
export function isometricSheets({ derived, layout }: ViewSet): IsometricSheets {
  const { sizes } = layout;
  const { lengths } = derived.plan.settings;
  const sheets: IsometricSheets = { drafts: [], tables: [] };
  for (const network of derived.networks) {
    if (network.pipes.length === 0) continue;
    const iso = layoutIsometric(network);
    // No strip with a check bar below: nothing here is to scale.
    const { area } = layout;
    const room = { ...area, bottom: area.bottom - VIEW_TITLE_mm * sizes.factor };
    const table = isometricTable(iso, lengths);
    const laid = layTable(table, TABLE_mm * sizes.factor, sizes);
    const gap = 6 * sizes.factor;
    const beside = { ...room, right: room.right - laid.width_mm - gap };
    const hasRoomBeside = beside.right - beside.left >= LEAST_SHARE * (room.right - room.left) && tableHeight_mm(laid) <= area.bottom - area.top;
    const small = hasRoomBeside ? bestDrawing(iso, beside, sizes, lengths) : undefined;
    const isBeside = small?.unplaced.length === 0;
    const view = isBeside ? small : bestDrawing(iso, room, sizes, lengths);
    if (!isBeside) sheets.tables.push(table);
    if (!view) continue;
    sheets.drafts.push({
      title: `Isometric: ${network.network.name}`,
      scale: 'not to scale',
      marks: [...marksOf(view), ...isometricTitle(iso, isBeside ? beside : room, layout), ...(isBeside ? drawTable(laid, beside.right + gap, area.top) : [])],
      hasViews: false,
      hasPlan: false,
      used: view.used,
      remarks: [...missingLabels(view.unplaced.length), ...(isBeside ? [] : ['Its nodes are listed with the schedules'])],
    });
  }
  return sheets;
}
