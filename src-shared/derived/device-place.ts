import { isInsideRegion } from '../geometry/inside.ts';
import type { PlanPoint } from '../geometry/point.ts';
import { type Segment, distanceToSegment_m } from '../geometry/segment.ts';
import type { Device, DeviceKind, Level, Opening, RefOf } from '../model/plan.ts';
import { openingFace } from './behind-opening.ts';
import { shapeOf } from './enclosure-shape.ts';
import { rememberedPart } from './remember.ts';

/** A device outside that stands no farther than this from a doorway belongs to that door [m]: 5 ft, common practice. */
export const AT_DOOR_m = 1.524;

/** A doorway of an enclosure: the piece of wall face that its door takes up. */
export interface Doorway {
  readonly ref: RefOf<'opening'>;
  readonly opening: Opening;
  readonly face: Segment;
}

/** A device with the enclosure that it belongs to. */
export interface PlacedDevice {
  readonly ref: RefOf<'device'>;
  readonly device: Device;
  /** In the enclosure or on its wall; or outside, at one of its doors. */
  readonly where: 'inside' | 'at-door';
  /** The nearest doorway of that enclosure; undefined when it has none. */
  readonly doorway: Doorway | undefined;
  /** To that doorway on the plan [m]; Infinity when there is none. */
  readonly fromDoor_m: number;
}

type ByEnclosure = ReadonlyMap<string, readonly PlacedDevice[]>;

/** The doorways of an enclosure, in the order of its openings. */
export const doorwaysOf = rememberedPart((enclosure: Level['enclosures'][string], level: string): readonly Doorway[] =>
  Object.values(enclosure.openings).flatMap((opening) => {
    const face = opening.kind === 'door' ? openingFace(enclosure, opening) : undefined;
    return face ? [{ ref: { kind: 'opening' as const, level, enclosure: enclosure.id, id: opening.id }, opening, face }] : [];
  }),
);

function nearestDoorway(at: PlanPoint, doorways: readonly Doorway[]): { readonly doorway: Doorway | undefined; readonly fromDoor_m: number } {
  let found: { doorway: Doorway | undefined; fromDoor_m: number } = { doorway: undefined, fromDoor_m: Infinity };
  for (const doorway of doorways) {
    const fromDoor_m = distanceToSegment_m(at, doorway.face);
    if (fromDoor_m < found.fromDoor_m) found = { doorway, fromDoor_m };
  }
  return found;
}

/**
 * Devices of a level by the enclosure that they belong to. One inside an outline, or on its wall, belongs to that
 * enclosure, to the smallest where several are around it; one outside belongs to the nearest door within `AT_DOOR_m`; any
 * other to none.
 */
const placedByEnclosure = rememberedPart((devices: Level['devices'], enclosures: Level['enclosures'], level: string): ByEnclosure => {
  const rooms = Object.values(enclosures).map((enclosure) => ({ id: enclosure.id, shape: shapeOf(enclosure, level), doorways: doorwaysOf(enclosure, level) }));
  const placed = new Map<string, PlacedDevice[]>();
  for (const device of Object.values(devices)) {
    const { at } = device;
    const near = rooms.filter(({ shape: { bounds } }) => at.x >= bounds.minX - AT_DOOR_m && at.x <= bounds.maxX + AT_DOOR_m && at.y >= bounds.minY - AT_DOOR_m && at.y <= bounds.maxY + AT_DOOR_m);
    const [around] = near.filter(({ shape }) => isInsideRegion(at, shape.outline, shape.holes)).sort((a, b) => a.shape.area_m2 - b.shape.area_m2);
    const byDoor = near.map(({ id, doorways }) => ({ id, ...nearestDoorway(at, doorways) })).sort((a, b) => a.fromDoor_m - b.fromDoor_m);
    const [nearest] = byDoor;
    const owner = around ? byDoor.find(({ id }) => id === around.id) : nearest && nearest.fromDoor_m <= AT_DOOR_m ? nearest : undefined;
    if (!owner) continue;
    const { id, doorway, fromDoor_m } = owner;
    const one: PlacedDevice = { ref: { kind: 'device', level, id: device.id }, device, where: around ? 'inside' : 'at-door', doorway, fromDoor_m };
    const known = placed.get(id);
    if (known) known.push(one);
    else placed.set(id, [one]);
  }
  return placed;
});

const NONE: readonly PlacedDevice[] = [];

/** Devices that belong to an enclosure of a level. */
export const devicesOf = ({ id, devices, enclosures }: Pick<Level, 'id' | 'devices' | 'enclosures'>, enclosure: string): readonly PlacedDevice[] =>
  placedByEnclosure(devices, enclosures, id).get(enclosure) ?? NONE;

/** A placed device of one kind. */
export type PlacedOf<K extends DeviceKind> = Omit<PlacedDevice, 'device'> & { readonly device: Extract<Device, { kind: K }> };

/** Those of one kind among placed devices. */
export const placedOf = <K extends DeviceKind>(placed: readonly PlacedDevice[], kind: K): PlacedOf<K>[] =>
  placed.filter((one): one is PlacedDevice & PlacedOf<K> => one.device.kind === kind);
