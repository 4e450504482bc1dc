import type { SheetSettings } from '../model/plan.ts';
import { scaleName } from '../paper/scales.ts';
import { type DraftView, shiftView, viewBox, viewCorner } from './draft-view.ts';
import { overlapRemarks } from './overlap-remarks.ts';
import { scaleOfViews } from './plan-draft-view.ts';
import type { Series } from './series.ts';
import type { SheetOptions } from './sheet.ts';
import { type SheetDraft, homeOf } from './sheet-draft.ts';
import type { PaperBox } from './text-box.ts';
import { type ViewSet, viewArea } from './view-set.ts';

type PlacedView = SheetSettings['views'][string];

/** Line ends may lie this little outside the drawing area [mm]. */
const OVER_mm = 2;
/** Smaller shifts are nothing to tell [mm]. */
const TOLD_mm = 0.5;

interface Sheet {
  readonly series: number;
  readonly draft: SheetDraft;
  readonly views: DraftView[];
  readonly placing: string[];
  isTouched: boolean;
}

/**
 * Puts views where the user wants them: at their place, scale and crop, on another sheet. What the user left open stays
 * as composed. A wish that cannot be kept is told, and the view is as the program chooses.
 */
export function placeViews(set: ViewSet, all: readonly Series[], kind: SheetOptions['set']): Series[] {
  const { views: wishes } = set.derived.plan.settings.sheets;
  const sheets = all.flatMap((series, i) => series.drafts.map((draft): Sheet => ({ series: i, draft, views: [...(draft.views ?? [])], placing: [], isTouched: false })));
  const placed = new Set<DraftView>();
  const known = new Set<string>();
  for (const sheet of sheets) {
    for (const view of sheet.draft.views ?? []) {
      known.add(view.key);
      const wish = wishes[view.key];
      if (!wish) continue;
      const { target, view: next, remarks } = carriedOut(set, view, wish, sheet, sheets);
      sheet.views.splice(sheet.views.indexOf(view), 1, ...(target === sheet ? [next] : []));
      if (target !== sheet) target.views.push(next);
      target.placing.push(...remarks);
      for (const each of [sheet, target]) each.isTouched = true;
      placed.add(next);
    }
  }
  const first = sheets[0];
  const gone = Object.keys(wishes).filter((key) => !known.has(key)).length;
  // The field set leaves out views on purpose.
  if (first && kind === 'submittal' && gone > 0) first.placing.push(gone === 1 ? 'A view that was placed by hand is no longer in the set. It was left out.' : `${gone} views that were placed by hand are no longer in the set. They were left out.`);
  for (const sheet of sheets) if (sheet.isTouched) sheet.placing.push(...overlapRemarks(sheet.views, placed, sheet.draft.marks));
  return all.map((series, i) => ({ ...series, drafts: sheets.filter((sheet) => sheet.series === i).flatMap((sheet) => finished(set, sheet)) }));
}

/** The sheet as the placed views leave it; none when nothing is left on it. */
function finished(set: ViewSet, { draft, views, placing, isTouched }: Sheet): SheetDraft[] {
  if (!isTouched) return placing.length > 0 ? [{ ...draft, placing }] : [draft];
  if (views.length === 0 && draft.marks.length === 0) return [];
  return [
    {
      ...draft,
      views,
      placing,
      scale: scaleOfViews(views, set.derived.plan.settings.lengths),
      hasPlan: views.some(({ ground }) => ground !== null),
      used: new Set(views.flatMap(({ used }) => [...used])),
    },
  ];
}

/** One wish carried out as far as it can be. */
function carriedOut(set: ViewSet, view: DraftView, wish: PlacedView, own: Sheet, sheets: readonly Sheet[]): { readonly target: Sheet; readonly view: DraftView; readonly remarks: string[] } {
  const asComposed = (why: string) => ({ target: own, view, remarks: [`${view.title}: ${why}`] });
  const target = wish.sheet === null || wish.sheet === homeOf(own.draft) ? own : sheets.find(({ draft }) => homeOf(draft) === wish.sheet && (draft.views?.length ?? 0) > 0);
  if (!target) return asComposed(`the sheet “${wish.sheet}” is no longer in the set, so it stands on its own sheet.`);
  if (view.scale !== null && !target.draft.hasViews) return asComposed(`“${wish.sheet}” has no bar to check its scale with, so it stands on its own sheet.`);
  const next = drawnAs(view, wish);
  if (!next) return asComposed('it cannot be drawn at that scale or with that part, so it is drawn as usual.');
  const { x_mm, y_mm } = wish.at ?? viewCorner(view);
  const corner = viewCorner(next);
  const moved = shiftView(next, x_mm - corner.x_mm, y_mm - corner.y_mm);
  const inside = pushedInside(moved, areaOf(set, target.draft));
  if (!inside) return asComposed(`${next.scale === null ? 'it' : `at ${scaleName(next.scale, set.derived.plan.settings.lengths)} it`} is larger than the paper, so it is drawn as usual.`);
  const remarks = inside.by_mm > TOLD_mm && wish.at ? [`${view.title}: it would reach over the edge of the drawing area, so it was moved in.`] : [];
  return { target, view: inside.view, remarks };
}

/** The view at the wished scale and with the wished part. */
function drawnAs(view: DraftView, { scale, crop }: PlacedView): DraftView | undefined {
  if (!view.again || view.scale === null || (scale === null && crop === null)) return view;
  return view.again({ scale: scale ?? view.scale, crop: crop && view.ground ? { minX: crop.least.x, minY: crop.least.y, maxX: crop.most.x, maxY: crop.most.y } : null });
}

/** Where views may stand: above the strip with the check bar, where the sheet has one. */
function areaOf(set: ViewSet, draft: SheetDraft): PaperBox {
  const { left, top, right, bottom } = draft.hasViews ? viewArea(set.layout) : set.layout.area;
  return { left: left - OVER_mm, top: top - OVER_mm, right: right + OVER_mm, bottom: bottom + OVER_mm };
}

/** The view moved in from the edge as far as it must be; undefined when it is larger than the area. */
function pushedInside(view: DraftView, area: PaperBox): { readonly view: DraftView; readonly by_mm: number } | undefined {
  const box = viewBox(view);
  if (box.right - box.left > area.right - area.left || box.bottom - box.top > area.bottom - area.top) return undefined;
  const dx = Math.max(0, area.left - box.left) - Math.max(0, box.right - area.right);
  const dy = Math.max(0, area.top - box.top) - Math.max(0, box.bottom - area.bottom);
  return { view: dx === 0 && dy === 0 ? view : shiftView(view, dx, dy), by_mm: Math.hypot(dx, dy) };
}
