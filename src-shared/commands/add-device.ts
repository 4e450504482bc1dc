import type { PlanPoint } from '../geometry/point.ts';
import { newDevice } from '../model/new-device.ts';
import { type DeviceKind, type Ref, takeId } from '../model/plan.ts';
import { DEVICE_WORDS } from '../model/thing-name.ts';
import { command } from './command.ts';
import { type DeviceChange, setDevice } from './edit-device.ts';
import { levelOf } from './lookup.ts';
import { nextDeviceName } from './next-name.ts';
import { soundAngle_rad, soundPoint } from './sound-value.ts';

/**
 * Puts a detector, sign, switch or other small thing on a level. What is not given is not known yet.
 * @param at     its middle on the plan [m]
 * @param facing_rad where it looks or opens to [rad]; null: every way
 * @param given  what is known of it already, such as its height
 * Refuses a place too far off, a value out of range and a field that its kind has not.
 */
export const addDevice = command(
  (_plan, _level: string, kind: DeviceKind, _at: PlanPoint, _facing_rad: number | null, _given?: DeviceChange) => `Place ${DEVICE_WORDS[kind].toLowerCase()}`,
  (draft, levelId, kind, at, facing_rad, given = {}): readonly Ref[] => {
    const level = levelOf(draft, levelId);
    const id = takeId(draft, 'device');
    const device = newDevice(kind, id, nextDeviceName(draft, kind), soundPoint(at));
    device.facing_rad = facing_rad === null ? null : soundAngle_rad(facing_rad);
    setDevice(device, given);
    level.devices[id] = device;
    return [{ kind: 'device', level: levelId, id }];
  },
);
