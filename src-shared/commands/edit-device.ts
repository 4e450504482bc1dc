import type { Device, Plan, RefOf } from '../model/plan.ts';
import { newDevice } from '../model/new-device.ts';
import { deviceSchema } from '../model/schema.ts';
import { thingsInSentence } from '../model/thing-name.ts';
import type { z } from '../profile/zod.ts';
import { applyChange } from './apply-change.ts';
import { command } from './command.ts';
import { deviceOf, levelOf } from './lookup.ts';
import { soundAngle_rad, soundName } from './sound-value.ts';

type FieldOf<D> = D extends unknown ? keyof D : never;
type ValueOf<D, K extends PropertyKey> = D extends Readonly<Record<K, infer V>> ? V : never;

/** What may be set of a device; of what its kind has not, nothing. */
export type DeviceChange = { readonly [K in Exclude<FieldOf<Device>, 'id' | 'kind'>]?: ValueOf<Device, K> };

/** The fields that a kind of device has, every one optional. */
const FIELDS: ReadonlyMap<string, z.ZodObject> = new Map(
  deviceSchema.options.map((option) => {
    const fields: z.ZodObject = option;
    return [option.shape.kind.value, fields.omit({ id: true, kind: true }).partial()];
  }),
);

/** Sets fields of a device. Refuses a blank name, a value out of range and a field that its kind has not. */
export function setDevice(device: Device, change: DeviceChange): void {
  if (change.name !== undefined) soundName('A device', change.name);
  const fields = FIELDS.get(device.kind);
  const { facing_rad } = change;
  const given = typeof facing_rad === 'number' && Number.isFinite(facing_rad) ? { ...change, facing_rad: soundAngle_rad(facing_rad) } : change;
  if (fields) applyChange<Device>(device, fields, given as Partial<Device>);
}

/**
 * Changes a device. One that becomes another kind keeps its name, place, height and direction, and nothing is known
 * yet of the rest. Refuses a device that has gone, a blank name, a value out of range and a field that its kind has not.
 */
export const editDevice = command((plan: Plan, ref: RefOf<'device'>, _change: DeviceChange & { readonly kind?: Device['kind'] }) => `Edit ${thingsInSentence(plan, [ref])}`, (draft, ref, change) => {
  const { kind, ...rest } = change;
  const before = deviceOf(draft, ref);
  if (kind !== undefined && kind !== before.kind) {
    const { id, name, at, height_m, facing_rad } = before;
    levelOf(draft, ref.level).devices[id] = { ...newDevice(kind, id, name, at), height_m, facing_rad };
  }
  setDevice(deviceOf(draft, ref), rest);
});
