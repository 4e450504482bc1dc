import { type Doorway, type PlacedDevice, devicesOf, doorwaysOf } from '../../derived/device-place.ts';
import type { ServedRoom } from '../served-rooms.ts';

/** Devices that belong to a served enclosure. */
export const roomDevices = ({ on, enclosure }: Pick<ServedRoom, 'on' | 'enclosure'>): readonly PlacedDevice[] => devicesOf(on.level, enclosure.id);

/** Its doorways. */
export const roomDoorways = ({ ref, enclosure }: Pick<ServedRoom, 'ref' | 'enclosure'>): readonly Doorway[] => doorwaysOf(enclosure, ref.level);

/** Name of a device as the user knows it, and what stands for one without a name. */
export const deviceName = ({ device }: Pick<PlacedDevice, 'device'>, otherwise: string): string => device.name.trim() || otherwise;

/** A door under its name and that of its room, as several rooms have a "Door 1". */
export const doorName = ({ opening }: Pick<Doorway, 'opening'>, { name }: Pick<ServedRoom, 'name'>): string => `${name}, ${opening.name.trim() || 'door'}`;
