import { addDevice } from '#shared/commands/add-device';
import type { DeviceChange } from '#shared/commands/edit-device';
import { type PlanPoint, distance_m, midpoint, polar } from '#shared/geometry/point';
import { SAME_PLACE_m } from '#shared/geometry/tolerance';
import { DEVICE_WORDS } from '#shared/model/thing-name';
import { commitOr } from './attempt.ts';
import { type DevicePlace, devicePlace, onWall } from './device-place.ts';
import { localCeiling_m } from './local-ceiling.ts';
import type { Tool, ToolStep, ToolView } from './tool.ts';
import { lengthText } from './typed-place.ts';

/** Where the next device would go. */
export interface DeviceState {
  readonly place: DevicePlace | null;
  readonly pointer: PlanPoint | null;
}

const start: DeviceState = { place: null, pointer: null };

const placeAt = (view: ToolView, raw: PlanPoint, point: PlanPoint): DevicePlace => devicePlace(view.plan.levels[view.session.level], view.session.toolOptions.deviceKind, raw, point);

/** Which space a detector watches: what hangs lower than the floor hangs under it, what hangs higher than the ceiling over it. */
function spaceAt(view: ToolView, at: PlanPoint, height_m: number | null): DeviceChange['space'] {
  if (height_m === null) return 'room';
  if (height_m < 0) return 'under-floor';
  const ceiling_m = localCeiling_m(view, at);
  return ceiling_m !== undefined && height_m > ceiling_m + SAME_PLACE_m ? 'ceiling-void' : 'room';
}

function put(state: DeviceState, view: ToolView, { at, facing_rad }: DevicePlace, height_m = view.session.toolOptions.deviceHeight_m): ToolStep<DeviceState> {
  const { deviceKind, signKind } = view.session.toolOptions;
  const given: DeviceChange = {
    height_m,
    ...(deviceKind === 'sign' ? { sign: signKind } : {}),
    ...(deviceKind === 'detector' ? { space: spaceAt(view, at, height_m) } : {}),
  };
  return commitOr(view, addDevice(view.session.level, deviceKind, at, facing_rad, given), { state }, state);
}

/** Places detectors, alarms, signs, switches and air outlets; what hangs on a wall catches it and faces away from it. */
export const deviceTool: Tool<DeviceState> = {
  id: 'device',
  start,
  hint({ place }, view) {
    const { deviceKind, deviceHeight_m } = view.session.toolOptions;
    const what = DEVICE_WORDS[deviceKind].toLowerCase();
    const height = deviceHeight_m === null ? 'Its height is not known yet: type it' : `Its middle will be ${lengthText(view, deviceHeight_m)} above the floor; a typed height changes that`;
    if (place?.wall) return `Click to hang the ${what} on this wall, or type its distance from the start of the wall. ${height}.`;
    return `Click where the ${what} goes; its kind is chosen on the right. ${height}.`;
  },
  sketch({ place }, view) {
    if (!place) return { asks: ['height'] };
    const ring = Array.from({ length: 16 }, (_, i) => polar(place.at, (i * Math.PI) / 8, 6 / view.session.camera.scale_px_m));
    if (!place.wall || place.facing_rad === null) return { lines: [{ places: ring, closed: true }], asks: ['height'] };
    const { a } = place.wall.segment;
    return {
      lines: [
        { places: ring, closed: true },
        { places: [place.at, polar(place.at, place.facing_rad, 18 / view.session.camera.scale_px_m)] },
        { places: [a, place.at], dashed: true },
      ],
      labels: [{ at: midpoint(a, place.at), text: `${lengthText(view, place.along_m)} from start` }],
      asks: ['length', 'height'],
    };
  },
  step(state, event, view) {
    switch (event.kind) {
      case 'cancel':
        return { state: start, finished: true };
      case 'move':
        return { state: { place: placeAt(view, event.raw, event.point), pointer: event.raw } };
      case 'down':
        return put({ ...state, pointer: event.raw }, view, placeAt(view, event.raw, event.point));
      case 'enter':
        return state.place ? put(state, view, state.place) : { state };
      case 'typed': {
        const { toolOptions } = view.session;
        const session = event.height_m === null ? {} : { session: { toolOptions: { ...toolOptions, deviceHeight_m: event.height_m } } };
        if (event.length_m === null) return event.height_m === null ? { state, refusal: 'Type a height, or point at a wall and type the distance from its start.' } : { state, ...session };
        const { place, pointer } = state;
        if (!place?.wall || !pointer) return { state, refusal: 'Point at a wall, then type the distance from its start.' };
        const { a, b } = place.wall.segment;
        if (event.length_m < 0 || event.length_m > distance_m(a, b)) return { state, refusal: `This would be beyond the end of this wall, which is ${lengthText(view, distance_m(a, b))} long.` };
        return { ...put(state, view, onWall(place.wall, event.length_m, pointer), event.height_m ?? toolOptions.deviceHeight_m), ...session };
      }
      default:
        return { state };
    }
  },
};
