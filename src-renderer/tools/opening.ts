import { addOpening } from '#shared/commands/add-opening';
import { type PlanPoint, bearing_rad, distance_m, midpoint } from '#shared/geometry/point';
import { alongSegment_m } from '#shared/geometry/segment';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import type { Opening } from '#shared/model/plan';
import { inches_m } from '#shared/units/convert';
import type { ToolOptions } from '../store/state.ts';
import { type PlacedWall, wallsOn } from './level-things.ts';
import { placingTool } from './placing.ts';
import type { ToolView } from './tool.ts';
import { lengthText, placeToward } from './typed-place.ts';
import { keptWithin_m, nearestWall } from './wall-place.ts';

/** Widths that openings start from [m]. Source: common practice; a door of 36 in. */
const USUAL_WIDTHS_m: Readonly<Record<Opening['kind'], number>> = {
  door: inches_m(36),
  'relief-vent': inches_m(12),
  damper: inches_m(12),
  grille: inches_m(12),
  penetration: inches_m(4),
  window: inches_m(36),
};

/** Width of the next opening [m]. */
const openingWidth_m = ({ openingWidth_m: chosen, openingKind }: ToolOptions): number => chosen ?? USUAL_WIDTHS_m[openingKind];

/** Where the middle of the next opening would be. */
interface OpeningSpot {
  readonly wall: PlacedWall;
  readonly along_m: number;
}

/** The wall nearest to a place, within reach, with the place along it. Of walls that lie on each other it is the one drawn last. */
function wallNear(view: ToolView, at: PlanPoint, reach_m: number): OpeningSpot | null {
  const level = view.plan.levels[view.session.level];
  const wall = nearestWall(level ? wallsOn(level).toReversed() : [], at, reach_m);
  return wall ? { wall, along_m: alongSegment_m(at, wall.segment) } : null;
}

/** Sets doors, vents and other openings into walls. */
export const openingTool = placingTool<OpeningSpot>({
  id: 'opening',
  hint: (spot) => (spot ? 'Click to set the opening, or type the distance from the start of the wall to its nearer side.' : 'Point at the wall that the opening is in.'),
  sketch(spot, view) {
    if (!spot) return {};
    const { a, b } = spot.wall.segment;
    const width_m = openingWidth_m(view.session.toolOptions);
    const direction_rad = bearing_rad(a, b);
    const along_m = keptWithin_m(spot.wall, spot.along_m, width_m / 2);
    const near = placeToward(a, direction_rad, along_m - width_m / 2);
    const far = placeToward(a, direction_rad, along_m + width_m / 2);
    return {
      lines: [{ places: [near, far] }, { places: [a, near], dashed: true }, { places: [far, b], dashed: true }],
      labels: [
        { at: midpoint(a, near), text: `${lengthText(view, distance_m(a, near))} from start` },
        { at: midpoint(near, far), text: lengthText(view, width_m) },
        { at: midpoint(far, b), text: lengthText(view, distance_m(far, b)) },
      ],
      asks: ['length'],
    };
  },
  spotAt: (view, { point, raw, reach_m }) => wallNear(view, point, reach_m) ?? wallNear(view, raw, 3 * reach_m),
  nowhere: 'Point at the wall that the opening is in.',
  typedSpot(view, spot, { length_m }) {
    if (length_m === null) return 'Type the distance from the start of the wall.';
    if (!spot) return 'Point at the wall that the opening is in.';
    const { wall } = spot;
    const half_m = openingWidth_m(view.session.toolOptions) / 2;
    const along_m = length_m + half_m;
    if (Math.abs(keptWithin_m(wall, along_m, half_m) - along_m) > SAME_PLACE_m) {
      return `The opening would reach beyond the end of this wall, which is ${lengthText(view, distance_m(wall.segment.a, wall.segment.b))} long.`;
    }
    return { wall, along_m };
  },
  put(view, { wall, along_m }) {
    const width_m = openingWidth_m(view.session.toolOptions);
    if (distance_m(wall.segment.a, wall.segment.b) < width_m) return `This wall is shorter than the opening (${lengthText(view, width_m)}). Make the opening narrower first.`;
    return addOpening(wall.ref, view.session.toolOptions.openingKind, keptWithin_m(wall, along_m, width_m / 2), width_m);
  },
});
