import { addCylinder } from '#shared/commands/add-cylinder';
import { type PlanPoint, polar } from '#shared/geometry/point';
import { type CylinderPlace, againstWall, bankOf, cylinderPlace, cylinderRadius_m } from './cylinder-place.ts';
import { beyondWall, placingTool } from './placing.ts';
import type { ToolView } from './tool.ts';
import { placeToward } from './typed-place.ts';
import { fromStart } from './wall-place.ts';

/** Where the next cylinder would stand, and where the pointer was. */
interface CylinderSpot {
  readonly place: CylinderPlace;
  readonly pointer: PlanPoint;
}

const chosenNetwork = (view: ToolView): string | undefined =>
  view.session.selection.flatMap((ref) => (ref.kind === 'network' ? [ref.id] : 'network' in ref ? [ref.network] : []))[0];

const bankAt = (view: ToolView, at: PlanPoint) => bankOf(view.plan, view.session.level, at, chosenNetwork(view));

/** Stands cylinders with their backs against walls; beside another one they join its network. */
export const cylinderTool = placingTool<CylinderSpot>({
  id: 'cylinder',
  hint(spot, view) {
    if (!spot) return 'Point at the wall that the cylinder stands against.';
    const bank = bankAt(view, spot.place.at);
    const joins = bank ? `It joins ${bank.name || 'the cylinders beside it'}.` : 'It begins a new pipe network.';
    return spot.place.wall ? `Click to stand the cylinder here, or type its distance from the start of the wall. ${joins}` : `Click to stand the cylinder here, away from walls. ${joins}`;
  },
  sketch(spot, view) {
    if (!spot) return {};
    const { at, back_rad, radius_m, wall, along_m } = spot.place;
    const ring = { places: Array.from({ length: 24 }, (_, i) => polar(at, (i * Math.PI) / 12, radius_m)), closed: true };
    if (!wall) return { lines: [ring] };
    const { lines, labels } = fromStart(view, wall, placeToward(at, back_rad, radius_m), along_m);
    return { lines: [ring, ...lines], labels, asks: ['length'] };
  },
  spotAt(view, { raw, point }) {
    const profile = bankAt(view, raw)?.profile ?? Object.keys(view.plan.profiles)[0] ?? '';
    return { place: cylinderPlace(view.plan.levels[view.session.level], raw, point, cylinderRadius_m(view.plan.profiles[profile])), pointer: raw };
  },
  nowhere: 'Point at the wall that the cylinder stands against.',
  typedSpot(view, spot, { length_m }) {
    if (length_m === null || !spot?.place.wall) return 'Point at a wall, then type the distance from its start.';
    const { place: { wall, radius_m }, pointer } = spot;
    return beyondWall(view, wall, length_m, radius_m, 'The cylinder would stand') ?? { place: againstWall(wall, length_m, pointer, radius_m), pointer };
  },
  put: (view, { place: { at, back_rad } }) => addCylinder(view.session.level, bankAt(view, at)?.id ?? null, at, back_rad),
});
