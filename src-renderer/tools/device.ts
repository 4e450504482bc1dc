import { addDevice } from '#shared/commands/add-device';
import type { DeviceChange } from '#shared/commands/edit-device';
import { type PlanPoint, polar } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { DEVICE_WORDS } from '#shared/model/thing-name';
import { type DevicePlace, devicePlace, onWall } from './device-place.ts';
import { localCeiling_m } from './local-ceiling.ts';
import { beyondWall, placingTool } from './placing.ts';
import type { Tool, ToolView } from './tool.ts';
import { lengthText } from './typed-place.ts';
import { fromStart } from './wall-place.ts';

/** Where the next device would go, and where the pointer was. */
interface DeviceSpot {
  readonly place: DevicePlace;
  readonly pointer: PlanPoint;
}

/** Which space a detector watches: what hangs lower than the floor hangs under it, what hangs higher than the ceiling over it. */
function spaceAt(view: ToolView, at: PlanPoint, height_m: number | null): DeviceChange['space'] {
  if (height_m === null) return 'room';
  if (height_m < 0) return 'under-floor';
  const ceiling_m = localCeiling_m(view, at);
  return ceiling_m !== undefined && height_m > ceiling_m + SAME_PLACE_m ? 'ceiling-void' : 'room';
}

const placing = placingTool<DeviceSpot>({
  id: 'device',
  hint(spot, view) {
    const { deviceKind, deviceHeight_m } = view.session.toolOptions;
    const what = DEVICE_WORDS[deviceKind].toLowerCase();
    const height = deviceHeight_m === null ? 'Its height is not known yet: type it' : `Its middle will be ${lengthText(view, deviceHeight_m)} above the floor; a typed height changes that`;
    if (spot?.place.wall) return `Click to hang the ${what} on this wall, or type its distance from the start of the wall. ${height}.`;
    return `Click where the ${what} goes; its kind is chosen on the right. ${height}.`;
  },
  sketch(spot, view) {
    if (!spot) return { asks: ['height'] };
    const { at, facing_rad, wall, along_m } = spot.place;
    const { scale_px_m } = view.session.camera;
    const ring = { places: Array.from({ length: 16 }, (_, i) => polar(at, (i * Math.PI) / 8, 6 / scale_px_m)), closed: true };
    if (!wall || facing_rad === null) return { lines: [ring], asks: ['height'] };
    const { lines, labels } = fromStart(view, wall, at, along_m);
    return { lines: [ring, { places: [at, polar(at, facing_rad, 18 / scale_px_m)] }, ...lines], labels, asks: ['length', 'height'] };
  },
  spotAt: (view, { raw, point }) => ({ place: devicePlace(view.plan.levels[view.session.level], view.session.toolOptions.deviceKind, raw, point), pointer: raw }),
  nowhere: 'Point at the place where it goes.',
  typedSpot(view, spot, { length_m }) {
    if (length_m === null) return 'Type a height, or point at a wall and type the distance from its start.';
    if (!spot?.place.wall) return 'Point at a wall, then type the distance from its start.';
    const { place: { wall }, pointer } = spot;
    return beyondWall(view, wall, length_m, 0, 'This would be') ?? { place: onWall(wall, length_m, pointer), pointer };
  },
  put(view, { place: { at, facing_rad } }, typed) {
    const { deviceKind, signKind, deviceHeight_m } = view.session.toolOptions;
    const height_m = typed?.height_m ?? deviceHeight_m;
    const given: DeviceChange = {
      height_m,
      ...(deviceKind === 'sign' ? { sign: signKind } : {}),
      ...(deviceKind === 'detector' ? { space: spaceAt(view, at, height_m) } : {}),
    };
    return addDevice(view.session.level, deviceKind, at, facing_rad, given);
  },
});

/** Places detectors, alarms, signs, switches and air outlets; what hangs on a wall catches it and faces away from it. */
export const deviceTool: Tool<DeviceSpot | null> = {
  ...placing,
  step(spot, event, view) {
    if (event.kind !== 'typed' || event.height_m === null) return placing.step(spot, event, view);
    // A typed height holds for the next ones too; typed alone it places nothing.
    const session = { toolOptions: { ...view.session.toolOptions, deviceHeight_m: event.height_m } };
    if (event.length_m === null) return { state: spot, session };
    const next = placing.step(spot, event, view);
    return next.commit ? { ...next, session } : next;
  },
};
