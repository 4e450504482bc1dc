import { type DraftView, shiftView } from './draft-view.ts';
import { shiftMarks } from './marks.ts';
import { type PlanContent, contentBounds } from './plan-content.ts';
import { planDraftView, planKey } from './plan-draft-view.ts';
import { PLAN_MARGIN_mm, composePlanView, fitsPaper } from './plan-view.ts';
import { coarserUntil, ordinaryScales, scaleName } from '../paper/scales.ts';
import type { SectionCut } from './section-cuts.ts';
import { sectionDraftView } from './section-draft-view.ts';
import { composeSection, sectionSize, sectionTitle } from './section-view.ts';
import { type SheetDraft, VIEW_TITLE_mm, missingLabels, viewTitle } from './sheet-draft.ts';
import type { SymbolName } from './symbol-names.ts';
import type { PaperBox } from './text-box.ts';
import { type ViewSet, viewArea } from './view-set.ts';

/** Sheets of small views, and the paper that the last of them leaves for tables. */
export interface BlockSheets {
  readonly drafts: SheetDraft[];
  readonly left: PaperBox | undefined;
}

/** A view with its title, from the top left corner of its own paper. */
export interface ViewBlock {
  /** Rooms whose plans and letters of the sections that it holds. */
  readonly plans: readonly string[];
  readonly sections: readonly string[];
  /** Networks whose cylinder walls it holds. */
  readonly walls?: readonly string[];
  readonly scale: number;
  readonly views: readonly DraftView[];
  readonly used: ReadonlySet<SymbolName>;
  /** How many labels found no room. */
  readonly unplaced: number;
  readonly width_mm: number;
  readonly height_mm: number;
}

/** Names of the views on one sheet: "Plans of Room 201, Room 202; section A". */
function blockTitle(blocks: readonly ViewBlock[]): string {
  const plans = blocks.flatMap((block) => block.plans);
  const letters = blocks.flatMap(({ sections }) => sections);
  const planWords = plans.length === 0 ? '' : plans.length <= 3 ? `Plan of ${plans.join(', ')}` : `Plans of ${plans[0]} to ${plans.at(-1)}`;
  const sectionWords = letters.length === 0 ? '' : letters.length === 1 ? `section ${letters[0]}` : `sections ${letters.join(', ')}`;
  const walls = blocks.flatMap((block) => block.walls ?? []);
  const wallWords = walls.length === 0 ? '' : walls.length <= 2 ? `cylinder ${walls.length === 1 ? 'wall' : 'walls'} of ${walls.join(', ')}` : `cylinder walls of ${walls[0]} to ${walls.at(-1)}`;
  const words = [planWords, sectionWords, wallWords].filter(Boolean).join('; ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

const remarksOf = (blocks: readonly ViewBlock[]): string[] => missingLabels(blocks.reduce((sum, { unplaced }) => sum + unplaced, 0));

/** Puts views side by side in rows, as many on each sheet as have room, in their order. */
export function packBlocks(set: ViewSet, blocks: readonly ViewBlock[]): BlockSheets {
  const { layout, derived } = set;
  const area = viewArea(layout);
  const gap = 7 * layout.sizes.factor;
  if (blocks.length === 0) return { drafts: [], left: undefined };
  const rows: ViewBlock[][] = [];
  for (const block of blocks) {
    const row = rows.at(-1);
    const width = row?.reduce((sum, one) => sum + one.width_mm + gap, 0) ?? 0;
    if (row && width + block.width_mm <= area.right - area.left) row.push(block);
    else rows.push([block]);
  }
  const drafts: SheetDraft[] = [];
  let top = area.top;
  let placed: { block: ViewBlock; views: DraftView[] }[] = [];
  const finish = (): void => {
    const scales = new Set(placed.map(({ block }) => block.scale));
    const [only] = scales;
    drafts.push({
      title: blockTitle(placed.map(({ block }) => block)),
      scale: scales.size === 1 && only !== undefined ? scaleName(only, derived.plan.settings.lengths) : 'as shown',
      marks: [],
      views: placed.flatMap(({ views }) => views),
      hasViews: true,
      hasPlan: placed.some(({ block }) => block.plans.length > 0),
      used: new Set(placed.flatMap(({ block }) => [...block.used])),
      remarks: remarksOf(placed.map(({ block }) => block)),
    });
    placed = [];
  };
  for (const row of rows) {
    const height = Math.max(...row.map(({ height_mm }) => height_mm));
    if (top > area.top && top + height > area.bottom) {
      finish();
      top = area.top;
    }
    const width = row.reduce((sum, { width_mm }) => sum + width_mm + gap, -gap);
    let left = area.left + Math.max(0, (area.right - area.left - width) / 2);
    for (const block of row) {
      const [x, y] = [left, top];
      placed.push({ block, views: block.views.map((view) => shiftView(view, x, y)) });
      left += block.width_mm + gap;
    }
    top += height + gap;
  }
  finish();
  return { drafts, left: { ...area, top } };
}

/** Sections as blocks, all to one scale: the coarsest that any of them needs, so that they can be compared. */
export function sectionBlocks(set: ViewSet, cuts: readonly SectionCut[]): ViewBlock[] {
  const scale = Math.max(...cuts.map((cut) => scaleAlone(set, cut)));
  return cuts.map((cut) => sectionBlock(set, cut, scale));
}

/** Scale that a room plan is drawn at where the user leaves it open, text size counted in. */
const ROOM_SCALE = 60;

/**
 * Plans of single rooms as blocks, all to one scale, each with its section below where the paper is high enough.
 * @returns the blocks, and the sections that are in them
 */
export function roomBlocks(set: ViewSet, rooms: readonly PlanContent[]): { readonly blocks: ViewBlock[]; readonly placedCuts: ReadonlySet<SectionCut> } {
  const { layout, derived } = set;
  const { sizes } = layout;
  const { lengths } = derived.plan.settings;
  const area = viewArea(layout);
  const paper = { ...area, bottom: area.bottom - VIEW_TITLE_mm * sizes.factor };
  const bounds = rooms.map(contentBounds);
  const scale = ordinaryScales(lengths).find((ratio) => ratio * sizes.factor >= ROOM_SCALE && bounds.every((box) => !box || fitsPaper(box, ratio, paper, sizes.factor)));
  const placedCuts = new Set<SectionCut>();
  if (scale === undefined) return { blocks: [], placedCuts };
  const blocks = rooms.flatMap((content, i): ViewBlock[] => {
    const box = bounds[i];
    if (!box) return [];
    const margin = 2 * PLAN_MARGIN_mm * sizes.factor;
    const room = {
      left: 0,
      top: 0,
      right: Math.min(paper.right - paper.left, ((box.maxX - box.minX) * 1000) / scale + 2 * margin),
      bottom: Math.min(paper.bottom - paper.top, ((box.maxY - box.minY) * 1000) / scale + 2 * margin),
    };
    const key = planKey(content, content.rooms[0]?.enclosure.id);
    const view = composePlanView(content, { ...set, viewKey: key, scale, sizes, lengths, room });
    if (!view) return [];
    const words = `Plan: ${content.title}`;
    const title = viewTitle(0, view.box.bottom - view.box.top, words, scale, lengths, layout);
    const width = Math.max(view.box.right - view.box.left, title.width_mm);
    const by = { dx: -view.box.left + (width - view.box.right + view.box.left) / 2, dy: -view.box.top };
    const plan: ViewBlock = {
      plans: [content.title],
      sections: [],
      scale,
      views: [planDraftView(set, content, { key, title: words }, view, room, [...shiftMarks(view.marks, by.dx, by.dy), ...title.marks], by)],
      used: view.used,
      unplaced: view.unplaced.length,
      width_mm: width,
      height_mm: view.box.bottom - view.box.top + VIEW_TITLE_mm * sizes.factor,
    };
    const cut = set.cuts.find((one) => content.layer === 'room' && one.room.key === content.rooms[0]?.key);
    const section = cut && sectionBlock(set, cut, scale);
    const gap = 6 * sizes.factor;
    if (!cut || !section || plan.height_mm + gap + section.height_mm > area.bottom - area.top) return [plan];
    placedCuts.add(cut);
    return [stacked(plan, section, gap)];
  });
  return { blocks, placedCuts };
}

/** Two blocks one below the other, their middles in line. */
function stacked(above: ViewBlock, below: ViewBlock, gap: number): ViewBlock {
  const width = Math.max(above.width_mm, below.width_mm);
  return {
    ...above,
    sections: below.sections,
    views: [
      ...above.views.map((view) => shiftView(view, (width - above.width_mm) / 2, 0)),
      ...below.views.map((view) => shiftView(view, (width - below.width_mm) / 2, above.height_mm + gap)),
    ],
    used: new Set([...above.used, ...below.used]),
    unplaced: above.unplaced + below.unplaced,
    width_mm: width,
    height_mm: above.height_mm + gap + below.height_mm,
  };
}

function sectionBlock(set: ViewSet, cut: SectionCut, scale: number): ViewBlock {
  const { layout, derived } = set;
  const { sizes } = layout;
  const { lengths } = derived.plan.settings;
  const { width_mm, height_mm } = sectionSize(cut, scale, sizes);
  const section = composeSection(derived, cut, scale, sizes, lengths, { left: 0, top: 0, right: width_mm, bottom: height_mm });
  const { left, top, right, bottom } = section.box;
  const title = viewTitle(0, bottom - top, sectionTitle(cut), scale, lengths, layout);
  const width = Math.max(right - left, title.width_mm);
  return {
    plans: [],
    sections: [cut.letter],
    scale,
    views: [sectionDraftView(set, cut, section, [...shiftMarks(section.marks, (width - right + left) / 2 - left, -top), ...shiftMarks(title.marks, (width - title.width_mm) / 2, 0)])],
    used: section.used,
    unplaced: section.unplaced.length,
    width_mm: width,
    height_mm: bottom - top + VIEW_TITLE_mm * sizes.factor,
  };
}

/** The finest scale at which a section fits on a sheet of its own: the user's, an ordinary one, or coarser where it must. */
function scaleAlone({ layout, derived, scale: wish }: ViewSet, cut: SectionCut): number {
  const { sizes } = layout;
  const area = viewArea(layout);
  const fits = (scale: number): boolean => {
    const { width_mm, height_mm } = sectionSize(cut, scale, sizes);
    return width_mm <= area.right - area.left && height_mm + VIEW_TITLE_mm * sizes.factor <= area.bottom - area.top;
  };
  const ordinary = ordinaryScales(derived.plan.settings.lengths);
  const wished = wish === 'auto' ? ordinary : [wish, ...ordinary.filter((scale) => scale > wish)];
  return wished.find(fits) ?? coarserUntil(fits, wished.at(-1) ?? 100);
}
