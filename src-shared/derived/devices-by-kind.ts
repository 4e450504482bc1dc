import type { Device, DeviceKind, Level } from '../model/plan.ts';
import { rememberedPart } from './remember.ts';

const byKind = rememberedPart((devices: Level['devices']): ReadonlyMap<DeviceKind, readonly Device[]> => {
  const found = new Map<DeviceKind, Device[]>();
  for (const device of Object.values(devices)) {
    const known = found.get(device.kind);
    if (known) known.push(device);
    else found.set(device.kind, [device]);
  }
  return found;
});

const NONE: readonly Device[] = [];

/** The devices of a level that are of one kind, in the order of the plan; looked through once for all who ask. */
export const devicesOfKind = <K extends DeviceKind>({ devices }: Pick<Level, 'devices'>, kind: K): readonly Extract<Device, { kind: K }>[] => (byKind(devices).get(kind) ?? NONE) as readonly Extract<Device, { kind: K }>[];
