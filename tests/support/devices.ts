import type { Device, DeviceKind, Level } from '#shared/model/plan';
import { newDevice } from '#shared/model/new-device';
import { type Placing, placed, placedAngle_rad } from './layout.ts';

/** A device for a layout: d1, d2, … in the order given; what is left out is not known. */
export type DeviceSpec = { readonly kind: DeviceKind; readonly x: number; readonly y: number } & Readonly<Record<string, unknown>>;

/** Devices of a level, laid elsewhere with their building when asked. */
export const devicesFrom = (specs: readonly DeviceSpec[], placing?: Placing): Level['devices'] =>
  Object.fromEntries(
    specs.map(({ kind, x, y, ...change }, i) => {
      const id = `d${i + 1}`;
      const at = placing ? placed({ x, y }, placing) : { x, y };
      const device = { ...newDevice(kind, id, `D${i + 1}`, at), ...change } as Device;
      return [id, placing && device.facing_rad !== null ? { ...device, facing_rad: placedAngle_rad(device.facing_rad, placing) } : device];
    }),
  );
