import type { Derived } from '../derived/derived.ts';
import type { Box } from '../geometry/outline.ts';
import type { UnderlayDrawing } from '../underlay/drawing.ts';
import type { Datum } from './datum.ts';
import type { NumberedFinding } from './findings-table.ts';
import type { SheetLayout } from './frame.ts';
import { shiftMarks, text } from './marks.ts';
import { type PlanContent, contentBounds } from './plan-content.ts';
import { type ComposedView, PLAN_MARGIN_mm, composePlanView, fitsPaper } from './plan-view.ts';
import { STRIP_HEIGHT_mm } from './scale-bars.ts';
import { ordinaryScales, scaleName } from './scales.ts';
import { nozzleSchedule } from './schedules.ts';
import type { SectionCut } from './section-cuts.ts';
import { composeSection, sectionSize, sectionTitle } from './section-view.ts';
import type { Mark, SheetOptions } from './sheet.ts';
import { type SheetDraft, VIEW_TITLE_mm, viewTitle } from './sheet-draft.ts';
import type { SymbolName } from './symbol-names.ts';
import { drawTable, layTable, tableHeight_mm } from './tables.ts';
import { type PaperBox, wrapText } from './text-box.ts';

/** What all view sheets of a set share. */
export interface ViewSet {
  readonly derived: Derived;
  readonly layout: SheetLayout;
  readonly drawings: ReadonlyMap<string, UnderlayDrawing>;
  readonly cuts: readonly SectionCut[];
  readonly findings: readonly NumberedFinding[];
  readonly datums: ReadonlyMap<string, Datum>;
  readonly scale: SheetOptions['scale'];
}

/** View sheets of one plan content, and what found its place on them. */
export interface ViewSheets {
  readonly drafts: SheetDraft[];
  readonly placedCuts: ReadonlySet<SectionCut>;
  /** The nozzles' own table stands on the sheet. */
  readonly hasSchedule: boolean;
}

/** Paper for views: the drawing area above the strip with the check bar. */
export const viewArea = ({ area, sizes }: SheetLayout): PaperBox => ({ ...area, bottom: area.bottom - (STRIP_HEIGHT_mm + 2) * sizes.factor });

const roomAbove = (box: PaperBox, title_mm: number): PaperBox => ({ ...box, bottom: box.bottom - title_mm });

/**
 * The scale that a content is drawn at: the user's, or the finest at which every label finds room.
 * @returns undefined when the level does not fit on the paper at any ordinary scale
 */
function composeAtBestScale(set: ViewSet, content: PlanContent, bounds: Box): ComposedView | undefined {
  const { layout, derived } = set;
  const { lengths } = derived.plan.settings;
  const room = roomAbove(viewArea(layout), VIEW_TITLE_mm * layout.sizes.factor);
  const scales = set.scale === 'auto' ? ordinaryScales(lengths) : [set.scale];
  let best: ComposedView | undefined;
  for (const scale of scales) {
    if (!fitsPaper(bounds, scale, room, layout.sizes.factor)) continue;
    const view = composePlanView(content, { ...set, scale, sizes: layout.sizes, lengths, room });
    if (!view) return undefined;
    if (!best || view.unplaced.length < best.unplaced.length) best = view;
    if (view.unplaced.length === 0) break;
  }
  return best;
}

/** Sheets for one layer of a level: one, or several with match lines where the paper is too small for the scale. */
export function planSheets(set: ViewSet, content: PlanContent): ViewSheets {
  const bounds = contentBounds(content);
  if (!bounds) return { drafts: [], placedCuts: new Set(), hasSchedule: false };
  const whole = composeAtBestScale(set, content, bounds);
  if (!whole) return { drafts: partSheets(set, content, bounds), placedCuts: new Set(), hasSchedule: false };
  return wholeSheet(set, content, whole);
}

const planTitle = ({ title }: PlanContent): string => `Nozzle and pipe plan: ${title}`;

function wholeSheet(set: ViewSet, content: PlanContent, view: ComposedView): ViewSheets {
  const { layout, derived } = set;
  const { factor } = layout.sizes;
  const { lengths } = derived.plan.settings;
  const area = viewArea(layout);
  const gap = 6 * factor;
  const titleHeight = VIEW_TITLE_mm * factor;
  const viewHeight = view.box.bottom - view.box.top;
  const extras: { marks: Mark[]; used: ReadonlySet<SymbolName>; cut?: SectionCut }[] = [];

  // Whatever fits below the plan goes there: sections first, then the nozzles' own table.
  let below = area.top + viewHeight + titleHeight + gap;
  let left = area.left;
  let rowBottom = below;
  const cuts = set.cuts.filter(({ room }) => content.layer === 'room' && room.level.id === content.level.id);
  for (const cut of cuts) {
    const need = sectionSize(cut, view.scale, layout.sizes);
    const box = { left, top: below, right: left + need.width_mm, bottom: below + need.height_mm };
    if (box.right > area.right || box.bottom + titleHeight > area.bottom) continue;
    const section = composeSection(derived, cut, view.scale, layout.sizes, lengths, box);
    if (section.unplaced.length > 0) continue;
    const title = viewTitle(section.box.left, section.box.bottom, sectionTitle(cut), view.scale, lengths, layout);
    if (section.box.left + title.width_mm > area.right) continue;
    extras.push({ marks: [...section.marks, ...title.marks], used: section.used, cut });
    left = Math.max(box.right, section.box.left + title.width_mm) + gap;
    rowBottom = Math.max(rowBottom, section.box.bottom + titleHeight + gap);
  }
  below = rowBottom;
  const ids = new Set(content.networks.flatMap(({ nozzles }) => nozzles.map(({ ref }) => `${ref.network}/${ref.id}`)));
  const table = layTable(
    nozzleSchedule(derived, ({ ref }) => ids.has(`${ref.network}/${ref.id}`)),
    area.right - area.left,
    layout.sizes,
  );
  const hasSchedule = ids.size > 0 && below + tableHeight_mm(table) <= area.bottom;
  if (hasSchedule) extras.push({ marks: drawTable(table, area.left, area.bottom - tableHeight_mm(table)), used: new Set() });

  // Alone on its sheet a plan stays in the middle; with company it moves up and keeps its side room.
  const roomHeight = area.bottom - area.top - titleHeight;
  const free = hasSchedule && extras.length === 1 ? (roomHeight - tableHeight_mm(table) - gap - viewHeight) / 2 : 0;
  const dy = extras.length > 0 ? area.top + Math.max(0, free) - view.box.top : 0;
  const bottom = view.box.bottom + dy;
  const title = viewTitle(view.box.left, bottom, `Plan: ${content.title}`, view.scale, lengths, layout);
  const x = Math.max(area.left, Math.min(view.box.left, area.right - title.width_mm));
  const used = new Set<SymbolName>([...view.used, ...extras.flatMap((extra) => [...extra.used])]);
  return {
    drafts: [
      {
        title: planTitle(content),
        scale: scaleName(view.scale, lengths),
        marks: [
          ...shiftMarks(view.marks, 0, dy),
          ...shiftMarks(title.marks, x - view.box.left, 0),
          ...unplacedNote(view, x + title.width_mm + 4 * factor, bottom, area.right, layout),
          ...extras.flatMap(({ marks }) => marks),
        ],
        hasViews: true,
        hasPlan: true,
        used,
      },
    ],
    placedCuts: new Set(extras.flatMap(({ cut }) => (cut ? [cut] : []))),
    hasSchedule,
  };
}

/** Says beside the view's title how many labels had no room, so that nobody takes a bare pipe for a finished one. */
function unplacedNote(view: ComposedView, left: number, top: number, right: number, { sizes }: SheetLayout): Mark[] {
  if (view.unplaced.length === 0) return [];
  const count = view.unplaced.length;
  const words = `${count} ${count === 1 ? 'label' : 'labels'} had no room at this scale: see the schedules, or print larger.`;
  return wrapText(words, Math.max(40 * sizes.factor, right - left), sizes.note_mm, 'bold').map((part, i) =>
    text(left, top + (i + 1) * sizes.note_mm * 1.7, part, { height_mm: sizes.note_mm, font: 'bold' }),
  );
}

/** Parts of a level that is larger than the paper, row by row from the north-west. */
function partSheets(set: ViewSet, content: PlanContent, bounds: Box): SheetDraft[] {
  const { layout, derived } = set;
  const { sizes } = layout;
  const { lengths } = derived.plan.settings;
  const scale = set.scale === 'auto' ? (ordinaryScales(lengths).at(-1) ?? 100) : set.scale;
  const room = roomAbove(viewArea(layout), VIEW_TITLE_mm * sizes.factor);
  const margin_m = (PLAN_MARGIN_mm * sizes.factor * scale) / 1000;
  const outer = { minX: bounds.minX - margin_m, minY: bounds.minY - margin_m, maxX: bounds.maxX + margin_m, maxY: bounds.maxY + margin_m };
  const widest_m = ((room.right - room.left - 2) * scale) / 1000;
  const tallest_m = ((room.bottom - room.top - 2) * scale) / 1000;
  const across = Math.min(MOST_PARTS, Math.ceil((outer.maxX - outer.minX) / widest_m));
  const down = Math.min(MOST_PARTS, Math.ceil((outer.maxY - outer.minY) / tallest_m));
  const drafts: SheetDraft[] = [];
  for (let row = 0; row < down; row += 1) {
    for (let column = 0; column < across; column += 1) {
      const width = (outer.maxX - outer.minX) / across;
      const height = (outer.maxY - outer.minY) / down;
      const minX = outer.minX + column * width;
      const maxY = outer.maxY - row * height;
      const window = { minX, minY: maxY - height, maxX: minX + width, maxY };
      const view = composePlanView(content, { ...set, scale, sizes, lengths, room, window });
      if (!view || view.used.size === 0) continue;
      const part = `row ${row + 1} of ${down}, column ${column + 1} of ${across}`;
      const title = viewTitle(room.left, room.bottom, `Part: ${part}`, scale, lengths, layout);
      drafts.push({
        title: `${planTitle(content)}, ${part}`,
        scale: scaleName(scale, lengths),
        marks: [...view.marks, ...title.marks, ...unplacedNote(view, room.left + title.width_mm + 4 * sizes.factor, room.bottom, room.right, layout)],
        hasViews: true,
        hasPlan: true,
        used: view.used,
      });
    }
  }
  return drafts;
}

/** Parts along one side of a level at most: beyond it the scale was a slip, not a wish. */
const MOST_PARTS = 20;

/** Sheets for the sections that found no place beside their plan: as many on each as have room. */
export function sectionSheets(set: ViewSet, cuts: readonly SectionCut[]): SheetDraft[] {
  const { layout, derived } = set;
  const { sizes } = layout;
  const { lengths } = derived.plan.settings;
  const area = viewArea(layout);
  const gap = 7 * sizes.factor;
  const titleHeight = VIEW_TITLE_mm * sizes.factor;
  const drafts: SheetDraft[] = [];
  let marks: Mark[] = [];
  let letters: string[] = [];
  let scales = new Set<number>();
  let used = new Set<SymbolName>();
  let [left, top, rowBottom] = [area.left, area.top, area.top];
  const finish = (): void => {
    if (letters.length > 0) {
      const names = letters.length === 1 ? `Section ${letters[0]}` : `Sections ${letters[0]} to ${letters.at(-1)}`;
      const [only] = scales;
      drafts.push({ title: names, scale: scales.size === 1 && only !== undefined ? scaleName(only, lengths) : 'as shown', marks, hasViews: true, hasPlan: false, used });
    }
    [marks, letters, scales, used] = [[], [], new Set(), new Set()];
    [left, top, rowBottom] = [area.left, area.top, area.top];
  };
  const alone = (cut: SectionCut): number => {
    const fits = (scale: number): boolean => {
      const { width_mm, height_mm } = sectionSize(cut, scale, sizes);
      return width_mm <= area.right - area.left && height_mm + titleHeight <= area.bottom - area.top;
    };
    const wished = set.scale === 'auto' ? ordinaryScales(lengths) : [set.scale, ...ordinaryScales(lengths).filter((scale) => set.scale === 'auto' || scale > set.scale)];
    return wished.find(fits) ?? coarserUntil(fits, wished.at(-1) ?? 100);
  };
  // One scale for all: the coarsest that any of them needs, so that they can be compared.
  const scale = cuts.length > 0 ? Math.max(...cuts.map(alone)) : 1;
  for (const cut of cuts) {
    const { width_mm, height_mm } = sectionSize(cut, scale, sizes);
    if (left > area.left && left + width_mm > area.right) [left, top] = [area.left, rowBottom + gap];
    if (top > area.top && top + height_mm + titleHeight > area.bottom) finish();
    const box = { left, top, right: left + width_mm, bottom: top + height_mm };
    const section = composeSection(derived, cut, scale, sizes, lengths, box);
    const title = viewTitle(0, box.bottom - 2 * sizes.factor, sectionTitle(cut), scale, lengths, layout);
    const titleLeft = Math.max(area.left, Math.min(box.left, area.right - title.width_mm));
    marks.push(...section.marks, ...shiftMarks(title.marks, titleLeft, 0));
    letters.push(cut.letter);
    scales.add(scale);
    for (const name of section.used) used.add(name);
    left = Math.max(box.right, titleLeft + title.width_mm) + gap;
    rowBottom = Math.max(rowBottom, box.bottom + titleHeight);
  }
  finish();
  return drafts;
}

/** The first scale, in steps of half again, that is coarse enough. */
function coarserUntil(fits: (scale: number) => boolean, from: number): number {
  let scale = from;
  for (let step = 0; step < 20 && !fits(scale); step += 1) scale = Math.ceil(scale * 1.5);
  return scale;
}
