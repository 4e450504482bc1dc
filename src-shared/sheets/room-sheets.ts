import { coarserUntil, ordinaryScales } from '../paper/scales.ts';
import { type DraftView, shiftView } from './draft-view.ts';
import { type FlowBlock, flowTables } from './flow.ts';
import { shiftMarks } from './marks.ts';
import { type PlanContent, contentBounds, networkInRoom, planContents } from './plan-content.ts';
import { planDraftView, scaleOfViews } from './plan-draft-view.ts';
import { type ComposedView, type PlanViewOptions, composePlanView, fitsPaper } from './plan-view.ts';
import { sheetTitle } from './series.ts';
import type { Mark, SheetField } from './sheet.ts';
import { type SheetDraft, VIEW_TITLE_mm, missingLabels, viewTitle } from './sheet-draft.ts';
import type { Table } from './tables.ts';
import { type PaperBox, boxHolds, marksBox } from './text-box.ts';
import { type ViewSet, remarksOn, viewArea, viewRoom } from './view-set.ts';

/** What one room is drawn for. */
export interface RoomDrawing {
  /** "Field sheet". */
  readonly title: string;
  /** The table that stands below the drawing of each room. */
  readonly tablesOf?: (parts: readonly PlanContent[]) => ReadonlyMap<PlanContent, Table>;
  /** Beginning of the keys of its views. */
  readonly kind: string;
  readonly isWanted: (content: PlanContent) => boolean;
  readonly draw: NonNullable<PlanViewOptions['draw']>;
}

/** Between two drawings, and between a drawing and its table [mm at factor 1]. */
const GAP_mm = 5;

/** Paper that is worth parting drawings from their tables for, in sheets. */
const MUCH = 0.4;

/** Counts for more than any number of labels without room. */
const OUTSIDE = 1e6;

/** Every served space of a plan by itself, with the pipe and cylinders that stand in its room. */
export function roomParts({ derived, datums }: ViewSet): PlanContent[] {
  return planContents(derived).flatMap((content) =>
    content.spaces
      .filter(({ key }) => datums.has(key))
      .flatMap((space): PlanContent[] => {
        const room = content.rooms.find(({ enclosure }) => enclosure.id === space.enclosure.id);
        if (!room) return [];
        const networks = content.networks.flatMap((network) => networkInRoom(network, room) ?? []);
        return [{ ...content, title: space.name, rooms: [room], spaces: [space], solids: [], level: { ...content.level, dimensions: {}, notes: {} }, networks }];
      }),
  );
}

/** The finest ordinary scale at which every label finds room, else the one with the fewest that do not. */
function bestView(set: ViewSet, content: PlanContent, draw: RoomDrawing['draw']): ComposedView | undefined {
  const { layout, derived } = set;
  const { lengths } = derived.plan.settings;
  const bounds = contentBounds(content);
  if (!bounds) return undefined;
  const room = viewRoom(layout);
  const fits = (ratio: number): boolean => fitsPaper(bounds, ratio, room, layout.sizes.factor);
  const ordinary = ordinaryScales(lengths).filter(fits);
  const scales = ordinary.length > 0 ? ordinary : [coarserUntil(fits, ordinaryScales(lengths).at(-1) ?? 100)];
  let best: ComposedView | undefined;
  let least = Infinity;
  for (const scale of scales) {
    const view = composePlanView(content, { ...set, scale, sizes: layout.sizes, lengths, room, bounds, draw });
    if (!view) return undefined;
    const fault = view.unplaced.length + (boxHolds({ left: room.left - 2, top: room.top - 2, right: room.right + 2, bottom: room.bottom + 1 }, view.box) ? 0 : OUTSIDE);
    if (fault < least) [best, least] = [view, fault];
    if (fault === 0) break;
  }
  return best;
}

/** A room's drawing with its title, from the top left corner of its own paper. */
interface RoomBlock {
  readonly content: PlanContent;
  readonly view: DraftView;
  readonly composed: ComposedView;
  readonly width_mm: number;
  readonly height_mm: number;
}

function roomBlock(set: ViewSet, { title: what, kind, draw }: RoomDrawing, content: PlanContent): RoomBlock[] {
  const { layout, derived } = set;
  const composed = bestView(set, content, draw);
  const bounds = contentBounds(content);
  if (!composed || !bounds) return [];
  const { box, scale, marks } = composed;
  const title = `${what}: ${content.title}`;
  const height = box.bottom - box.top;
  const under = viewTitle(0, height, title, scale, derived.plan.settings.lengths, layout);
  const width_mm = Math.max(box.right - box.left, under.width_mm);
  const by = { dx: (width_mm - box.right - box.left) / 2, dy: -box.top };
  const named = { key: `${kind}/${content.spaces[0]?.key ?? ''}`, title, options: { draw, bounds } };
  return [
    {
      content,
      view: planDraftView(set, content, named, composed, viewRoom(layout), [...shiftMarks(marks, by.dx, by.dy), ...under.marks], by),
      composed,
      width_mm,
      height_mm: height + VIEW_TITLE_mm * layout.sizes.factor,
    },
  ];
}

/** Drawings in rows, in their order, as many beside each other as the paper is wide. */
function inRows(blocks: readonly RoomBlock[], width_mm: number, gap: number): RoomBlock[][] {
  const rows: RoomBlock[][] = [];
  for (const block of blocks) {
    const row = rows.at(-1);
    if (row && row.reduce((sum, one) => sum + one.width_mm + gap, block.width_mm) <= width_mm) row.push(block);
    else rows.push([block]);
  }
  return rows;
}

/** A sheet while rooms and tables are put on it. */
interface Page {
  readonly blocks: RoomBlock[];
  readonly views: DraftView[];
  readonly marks: Mark[];
  readonly fields: SheetField[];
  readonly tables: string[];
}

/** "Field sheets: Room 201, Room 202". */
function titleOf(what: string, blocks: readonly RoomBlock[]): string[] {
  const names = blocks.map(({ content }) => content.title);
  if (names.length === 0) return [];
  return [`${what}${names.length > 1 ? 's' : ''}: ${names.length > 3 ? `${names[0]} to ${names.at(-1)}` : names.join(', ')}`];
}

/** "Field verification: Room 201, Room 202" of tables that are called the same but for their room. */
function withoutRepeats(titles: readonly string[]): string[] {
  const rooms = new Map<string, string[]>();
  for (const title of titles) {
    const [what = '', ...room] = title.split(': ');
    rooms.set(what, [...(rooms.get(what) ?? []), ...(room.length > 0 ? [room.join(': ')] : [])]);
  }
  return [...rooms].map(([what, names]) => (names.length > 0 ? `${what}: ${names.join(', ')}` : what));
}

function draftOf(set: ViewSet, what: string, { blocks, views, marks, fields, tables }: Page): SheetDraft {
  const drawn = titleOf(what, blocks);
  const told = withoutRepeats(tables);
  const unplaced = blocks.reduce((sum, { composed }) => sum + composed.unplaced.length, 0);
  return {
    title: sheetTitle([...drawn, ...(drawn.length > 0 ? told.map((words) => words.split(': ', 1)[0] ?? words) : told)]),
    ...(drawn[0] === undefined ? {} : { home: drawn[0] }),
    tables: told,
    scale: views.length > 0 ? scaleOfViews(views, set.derived.plan.settings.lengths) : 'no scale',
    marks,
    views,
    fields,
    hasViews: views.length > 0,
    hasPlan: views.length > 0,
    used: new Set(blocks.flatMap(({ composed }) => [...composed.used])),
    remarks: [...new Set(unplaced > 0 ? missingLabels(unplaced) : blocks.flatMap(({ composed }) => remarksOn(set, composed)))],
  };
}

/** Puts groups of rows on sheets, below each group the tables of its rooms. */
function arranged({ layout }: ViewSet, groups: readonly (readonly RoomBlock[][])[], tables: ReadonlyMap<PlanContent, Table>): { readonly pages: readonly Page[]; readonly top: number } {
  const { area, tableColumns, sizes } = layout;
  const gap = GAP_mm * sizes.factor;
  const low = viewArea(layout).bottom;
  const pages: Page[] = [];
  let top = area.bottom;
  for (const rows of groups) {
    for (const row of rows) {
      const height = Math.max(...row.map(({ height_mm }) => height_mm));
      if (pages.length === 0 || top + height > low) {
        pages.push({ blocks: [], views: [], marks: [], fields: [], tables: [] });
        top = area.top;
      }
      const page = pages.at(-1);
      const free = (area.right - area.left - row.reduce((sum, { width_mm }) => sum + width_mm, 0)) / (row.length + 1);
      let x = area.left + free;
      for (const block of row) {
        page?.blocks.push(block);
        page?.views.push(shiftView(block.view, x, top));
        x += block.width_mm + free;
      }
      top += height + gap;
    }
    const own = rows.flat().flatMap(({ content }): FlowBlock[] => {
      const table = tables.get(content);
      return table ? [{ table, span: 'full' }] : [];
    });
    if (own.length === 0) continue;
    const page = pages.at(-1);
    const [first, ...others] = flowTables(own, area, tableColumns, sizes, [{ ...area, top, bottom: low }], true);
    if (first) {
      page?.marks.push(...first.marks);
      page?.fields.push(...first.fields);
      page?.tables.push(...first.titles);
    }
    pages.push(...others.map(({ marks, fields, titles }): Page => ({ blocks: [], views: [], marks: [...marks], fields: [...fields], tables: [...titles] })));
    const last = others.at(-1) ?? first;
    if (last && last.marks.length > 0) top = marksBox(last.marks).bottom + gap;
  }
  return { pages, top };
}

/**
 * Served spaces that are wanted, drawn side by side in their order, and below each row of drawings the tables of its
 * rooms: what is measured stands beside where it is measured, and no room has a sheet of its own that it does not fill.
 * Where that takes more sheets, as with rooms that each fill the paper, all drawings come first.
 */
export function roomSheets(set: ViewSet, drawing: RoomDrawing): { readonly drafts: SheetDraft[]; readonly left: PaperBox | undefined } {
  const { layout } = set;
  const { area, sizes } = layout;
  const blocks = roomParts(set)
    .filter(drawing.isWanted)
    .flatMap((content) => roomBlock(set, drawing, content));
  const tables = drawing.tablesOf?.(blocks.map(({ content }) => content)) ?? new Map<PlanContent, Table>();
  const rows = inRows(blocks, area.right - area.left, GAP_mm * sizes.factor);
  const [byRow, drawingsFirst] = [rows.map((row) => [row]), [rows]].map((groups) => arranged(set, groups, tables));
  // Paper used, in sheets: what is left of the last one serves what follows.
  const used = ({ pages, top }: { readonly pages: readonly Page[]; readonly top: number }): number => pages.length + (top - area.top) / (area.bottom - area.top);
  const best = byRow && drawingsFirst && used(drawingsFirst) < used(byRow) - MUCH ? drawingsFirst : byRow;
  const last = best?.pages.at(-1);
  if (!best || !last) return { drafts: [], left: undefined };
  return { drafts: best.pages.map((page) => draftOf(set, drawing.title, page)), left: { ...area, top: best.top, bottom: last.views.length > 0 ? viewArea(layout).bottom : area.bottom } };
}
