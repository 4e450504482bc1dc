import type { Derived, DerivedLevel, DerivedNetwork, Space } from '../../derived/derived.ts';
import type { OtherCylinder } from '../../derived/front-depth.ts';
import { placeByPlace } from '../../derived/place-by-place.ts';
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
  /** Level id. */
  readonly level: string;
  readonly room: string;
  readonly cylinder: RoomCylinder;
}

/** The cylinders of one network that stand in a room, each with the key of the room. */
const standingOf = rememberedPart((cylinders: Network['cylinders'], network: string, level: string, spaces: readonly Space[], profile: UnitProfile | undefined): readonly StandingCylinder[] => {
  const diameter_m = profile?.limits.cylinderDiameter_m?.value;
  return Object.values(cylinders).flatMap(({ id, name, at }) => {
    const room = roomAround(spaces, level, at);
    return room ? [{ level, room: room.key, cylinder: { id, name, at, network, radius_m: diameter_m === undefined ? undefined : diameter_m / 2 } }] : [];
  });
});

type Standing = readonly (readonly StandingCylinder[])[];
const NOBODY: readonly StandingCylinder[] = [];

/** The cylinders of each network: the very same list while none of them changes. */
const standingEach = placeByPlace(({ network, level, profile }: DerivedNetwork, levels: Derived['levels']): readonly StandingCylinder[] => {
  const on = levels.find((each) => each.level === level);
  return on ? standingOf(network.cylinders, network.id, level.id, on.spaces, profile) : NOBODY;
});

const byRoom = remembered((standing: Standing): ReadonlyMap<string, readonly RoomCylinder[]> => {
  const found = new Map<string, RoomCylinder[]>();
  for (const { room, cylinder } of standing.flat()) {
    const known = found.get(room);
    if (known) known.push(cylinder);
    else found.set(room, [cylinder]);
  }
  return found;
});

const lastStanding = new WeakMap<DerivedLevel, Standing>();

/** The cylinders of each level by the key of the room that they stand in: the very same while none of a level changes. */
const cylindersByRoom = remembered((standing: Standing, levels: Derived['levels']): ReadonlyMap<Level, readonly [DerivedLevel, ReadonlyMap<string, readonly RoomCylinder[]>]> =>
  new Map(levels.map((level) => {
    const here = sameList(lastStanding.get(level), standing.filter(([first]) => first?.level === level.level.id));
    lastStanding.set(level, here);
    return [level.level, [level, byRoom(here)]];
  })),
);

/** A network on its level, with the cylinders of every network there by room. */
interface AmongCylinders {
  readonly network: DerivedNetwork;
  readonly level: DerivedLevel;
  readonly rooms: ReadonlyMap<string, readonly RoomCylinder[]>;
}

const networksAmong = placeByPlace((network: DerivedNetwork, byLevel: ReturnType<typeof cylindersByRoom>): AmongCylinders | undefined => {
  const on = byLevel.get(network.level);
  return on && { network, level: on[0], rooms: on[1] };
});

/** Every rule about cylinders of a room asks for the same plan. */
const networksAmongCylinders = remembered(({ networks, levels }: Derived): readonly AmongCylinders[] =>
  networksAmong(networks, cylindersByRoom(standingEach(networks, levels), levels)).filter((each) => each !== undefined),
);

/** Each network with the cylinders that stand in the same rooms as its own. */
export const perNetworkAmongCylinders = <S>(of: (network: DerivedNetwork, level: DerivedLevel, rooms: AmongCylinders['rooms']) => readonly Asked<S>[]): SubjectsOf<S> =>
  per(networksAmongCylinders, ({ network }: AmongCylinders) => network.ref.id)(({ network, level, rooms }) => of(network, level, rooms));

/** Whether the size of a cylinder is known. */
export const isMeasured = (other: RoomCylinder): other is RoomCylinder & OtherCylinder => other.radius_m !== undefined;
