import { coarserUntil, ordinaryScales, scaleName } from '../paper/scales.ts';
import { shiftMarks } from './marks.ts';
import { type PlanContent, contentBounds, networkInRoom, planContents } from './plan-content.ts';
import { type ComposedView, type PlanViewOptions, composePlanView, fitsPaper } from './plan-view.ts';
import { type SheetDraft, VIEW_TITLE_mm, viewTitle } from './sheet-draft.ts';
import { boxHolds } from './text-box.ts';
import { type ViewSet, remarksOn, viewArea, viewRoom } from './view-set.ts';

/** What one room is drawn for. */
export interface RoomDrawing {
  /** "Field sheet". */
  readonly title: string;
  readonly isWanted: (content: PlanContent) => boolean;
  readonly draw: NonNullable<PlanViewOptions['draw']>;
}

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

/** One sheet for each served space that is wanted. */
export function roomSheets(set: ViewSet, { title: what, isWanted, draw }: RoomDrawing): SheetDraft[] {
  const { layout, derived } = set;
  const { lengths } = derived.plan.settings;
  const area = viewArea(layout);
  return roomParts(set)
    .filter(isWanted)
    .flatMap((content): SheetDraft[] => {
      const view = bestView(set, content, draw);
      if (!view) return [];
      const title = `${what}: ${content.title}`;
      const under = viewTitle(view.box.left, Math.min(view.box.bottom, area.bottom - VIEW_TITLE_mm * layout.sizes.factor), title, view.scale, lengths, layout);
      const x = Math.max(area.left, Math.min(view.box.left, area.right - under.width_mm));
      return [{ title, scale: scaleName(view.scale, lengths), marks: [...view.marks, ...shiftMarks(under.marks, x - view.box.left, 0)], hasViews: true, hasPlan: true, used: view.used, remarks: remarksOn(set, view) }];
    });
}
