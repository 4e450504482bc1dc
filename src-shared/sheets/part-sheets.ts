import { type Box, boundsOf, boxesTouch } from '../geometry/outline.ts';
import type { PlanContent } from './plan-content.ts';
import { planDraftView, planKey } from './plan-draft-view.ts';
import { PLAN_MARGIN_mm, composePlanView } from './plan-view.ts';
import { coarserUntil, scaleName, takenScales } from '../paper/scales.ts';
import { type SheetDraft, viewTitle } from './sheet-draft.ts';
import { type ViewSet, planTitle, remarksOn, viewRoom } from './view-set.ts';

/** Parts of one level at most; a scale that needs more was a slip, not a wish. */
const MOST_PARTS = 40;

/** Parts of a level that is larger than the paper, row by row from the north-west. */
export function partSheets(set: ViewSet, content: PlanContent, bounds: Box): SheetDraft[] {
  const { layout, derived } = set;
  const { sizes } = layout;
  const { lengths } = derived.plan.settings;
  const room = viewRoom(layout);
  /** The level with its margin at a scale, and into how many windows it is parted. */
  const partedAt = (scale: number) => {
    const margin_m = (PLAN_MARGIN_mm * sizes.factor * scale) / 1000;
    const outer = { minX: bounds.minX - margin_m, minY: bounds.minY - margin_m, maxX: bounds.maxX + margin_m, maxY: bounds.maxY + margin_m };
    const widest_m = ((room.right - room.left - 2) * scale) / 1000;
    const tallest_m = ((room.bottom - room.top - 2) * scale) / 1000;
    return { outer, across: Math.ceil((outer.maxX - outer.minX) / widest_m), down: Math.ceil((outer.maxY - outer.minY) / tallest_m) };
  };
  const isReasonable = (scale: number): boolean => partedAt(scale).across * partedAt(scale).down <= MOST_PARTS;
  const wished = set.scale === 'auto' ? (takenScales(lengths, set.derived.plan.basis.smallestScale).at(-1) ?? 100) : set.scale;
  const scale = coarserUntil(isReasonable, wished);
  const { outer, across, down } = partedAt(scale);
  const coarser = scale === wished ? [] : [`${scaleName(wished, lengths)} would need more than ${MOST_PARTS} sheets: drawn at ${scaleName(scale, lengths)}`];
  const width = (outer.maxX - outer.minX) / across;
  const height = (outer.maxY - outer.minY) / down;
  const drafts: SheetDraft[] = [];
  for (let row = 0; row < down; row += 1) {
    for (let column = 0; column < across; column += 1) {
      // Each edge is reckoned once for both of its windows: no nozzle falls between them.
      const [minX, maxX] = [outer.minX + column * width, outer.minX + (column + 1) * width];
      const [minY, maxY] = [outer.maxY - (row + 1) * height, outer.maxY - row * height];
      const window = { minX, minY, maxX, maxY };
      if (!content.rooms.some(({ bounds: box }) => boxesTouch(box, window)) && content.rooms.length > 0 && !hasAnything(content, window)) continue;
      const key = `${planKey(content)}/part/${row + 1}-${column + 1}`;
      const view = composePlanView(content, { ...set, viewKey: key, scale, sizes, lengths, room, window });
      if (!view || view.used.size === 0) continue;
      const part = `row ${row + 1} of ${down}, column ${column + 1} of ${across}`;
      const title = viewTitle(room.left, room.bottom, `Part: ${part}`, scale, lengths, layout);
      drafts.push({
        title: `${planTitle(content)}, ${part}`,
        scale: scaleName(scale, lengths),
        marks: [],
        views: [planDraftView(set, content, { key, title: `Part: ${part}`, options: { window } }, view, room, [...view.marks, ...title.marks])],
        hasViews: true,
        hasPlan: true,
        used: view.used,
        remarks: [...coarser, ...remarksOn({ ...set, scale }, view)],
      });
    }
  }
  return drafts;
}

/** Whether pipe, a nozzle or a cylinder lies in a window, outside every room. */
function hasAnything({ networks }: PlanContent, window: Box): boolean {
  const isIn = ({ x, y }: { readonly x: number; readonly y: number }): boolean => boxesTouch({ minX: x, minY: y, maxX: x, maxY: y }, window);
  return networks.some(
    ({ network, pipes, nozzles }) =>
      pipes.some(({ from, to }) => boxesTouch(boundsOf([from, to]), window)) || nozzles.some(({ at }) => at && isIn(at)) || Object.values(network.network.cylinders).some(({ at }) => isIn(at)),
  );
}
