import type { Box } from '../geometry/outline.ts';
import type { DraftView } from './draft-view.ts';
import { viewOfDimension } from './hand-placed.ts';
import { shiftMarks } from './marks.ts';
import { partSheets } from './part-sheets.ts';
import { overviewKey, planDraftView, planKey } from './plan-draft-view.ts';
import { type PlanContent, contentBounds, roomContents } from './plan-content.ts';
import { type ComposedView, composePlanView, fitsPaper } from './plan-view.ts';
import { coarserUntil, ordinaryScales, scaleName, takenScales } from '../paper/scales.ts';
import { nozzleSchedule } from './schedules.ts';
import type { SectionCut } from './section-cuts.ts';
import { sectionDraftView } from './section-draft-view.ts';
import { composeSection, sectionSize, sectionTitle } from './section-view.ts';
import type { Mark } from './sheet.ts';
import { type SheetDraft, VIEW_TITLE_mm, viewTitle } from './sheet-draft.ts';
import type { SymbolName } from './symbol-names.ts';
import { drawTable, layTable, tableHeight_mm } from './tables.ts';
import { type PaperBox, boxHolds } from './text-box.ts';
import { CROWDED, type ViewSet, planTitle, remarksOn, viewArea, viewRoom } from './view-set.ts';

/** View sheets of one plan content, and what found its place on them. */
export interface ViewSheets {
  readonly drafts: SheetDraft[];
  readonly placedCuts: ReadonlySet<SectionCut>;
  /** The nozzles' own table stands on the sheet. */
  readonly hasSchedule: boolean;
  /** Rooms that the sheet only names: each needs a plan of its own. */
  readonly rooms: readonly PlanContent[];
}

/** Counts for more than any number of labels without room. */
const OUTSIDE = 1e6;

/** Line ends may lie a little outside the room that texts keep to. */
const grown = ({ left, top, right, bottom }: PaperBox): PaperBox => ({ left: left - 2, top: top - 2, right: right + 2, bottom: bottom + 1 });

/**
 * The scale that a content is drawn at: the user's, or the finest at which every label finds room.
 * @returns undefined when the level does not fit on the paper at any ordinary scale
 */
function composeAtBestScale(set: ViewSet, content: PlanContent, bounds: Box): ComposedView | undefined {
  const { layout, derived } = set;
  const { lengths } = derived.plan.settings;
  const room = viewRoom(layout);
  const scales = set.scale === 'auto' ? takenScales(lengths, derived.plan.basis.smallestScale) : [set.scale];
  let best: ComposedView | undefined;
  let least = Infinity;
  const compose = (scale: number, dimensions: ViewSet['dimensions']): ComposedView | undefined => composePlanView(content, { ...set, viewKey: planKey(content), dimensions, scale, sizes: layout.sizes, lengths, room });
  for (const scale of scales) {
    if (!fitsPaper(bounds, scale, room, layout.sizes.factor)) continue;
    // A text that is put elsewhere never changes the scale.
    const view = compose(scale, {});
    if (!view) return undefined;
    const fault = view.unplaced.length + (boxHolds(grown(room), view.box) ? 0 : OUTSIDE);
    if (fault < least) [best, least] = [view, fault];
    if (fault === 0) break;
  }
  return best && Object.keys(set.dimensions).length > 0 ? compose(best.scale, set.dimensions) : best;
}

/** Sheets for one layer of a level: one, or several with match lines where the paper is too small for the scale. */
export function planSheets(set: ViewSet, content: PlanContent): ViewSheets {
  const bounds = contentBounds(content);
  if (!bounds) return { drafts: [], placedCuts: new Set(), hasSchedule: false, rooms: [] };
  const whole = composeAtBestScale(set, content, bounds);
  const wished = wishedParting(set, content);
  const isEasy = whole && (wished === 'whole' || (wished === undefined && (set.scale !== 'auto' || (whole.scale * set.layout.sizes.factor <= CROWDED && whole.unplaced.length === 0))));
  const rooms = isEasy || content.rooms.length < 2 ? undefined : roomContents(content);
  if (rooms && rooms.length > 0 && roomsFit(set, rooms)) return overviewSheet(set, content, bounds, rooms);
  if (!whole) return { drafts: partSheets(set, content, bounds), placedCuts: new Set(), hasSchedule: false, rooms: [] };
  return wholeSheet(set, content, whole);
}

/** Whether the user placed the whole level or its rooms: what was placed stays, however crowded the level becomes. */
function wishedParting({ derived }: ViewSet, content: PlanContent): 'whole' | 'rooms' | undefined {
  const { views, dimensions } = derived.plan.settings.sheets;
  const keys = [...Object.keys(views), ...Object.keys(dimensions).map(viewOfDimension)];
  if (keys.includes(planKey(content))) return 'whole';
  return keys.some((key) => key === overviewKey(content) || key.startsWith(`${planKey(content)}/`)) ? 'rooms' : undefined;
}

/** Whether every room alone fits on the paper at an ordinary scale. */
function roomsFit({ layout, derived }: ViewSet, rooms: readonly PlanContent[]): boolean {
  const coarsest = takenScales(derived.plan.settings.lengths, derived.plan.basis.smallestScale).at(-1) ?? 100;
  const room = viewRoom(layout);
  return rooms.every((content) => {
    const bounds = contentBounds(content);
    return !bounds || fitsPaper(bounds, coarsest, room, layout.sizes.factor);
  });
}

/** Paper around an overview, which has no dimensions outside its walls [mm at factor 1]. */
const OVERVIEW_MARGIN_mm = 7;

/** The whole level with names only; its rooms follow as plans of their own. */
function overviewSheet(set: ViewSet, content: PlanContent, bounds: Box, rooms: readonly PlanContent[]): ViewSheets {
  const { layout, derived } = set;
  const { lengths } = derived.plan.settings;
  const room = viewRoom(layout);
  const fits = (ratio: number): boolean => fitsPaper(bounds, ratio, room, layout.sizes.factor, OVERVIEW_MARGIN_mm);
  const wished = set.scale === 'auto' ? ordinaryScales(lengths) : [set.scale];
  const scale = wished.find(fits) ?? coarserUntil(fits, wished.at(-1) ?? 100);
  const view = composePlanView(content, { ...set, viewKey: overviewKey(content), scale, sizes: layout.sizes, lengths, room, isOverview: true });
  if (!view) return { drafts: [], placedCuts: new Set(), hasSchedule: false, rooms };
  const words = `Overview: ${content.title}`;
  const title = viewTitle(view.box.left, view.box.bottom, words, scale, lengths, layout);
  return {
    drafts: [
      {
        title: words,
        scale: scaleName(scale, lengths),
        marks: [],
        views: [planDraftView(set, content, { key: overviewKey(content), title: words, options: { isOverview: true } }, view, room, [...view.marks, ...title.marks])],
        hasViews: true,
        hasPlan: true,
        used: view.used,
        remarks: ['Dimensions and figures stand on the room plans', ...remarksOn({ ...set, scale: view.scale }, view)],
      },
    ],
    placedCuts: new Set(),
    hasSchedule: false,
    rooms,
  };
}

function wholeSheet(set: ViewSet, content: PlanContent, view: ComposedView): ViewSheets {
  const { layout, derived } = set;
  const { factor } = layout.sizes;
  const { lengths } = derived.plan.settings;
  const area = viewArea(layout);
  const gap = 6 * factor;
  const titleHeight = VIEW_TITLE_mm * factor;
  const viewHeight = view.box.bottom - view.box.top;
  const extras: { view?: DraftView; marks: Mark[]; used: ReadonlySet<SymbolName>; cut?: SectionCut }[] = [];

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
    extras.push({ view: sectionDraftView(set, cut, section, [...section.marks, ...title.marks]), marks: [], used: section.used, cut });
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
  const bottom = Math.min(view.box.bottom + dy, area.bottom - titleHeight);
  const words = `Plan: ${content.title}`;
  const title = viewTitle(view.box.left, bottom, words, view.scale, lengths, layout);
  const x = Math.max(area.left, Math.min(view.box.left, area.right - title.width_mm));
  const used = new Set<SymbolName>([...view.used, ...extras.flatMap((extra) => [...extra.used])]);
  return {
    drafts: [
      {
        title: planTitle(content),
        scale: scaleName(view.scale, lengths),
        marks: extras.flatMap(({ marks }) => marks),
        views: [
          planDraftView(set, content, { key: planKey(content), title: words }, view, viewRoom(layout), [...shiftMarks(view.marks, 0, dy), ...shiftMarks(title.marks, x - view.box.left, 0)], { dx: 0, dy }),
          ...extras.flatMap((extra) => extra.view ?? []),
        ],
        hasViews: true,
        hasPlan: true,
        used,
        remarks: remarksOn(set, view),
      },
    ],
    placedCuts: new Set(extras.flatMap(({ cut }) => (cut ? [cut] : []))),
    hasSchedule,
    rooms: [],
  };
}
