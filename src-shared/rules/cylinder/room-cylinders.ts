import type { Derived } from '../../derived/derived.ts';
import type { OtherCylinder } from '../../derived/front-depth.ts';
import { roomAround } from './cylinders.ts';

/** A cylinder of a room; its radius is undefined while its profile leaves the diameter blank. */
export interface RoomCylinder extends Omit<OtherCylinder, 'radius_m'> {
  readonly network: string;
  readonly id: string;
  readonly radius_m: number | undefined;
}

/** Every cylinder by the key of the room that it stands in. */
export function cylindersByRoom({ networks, spaces }: Derived): ReadonlyMap<string, readonly RoomCylinder[]> {
  const found = new Map<string, RoomCylinder[]>();
  for (const { network, level, profile } of networks) {
    const diameter_m = profile?.limits.cylinderDiameter_m?.value;
    for (const { id, name, at } of Object.values(network.cylinders)) {
      const room = roomAround(spaces, level.id, at);
      if (!room) continue;
      const one = { id, name, at, network: network.id, radius_m: diameter_m === undefined ? undefined : diameter_m / 2 };
      found.set(room.key, [...(found.get(room.key) ?? []), one]);
    }
  }
  return found;
}

/** Whether the size of a cylinder is known. */
export const isMeasured = (other: RoomCylinder): other is RoomCylinder & OtherCylinder => other.radius_m !== undefined;
