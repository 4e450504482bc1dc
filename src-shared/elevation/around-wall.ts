import type { Space, WallFace } from '../derived/derived.ts';
import { findPanelSpace } from '../derived/panel-space.ts';
import { distance_m } from '../geometry/point.ts';
import type { Opening, RefOf } from '../model/plan.ts';
import { openingMiddle } from '../derived/wall-places.ts';
import type { Stretch, WallOpening, WallSolid } from './elevation.ts';
import type { WallFrame } from './wall-frame.ts';

/** A thing whose underside is higher than this hangs overhead: a person walks below it [m]. */
const OVERHEAD_m = 1.8;
/** The ceiling is read so far in front of the wall face [m]. */
const INTO_m = 1e-4;
/** What hangs is drawn where it runs into the wall, or within this of it [m]. */
const AT_WALL_m = 0.3;

const touches = (a: Stretch, b: Stretch): boolean => a.to_m > b.from_m + 1e-6 && a.from_m < b.to_m - 1e-6;

function openingOf(opening: Opening, face: WallFace, room: Space, frame: WallFrame): WallOpening[] {
  const middle = openingMiddle(room.enclosure, opening);
  if (!middle) return [];
  const { s } = frame.place({ ...middle, z: 0 });
  const ref: RefOf<'opening'> = { kind: 'opening', level: room.level.id, enclosure: room.enclosure.id, id: opening.id };
  const corner = [room.enclosure.outline, ...room.enclosure.holes].flat().find(({ id }) => id === face.ref.id);
  // The start of the wall as drawn may be its left or its right end as seen.
  const startsLeft = corner !== undefined && distance_m(corner, face.segment.b) < distance_m(corner, face.segment.a);
  const atStart = opening.hinge === 'start';
  return [
    {
      ref,
      opening,
      from_m: s - opening.width_m / 2,
      to_m: s + opening.width_m / 2,
      bottom_m: opening.bottom_m,
      top_m: opening.bottom_m + opening.height_m,
      hinge: opening.kind !== 'door' || opening.swing === 'none' ? undefined : atStart === startsLeft ? 'left' : 'right',
    },
  ];
}

/** The openings in the shown part of a wall. */
export const openingsIn = (face: WallFace, room: Space, frame: WallFrame, shown: Stretch): WallOpening[] =>
  Object.values(room.enclosure.openings)
    .filter(({ wall }) => wall === face.ref.id)
    .flatMap((opening) => openingOf(opening, face, room, frame))
    .filter((opening) => touches(opening, shown));

/** What stands within a depth before the shown part of a wall, and what hangs at it. */
export function solidsBefore(room: Space, frame: WallFrame, shown: Stretch, depth_m: number): WallSolid[] {
  return room.solids.flatMap((solid): WallSolid[] => {
    const places = solid.footprint.map((p) => frame.place({ ...p, z: 0 }));
    const near_m = Math.min(...places.map(({ off }) => off));
    const far_m = Math.max(...places.map(({ off }) => off));
    const stretch = { from_m: Math.min(...places.map(({ s }) => s)), to_m: Math.max(...places.map(({ s }) => s)) };
    const isOverhead = solid.obstruction.kind === 'beam' || solid.bottom_m > OVERHEAD_m;
    if (!touches(stretch, shown) || far_m < -1e-3 || near_m > (isOverhead ? AT_WALL_m : depth_m)) return [];
    return [{ solid, ...stretch, near_m, far_m, isOverhead, space: findPanelSpace(solid.obstruction) }];
  });
}

/** The ceiling over the wall face, with its steps; empty while any of it is not known. */
export function ceilingAlong(room: Space, frame: WallFrame, shown: Stretch): { s: number; z: number }[] {
  const samples = 120;
  const line: { s: number; z: number }[] = [];
  for (let i = 0; i <= samples; i += 1) {
    const s = shown.from_m + ((shown.to_m - shown.from_m) * i) / samples;
    const inside = Math.min(frame.length_m - 1e-4, Math.max(1e-4, s));
    const on = frame.onFace(inside);
    const ahead = frame.onFace(inside + 1);
    // A little into the room, so that the face of the wall itself does not decide.
    const z = room.ceilingAt_m({ x: on.x + (ahead.y - on.y) * INTO_m, y: on.y - (ahead.x - on.x) * INTO_m });
    if (z === undefined) return [];
    const last = line.at(-1);
    if (last && Math.abs(last.z - z) > 1e-9) line.push({ s, z: last.z });
    if (!last || Math.abs(last.z - z) > 1e-9 || i === samples) line.push({ s, z });
  }
  return line;
}
