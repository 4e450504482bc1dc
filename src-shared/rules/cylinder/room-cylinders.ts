import type { Derived, DerivedLevel, DerivedNetwork, Space } from '../../derived/derived.ts';
import type { OtherCylinder } from '../../derived/front-depth.ts';
import { remembered, rememberedPart, sameList } from '../../derived/remember.ts';
import type { Level, Network } from '../../model/plan.ts';
import type { UnitProfile } from '../../profile/unit-profile.ts';
import type { Asked } from '../rule.ts';
import { type SubjectsOf, per } from '../subjects.ts';
import { roomAround } from './cylinders.ts';

/** A cylinder of a room; its radius is undefined while its profile leaves the diameter blank. */
export interface RoomCylinder extends Omit<OtherCylinder, 'radius_m'> {
  readonly network: string;
  readonly id: string;
  readonly radius_m: number | undefined;
}

interface StandingCylinder {
  readonly room: string;
  readonly cylinder: RoomCylinder;
}

/** The cylinders of one network that stand in a room, each with the key of the room. */
const standingOf = rememberedPart((cylinders: Network['cylinders'], network: string, level: string, spaces: readonly Space[], profile: UnitProfile | undefined): readonly StandingCylinder[] => {
  const diameter_m = profile?.limits.cylinderDiameter_m?.value;
  return Object.values(cylinders).flatMap(({ id, name, at }) => {
    const room = roomAround(spaces, level, at);
    return room ? [{ room: room.key, cylinder: { id, name, at, network, radius_m: diameter_m === undefined ? undefined : diameter_m / 2 } }] : [];
  });
});

const byRoom = remembered((standing: readonly (readonly StandingCylinder[])[]): ReadonlyMap<string, readonly RoomCylinder[]> => {
  const found = new Map<string, RoomCylinder[]>();
  for (const { room, cylinder } of standing.flat()) {
    const known = found.get(room);
    if (known) known.push(cylinder);
    else found.set(room, [cylinder]);
  }
  return found;
});

const lastStanding = new WeakMap<DerivedLevel, readonly (readonly StandingCylinder[])[]>();

/** The cylinders of a level by the key of the room that they stand in: the very same while none of them changes. */
function cylindersByRoom(level: DerivedLevel, networks: readonly DerivedNetwork[]): ReadonlyMap<string, readonly RoomCylinder[]> {
  const fresh = networks.map(({ network, profile }) => standingOf(network.cylinders, network.id, level.level.id, level.spaces, profile));
  const standing = sameList(lastStanding.get(level), fresh);
  lastStanding.set(level, standing);
  return byRoom(standing);
}

/** A network on its level, with the cylinders of every network there by room. */
interface AmongCylinders {
  readonly network: DerivedNetwork;
  readonly level: DerivedLevel;
  readonly rooms: ReadonlyMap<string, readonly RoomCylinder[]>;
}

const among = remembered((network: DerivedNetwork, level: DerivedLevel, rooms: AmongCylinders['rooms']): AmongCylinders => ({ network, level, rooms }));

/** Every rule about cylinders of a room asks for the same plan. */
const networksAmongCylinders = remembered(({ networks, levels }: Derived): readonly AmongCylinders[] => {
  const onLevel = new Map(levels.map(({ level }): [Level, DerivedNetwork[]] => [level, []]));
  for (const network of networks) onLevel.get(network.level)?.push(network);
  const byLevel = new Map(levels.map((level) => [level.level, { level, rooms: cylindersByRoom(level, onLevel.get(level.level) ?? []) }]));
  return networks.flatMap((network) => {
    const on = byLevel.get(network.level);
    return on ? [among(network, on.level, on.rooms)] : [];
  });
});

/** Each network with the cylinders that stand in the same rooms as its own. */
export const perNetworkAmongCylinders = <S>(of: (network: DerivedNetwork, level: DerivedLevel, rooms: AmongCylinders['rooms']) => readonly Asked<S>[]): SubjectsOf<S> =>
  per(networksAmongCylinders, ({ network }: AmongCylinders) => network.ref.id)(({ network, level, rooms }) => of(network, level, rooms));

/** Whether the size of a cylinder is known. */
export const isMeasured = (other: RoomCylinder): other is RoomCylinder & OtherCylinder => other.radius_m !== undefined;
