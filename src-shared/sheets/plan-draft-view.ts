import type { Box } from '../geometry/outline.ts';
import { scaleName } from '../paper/scales.ts';
import type { DraftView, ViewWish } from './draft-view.ts';
import { type PlanContent, contentBounds } from './plan-content.ts';
import { type ComposedView, PLAN_MARGIN_mm, type PlanViewOptions, composePlanView } from './plan-view.ts';
import type { Mark } from './sheet.ts';
import { viewTitle } from './sheet-draft.ts';
import type { PaperBox } from './text-box.ts';
import type { ViewSet } from './view-set.ts';

/** A plan view as it is known to the user, and what of its drawing is not as usual. */
export interface PlanViewKind {
  readonly key: string;
  readonly title: string;
  readonly options?: Pick<PlanViewOptions, 'draw' | 'bounds' | 'isOverview' | 'window'>;
}

/** Smaller windows would show nothing [m]. */
const LEAST_WINDOW_m = 0.1;

/** The part of the plan that a view shows. */
const shownBy = (content: PlanContent, options: PlanViewKind['options']): Box | undefined => options?.window ?? options?.bounds ?? contentBounds(content);

/** A plan that was composed in the middle of some paper, as a view that can be placed. @param marks the drawing and its title, where they are now */
export function planDraftView(set: ViewSet, content: PlanContent, kind: PlanViewKind, view: ComposedView, room: PaperBox, marks: readonly Mark[], by: { readonly dx: number; readonly dy: number } = { dx: 0, dy: 0 }): DraftView {
  const shown = shownBy(content, kind.options);
  const mm = 1000 / view.scale;
  return {
    key: kind.key,
    title: kind.title,
    marks,
    scale: view.scale,
    used: view.used,
    ground: shown
      ? {
          shown,
          x_mm: (room.left + room.right - (shown.maxX - shown.minX) * mm) / 2 + by.dx,
          y_mm: (room.top + room.bottom - (shown.maxY - shown.minY) * mm) / 2 + by.dy,
        }
      : null,
    again: (wish) => redrawn(set, content, kind, wish),
  };
}

/** The same plan at another scale, or a part of it, on paper of its own. */
function redrawn(set: ViewSet, content: PlanContent, kind: PlanViewKind, { scale, crop }: ViewWish): DraftView | undefined {
  const { layout, derived } = set;
  const { lengths } = derived.plan.settings;
  const window = crop ?? kind.options?.window;
  const options = { ...kind.options, ...(window ? { window } : {}) };
  const shown = shownBy(content, options);
  if (!shown || shown.maxX - shown.minX < LEAST_WINDOW_m || shown.maxY - shown.minY < LEAST_WINDOW_m) return undefined;
  const margin = 4 * PLAN_MARGIN_mm * layout.sizes.factor;
  const room = { left: 0, top: 0, right: ((shown.maxX - shown.minX) * 1000) / scale + margin, bottom: ((shown.maxY - shown.minY) * 1000) / scale + margin };
  const view = composePlanView(content, { ...set, ...options, viewKey: kind.key, scale, sizes: layout.sizes, lengths, room });
  if (!view) return undefined;
  const title = viewTitle(view.box.left, view.box.bottom, crop ? `${kind.title}, part` : kind.title, scale, lengths, layout);
  return { ...planDraftView(set, content, { ...kind, options }, view, room, [...view.marks, ...title.marks]), again: (wish) => redrawn(set, content, kind, wish) };
}

/** Key of the plan of one layer of a level, or of one of its rooms. */
export const planKey = ({ level, layer }: PlanContent, enclosure?: string): string => ['plan', level.id, layer, ...(enclosure === undefined ? [] : [enclosure])].join('/');

/** Key of the plan with names only. */
export const overviewKey = ({ level, layer }: PlanContent): string => ['overview', level.id, layer].join('/');

/** A scale of several views in one, as the title block names it. */
export function scaleOfViews(views: readonly { readonly scale: number | null }[], lengths: 'feet' | 'metric'): string {
  const scales = new Set(views.map(({ scale }) => scale));
  const [only] = scales;
  if (scales.size !== 1 || only === undefined) return 'as shown';
  return only === null ? 'not to scale' : scaleName(only, lengths);
}
