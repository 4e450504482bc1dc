import { type Isometric, layoutIsometric, middleRun_m } from '../isometric/layout-isometric.ts';
import type { Issue, Settings } from '../model/plan.ts';
import { drawIsometricAssembly } from './draw-assembly.ts';
import type { DraftView } from './draft-view.ts';
import { drawIsometric, drawNorth, labelIsometricNodes, labelIsometricRuns, labelLooseSupports } from './draw-isometric.ts';
import { cloudIsometric } from './draw-side-clouds.ts';
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
import type { TypeSizes } from '../paper/type-sizes.ts';
import { type ViewDraft, inLayer, marksOf, viewDraft, viewFrame } from './view-draft.ts';
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
/** Between two isometrics on one sheet [mm at factor 1]. */
const HALVES_APART_mm = 8;
/** How far a drawing on half a sheet makes way for the words of its discharge assembly [mm at factor 1]. */
const ASIDE_mm = 11;

/** How large a network is drawn with some paper around it [mm of paper for a metre]. */
function mmPerMetreIn(iso: Isometric, room: PaperBox, { factor }: TypeSizes, margin: (typeof MARGINS)[number]): number {
  const xs = iso.nodes.map(({ place }) => place.x);
  const ys = iso.nodes.map(({ place }) => place.y);
  const free = (from: number, to: number, margin_mm: number): number => Math.max(10, to - from - 2 * margin_mm * factor);
  const across = free(room.left, room.right, margin.side_mm) / Math.max(Math.max(...xs) - Math.min(...xs), 1e-6);
  const down = free(room.top, room.bottom, margin.above_mm) / Math.max(Math.max(...ys) - Math.min(...ys), 1e-6);
  return Math.min(across, down, (LONGEST_mm * factor) / middleRun_m(iso));
}

function composeIsometric(iso: Isometric, room: PaperBox, sizes: TypeSizes, lengths: Settings['lengths'], margin: (typeof MARGINS)[number], isTerse: boolean, aside_mm: number, issue: Issue | null): ViewDraft {
  const xs = iso.nodes.map(({ place }) => place.x);
  const ys = iso.nodes.map(({ place }) => place.y);
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const mmPerMetre = mmPerMetreIn(iso, room, sizes, margin);
  // The parts of the discharge assembly are told beside its first node: they get the more paper.
  const isBelow = (iso.nodes[0]?.place.y ?? 0) <= (bottom + top) / 2;
  const [middleX, middleY] = [(room.left + room.right) / 2, (room.top + room.bottom) / 2 + (isBelow ? -aside_mm : aside_mm)];
  const view = viewDraft(viewFrame(1000 / mmPerMetre, (left + right) / 2, (bottom + top) / 2, middleX, middleY), sizes, lengths, room);
  drawNorth(view, iso, room.left + 11 * sizes.factor, room.top + 9 * sizes.factor);
  drawIsometric(view, iso);
  inLayer(view, 'cylinders', () => drawIsometricAssembly(view, iso));
  inLayer(view, 'findings', () => cloudIsometric(view, iso, issue));
  labelIsometricNodes(view, iso, isTerse);
  inLayer(view, 'pipe', () => labelIsometricRuns(view, iso));
  inLayer(view, 'supports', () => labelLooseSupports(view, iso));
  settleLabels(view);
  return view;
}

/** The drawing in which most labels find room: all that stands at a node if it can be, else less. */
function bestDrawing(iso: Isometric, room: PaperBox, sizes: TypeSizes, lengths: Settings['lengths'], aside_mm: number, issue: Issue | null): ViewDraft | undefined {
  let best: ViewDraft | undefined;
  for (const [isTerse, margin] of [false, true].flatMap((terse) => MARGINS.map((each) => [terse, each] as const))) {
    const view = composeIsometric(iso, room, sizes, lengths, margin, isTerse, aside_mm, issue);
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

/** An isometric on its paper, and whether its table stands beside it. */
interface Placed {
  readonly view: ViewDraft;
  readonly drawn: DraftView;
  /** Its table. */
  readonly marks: readonly Mark[];
  readonly isBeside: boolean;
}

/** A network on some paper; undefined where it has no room at all. */
function placeIsometric(iso: Isometric, table: Table, area: PaperBox, layout: SheetLayout, lengths: Settings['lengths'], issue: Issue | null, aside_mm = 0): Placed | undefined {
  const { sizes } = layout;
  // No strip with a check bar below: nothing here is to scale.
  const room = { ...area, bottom: area.bottom - VIEW_TITLE_mm * sizes.factor };
  const laid = layTable(table, TABLE_mm * sizes.factor, sizes);
  const gap = 6 * sizes.factor;
  const beside = { ...room, right: room.right - laid.width_mm - gap };
  const hasRoomBeside = beside.right - beside.left >= LEAST_SHARE * (room.right - room.left) && tableHeight_mm(laid) <= area.bottom - area.top;
  const small = hasRoomBeside ? bestDrawing(iso, beside, sizes, lengths, aside_mm, issue) : undefined;
  const isBeside = small?.unplaced.length === 0;
  const view = isBeside ? small : bestDrawing(iso, room, sizes, lengths, aside_mm, issue);
  if (!view) return undefined;
  const { id, name } = iso.network.network;
  const marks = [...marksOf(view), ...isometricTitle(iso, isBeside ? beside : room, layout)];
  return { view, isBeside, drawn: { key: `isometric/${id}`, title: `Isometric: ${name}`, marks, scale: null, used: view.used, ground: null, again: null }, marks: isBeside ? drawTable(laid, beside.right + gap, area.top) : [] };
}

/** A network on half a sheet, its table beside it; undefined where it needs more, or would be drawn smaller there. */
function onHalf(iso: Isometric, table: Table, half: PaperBox, layout: SheetLayout, lengths: Settings['lengths'], issue: Issue | null): Placed | undefined {
  const [roomy = MARGINS[0]] = MARGINS;
  if (!roomy || mmPerMetreIn(iso, half, layout.sizes, roomy) < mmPerMetreIn(iso, layout.area, layout.sizes, roomy) * (1 - 1e-9)) return undefined;
  const placed = placeIsometric(iso, table, half, layout, lengths, issue, ASIDE_mm * layout.sizes.factor);
  return placed?.isBeside ? placed : undefined;
}

/** The isometric of each network that has pipe, its table of nodes beside it where both have room. Two small ones that follow each other share a sheet. */
export function isometricSheets({ derived, layout, issue }: ViewSet): IsometricSheets {
  const { area, sizes } = layout;
  const { lengths } = derived.plan.settings;
  const middle = (area.top + area.bottom) / 2;
  const [upper, lower] = [{ ...area, bottom: middle - (HALVES_APART_mm * sizes.factor) / 2 }, { ...area, top: middle + (HALVES_APART_mm * sizes.factor) / 2 }];
  const all = derived.networks
    .filter(({ pipes }) => pipes.length > 0)
    .map((network) => {
      const iso = layoutIsometric(network);
      return { name: network.network.name, iso, table: isometricTable(iso, lengths) };
    });
  const sheets: IsometricSheets = { drafts: [], tables: [] };
  const put = (names: readonly string[], placed: readonly Placed[]): void => {
    const unplaced = placed.reduce((sum, { view }) => sum + view.unplaced.length, 0);
    sheets.drafts.push({
      title: names.length > 1 ? `Isometrics: ${names.join(', ')}` : `Isometric: ${names[0]}`,
      scale: 'not to scale',
      marks: placed.flatMap(({ marks }) => marks),
      views: placed.map(({ drawn }) => drawn),
      hasViews: false,
      hasPlan: false,
      used: new Set(placed.flatMap(({ view }) => [...view.used])),
      remarks: [...missingLabels(unplaced), ...(placed.every(({ isBeside }) => isBeside) ? [] : ['Its nodes are listed on the sheets after the isometrics'])],
    });
  };
  for (let i = 0; i < all.length; i += 1) {
    const [one, next] = [all[i], all[i + 1]];
    if (!one) continue;
    const first = next && onHalf(one.iso, one.table, upper, layout, lengths, issue);
    const second = first && onHalf(next.iso, next.table, lower, layout, lengths, issue);
    if (first && second) {
      put([one.name, next.name], [first, second]);
      i += 1;
      continue;
    }
    const placed = placeIsometric(one.iso, one.table, area, layout, lengths, issue);
    if (!placed?.isBeside) sheets.tables.push(one.table);
    if (placed) put([one.name], [placed]);
  }
  return sheets;
}
