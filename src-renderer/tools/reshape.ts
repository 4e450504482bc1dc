import { editAdjoining } from '#shared/commands/edit-adjoining';
import { editCeilingZone } from '#shared/commands/edit-ceiling-zone';
import { editDimension } from '#shared/commands/edit-dimension';
import { editObstruction } from '#shared/commands/edit-obstruction';
import { editOpening } from '#shared/commands/edit-opening';
import { type PlanPoint, bearing_rad, distance_m, planPoint } from '#shared/geometry/point';
import { withCorner } from '#shared/geometry/rectangle';
import { alongSegment_m } from '#shared/geometry/segment';
import { findThing } from '#shared/model/find-thing';
import type { Ref } from '#shared/model/plan';
import type { Drag } from './drag.ts';
import { layerOf, openingSegment, wallsOf } from './level-things.ts';
import type { ToolView } from './tool.ts';

/** A handle of a thing, and what dragging it does. */
interface Handle {
  readonly at: PlanPoint;
  readonly drag: Omit<Drag, 'grab' | 'without'>;
}

/** Handles of a thing that change its shape; corners and walls of enclosures and ends of pipe are things of their own. */
function handlesOf({ plan }: ToolView, ref: Ref): Handle[] {
  const found = findThing(plan, ref);
  switch (found?.kind) {
    case 'obstruction': {
      const { ref: of, thing } = found;
      return thing.footprint.map((at, i) => ({ at, drag: { commandTo: (to) => editObstruction(of, { footprint: withCorner(thing.footprint, i, to) }) } }));
    }
    case 'ceiling-zone': {
      const { ref: of, thing } = found;
      return thing.outline.map((at, i) => ({ at, drag: { commandTo: (to) => editCeilingZone(of, { outline: withCorner(thing.outline, i, to) }) } }));
    }
    case 'adjoining': {
      const { ref: of, thing } = found;
      return thing.outline.map((at, i) => ({ at, drag: { commandTo: (to) => editAdjoining(of, { outline: withCorner(thing.outline, i, to) }) } }));
    }
    case 'dimension': {
      const { ref: of, thing } = found;
      return (['a', 'b'] as const).map((end) => ({ at: thing[end], drag: { commandTo: (to) => editDimension(of, { [end]: planPoint(to.x, to.y) }) } }));
    }
    case 'opening': {
      const { ref: of, level, enclosure, thing } = found;
      const wall = wallsOf(level.id, enclosure).find((each) => each.ref.id === thing.wall);
      const jambs = openingSegment(level.id, enclosure, thing);
      if (!wall || !jambs) return [];
      const length_m = distance_m(wall.segment.a, wall.segment.b);
      return ([[jambs.a, thing.along_m + thing.width_m / 2], [jambs.b, thing.along_m - thing.width_m / 2]] as const).map(([at, other_m]) => ({
        at,
        drag: {
          along_rad: bearing_rad(wall.segment.a, wall.segment.b),
          commandTo(to) {
            const jamb_m = Math.max(0, Math.min(length_m, alongSegment_m(to, wall.segment)));
            return editOpening(of, { along_m: (jamb_m + other_m) / 2, width_m: Math.abs(jamb_m - other_m) });
          },
        },
      }));
    }
    default:
      return [];
  }
}

/** The handle of the only selected thing that is nearest to a place within reach; undefined where there is none. */
export function handleAt(view: ToolView, at: PlanPoint, reach_m: number): { readonly ref: Ref; readonly index: number } | undefined {
  const { selection, layers } = view.session;
  const [ref] = selection;
  if (!ref || selection.length > 1 || layers[layerOf(ref)].locked || !layers[layerOf(ref)].visible) return undefined;
  const near = handlesOf(view, ref)
    .map((handle, index) => ({ index, away_m: distance_m(handle.at, at) }))
    .filter(({ away_m }) => away_m <= reach_m)
    .sort((a, b) => a.away_m - b.away_m)[0];
  return near && { ref, index: near.index };
}

/** How a thing is reshaped by one of its handles. */
export function reshapeOf(view: ToolView, ref: Ref, index: number): Drag | undefined {
  const handle = handlesOf(view, ref)[index];
  return handle && { grab: { x: handle.at.x, y: handle.at.y }, without: [ref], ...handle.drag };
}
