import { adjoiningSchedule } from './adjoining-schedule.ts';
import { deviceSchedule } from './device-schedule.ts';
import { shiftMarks } from './marks.ts';
import type { PlanContent } from './plan-content.ts';
import { planDraftView } from './plan-draft-view.ts';
import { type ComposedView, PLAN_MARGIN_mm, composePlanView, fitsPaper } from './plan-view.ts';
import { coarserUntil, scaleName, takenScales } from '../paper/scales.ts';
import { type SheetDraft, VIEW_TITLE_mm, viewTitle } from './sheet-draft.ts';
import { DRAW_SURROUNDINGS, SURROUNDINGS_TITLES, type SurroundingsKind, hasSurroundings, surroundingsBounds } from './surroundings-views.ts';
import { type Table, drawTable, layTable, tableHeight_mm } from './tables.ts';
import { type PaperBox, boxHolds } from './text-box.ts';
import { CROWDED, type ViewSet, remarksOn, viewArea, viewRoom } from './view-set.ts';

/** Sheets of the surroundings, and the tables that found no room beside their plans. */
export interface SurroundingsSheets {
  readonly drafts: SheetDraft[];
  readonly tables: readonly Table[];
}

/** Counts for more than any number of labels without room. */
const OUTSIDE = 1e6;

/** The finest scale at which every label finds room, else the one with the fewest that do not; else as coarse as the paper asks. */
function bestView(set: ViewSet, content: PlanContent, kind: SurroundingsKind, room: PaperBox): ComposedView | undefined {
  const { layout, derived } = set;
  const { lengths } = derived.plan.settings;
  const bounds = surroundingsBounds(kind, content);
  if (!bounds) return undefined;
  const fits = (ratio: number): boolean => fitsPaper(bounds, ratio, room, layout.sizes.factor, PLAN_MARGIN_mm * 0.75);
  const wished = (set.scale === 'auto' ? takenScales(lengths, derived.plan.basis.smallestScale) : [set.scale]).filter(fits);
  const scales = wished.length > 0 ? wished : [coarserUntil(fits, takenScales(lengths, derived.plan.basis.smallestScale).at(-1) ?? 100)];
  let best: ComposedView | undefined;
  let least = Infinity;
  for (const scale of scales) {
    const view = composePlanView(content, { ...set, scale, sizes: layout.sizes, lengths, room, bounds, draw: DRAW_SURROUNDINGS[kind] });
    if (!view) return undefined;
    const fault = view.unplaced.length + (boxHolds({ left: room.left - 2, top: room.top - 2, right: room.right + 2, bottom: room.bottom + 1 }, view.box) ? 0 : OUTSIDE);
    if (fault < least) [best, least] = [view, fault];
    if (fault === 0) break;
  }
  return best;
}

/** What belongs beside the plan. */
function tableFor({ derived }: ViewSet, { level }: PlanContent, kind: SurroundingsKind): Table | undefined {
  const table = kind === 'electrical' ? deviceSchedule(derived, level) : kind === 'site' ? adjoiningSchedule(level, derived.plan.settings.lengths) : undefined;
  return table && table.rows.length > 0 ? table : undefined;
}

/** One sheet a level for a plan of the surroundings, its table below it where there is room. */
export function surroundingsSheets(set: ViewSet, contents: readonly PlanContent[], kind: SurroundingsKind): SurroundingsSheets {
  const { layout, derived } = set;
  const { factor } = layout.sizes;
  const { lengths } = derived.plan.settings;
  const drafts: SheetDraft[] = [];
  const tables: Table[] = [];
  for (const content of contents.filter((each) => hasSurroundings(kind, each))) {
    const area = viewArea(layout);
    const table = tableFor(set, content, kind);
    const laid = table && layTable(table, area.right - area.left, layout.sizes);
    const tall = laid ? tableHeight_mm(laid) + 8 * factor : 0;
    const whole = viewRoom(layout);
    // With its table below where that costs neither labels nor much of the scale.
    const alone = bestView(set, content, kind, whole);
    const beside = laid && whole.bottom - tall > whole.top + 60 * factor ? bestView(set, content, kind, { ...whole, bottom: whole.bottom - tall }) : undefined;
    const isTogether = beside && alone && beside.unplaced.length <= alone.unplaced.length && (beside.scale === alone.scale || beside.scale * factor <= CROWDED);
    const view = isTogether ? beside : alone;
    if (!view) continue;
    if (table && !isTogether) tables.push(table);
    const words = `${SURROUNDINGS_TITLES[kind]}: ${content.title}`;
    const title = viewTitle(view.box.left, Math.min(view.box.bottom, area.bottom - VIEW_TITLE_mm * factor), words, view.scale, lengths, layout);
    const bounds = surroundingsBounds(kind, content);
    const room = isTogether ? { ...whole, bottom: whole.bottom - tall } : whole;
    const x = Math.max(area.left, Math.min(view.box.left, area.right - title.width_mm));
    drafts.push({
      title: words,
      scale: scaleName(view.scale, lengths),
      marks: isTogether && laid ? drawTable(laid, area.left, area.bottom - tableHeight_mm(laid)) : [],
      views: [
        planDraftView(set, content, { key: `${kind}/${content.level.id}`, title: words, options: { draw: DRAW_SURROUNDINGS[kind], ...(bounds ? { bounds } : {}) } }, view, room, [
          ...view.marks,
          ...shiftMarks(title.marks, x - view.box.left, 0),
        ]),
      ],
      hasViews: true,
      hasPlan: true,
      used: view.used,
      remarks: remarksOn(set, view),
    });
  }
  return { drafts, tables };
}
