import { placedOf } from '../../derived/device-place.ts';
import type { DerivedLevel, DerivedNetwork } from '../../derived/derived.ts';
import { devicesOfKind } from '../../derived/devices-by-kind.ts';
import { type EnclosureShape, shapeOf } from '../../derived/enclosure-shape.ts';
import { neighbourName } from '../../derived/neighbours.ts';
import { rememberedPart } from '../../derived/remember.ts';
import { isInsideOrOn, isInsideRegion, sideOfOutline } from '../../geometry/inside.ts';
import { distanceToOutline_m } from '../../geometry/outline.ts';
import { type PlanPoint, distance_m } from '../../geometry/point.ts';
import { type Segment, distanceToSegment_m, nearestOnSegment } from '../../geometry/segment.ts';
import { LENGTH_SLACK_m } from '../../geometry/tolerance.ts';
import type { Adjoining, Device, Level } from '../../model/plan.ts';
import { bothSubjects } from '../both-subjects.ts';
import type { FindingInput, Place } from '../finding.ts';
import { type Answer, type Asked, atMost, defineRule, notChecked } from '../rule.ts';
import { type ServedRoom, perServedRoom, placeOfRoom } from '../served-rooms.ts';
import { perNetworkOnLevel } from '../subjects.ts';
import { deviceName, doorName, roomDevices, roomDoorways } from './room-devices.ts';

type Sign = Extract<Device, { kind: 'sign' }>;

/** How far a sign may be from what it is about [m], all common practice. */
const FROM_DOOR_m = 1;
const FROM_RELEASE_m = 1;
const FROM_CYLINDER_m = 2;
/** A sign on the wall of an adjoining space may be drawn this far outside it [m]. */
const ON_WALL_m = 0.3;
/** A sign this near hangs over or under it [m]. */
const SAME_SPOT_m = 0.01;
/** One that is farther off than this over what is allowed is about something else [m]. */
const NEARBY_m = 3;
const PRACTICE = 'common practice';

/** A place that wants a sign, with the signs that may count for it, nearest first. */
interface Wanting {
  readonly level: string;
  /** "outside at this door". */
  readonly where: string;
  readonly kindWords: string;
  readonly at: readonly PlanPoint[];
  readonly signs: readonly { readonly sign: Sign; readonly off_m: number; readonly from: PlanPoint }[];
  /** undefined: anywhere in it will do. */
  readonly most_m: number | undefined;
  /** Whether gas reaches there at all is not known. */
  readonly isDoubtful: boolean;
}

const signsByKind = rememberedPart((devices: Level['devices']): ReadonlyMap<Sign['sign'], readonly Sign[]> => {
  const signs = devicesOfKind({ devices }, 'sign');
  return new Map([...new Set(signs.map(({ sign }) => sign))].map((kind) => [kind, signs.filter(({ sign }) => sign === kind)]));
});
const signsOf = ({ level }: DerivedLevel, kind: Sign['sign']): readonly Sign[] => signsByKind(level.devices).get(kind) ?? [];

/** The signs that are near enough, nearest first; else the nearest alone. */
function nearestSigns(signs: readonly Sign[], most_m: number, offOf_m: (at: PlanPoint) => number, fromOf: (at: PlanPoint) => PlanPoint): Wanting['signs'] {
  const near: { readonly sign: Sign; readonly off_m: number }[] = [];
  let nearest: { readonly sign: Sign; readonly off_m: number } | undefined;
  for (const sign of signs) {
    const off_m = offOf_m(sign.at);
    if (off_m <= most_m + LENGTH_SLACK_m) near.push({ sign, off_m });
    else if (near.length === 0 && (!nearest || off_m < nearest.off_m)) nearest = { sign, off_m };
  }
  const found = near.length === 0 && nearest ? [nearest] : near.sort((a, b) => a.off_m - b.off_m);
  return found.map((each) => ({ ...each, from: fromOf(each.sign.at) }));
}

/** Whether a sign hangs outside a room or on its wall. */
function isOutside(at: PlanPoint, { outline, holes, bounds: { minX, minY, maxX, maxY } }: EnclosureShape): boolean {
  if (at.x < minX - ON_WALL_m || at.x > maxX + ON_WALL_m || at.y < minY - ON_WALL_m || at.y > maxY + ON_WALL_m) return true;
  return !isInsideRegion(at, outline, holes) || sideOfOutline(at, outline) === 'on';
}
const middleOf = ({ a, b }: Segment): PlanPoint => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** Each door, from outside. */
function atDoors(room: ServedRoom): Asked<Wanting>[] {
  const doorways = roomDoorways(room);
  if (doorways.length === 0) return [];
  const shape = shapeOf(room.enclosure, room.ref.level);
  const outside = signsOf(room.on, 'entrance').filter(({ at }) => isOutside(at, shape));
  return doorways.map((doorway) => ({
    subject: {
      level: room.ref.level,
      where: 'outside at this door',
      kindWords: 'that warns who comes in',
      at: [middleOf(doorway.face)],
      signs: nearestSigns(outside, FROM_DOOR_m, (at) => distanceToSegment_m(at, doorway.face), (at) => nearestOnSegment(at, doorway.face)),
      most_m: FROM_DOOR_m,
      isDoubtful: false,
    },
    ref: doorway.ref,
    name: doorName(doorway, room),
  }));
}

/** The inside of the enclosure. */
function within(room: ServedRoom): Asked<Wanting> {
  const signs = placedOf(roomDevices(room), 'sign').filter(({ where, device }) => where === 'inside' && device.sign === 'inside');
  return {
    subject: { level: room.ref.level, where: 'inside', kindWords: 'that says what to do at the alarm', at: placeOfRoom(room).at, signs: signs.map(({ device }) => ({ sign: device, off_m: 0, from: device.at })), most_m: undefined, isDoubtful: false },
    ref: room.ref,
    name: `${room.name}, inside`,
  };
}

const isIn = (at: PlanPoint, { outline }: Adjoining): boolean => isInsideOrOn(at, outline) || distanceToOutline_m(at, outline) <= ON_WALL_m;

/** Each adjoining space that gas may reach, but the open air. */
const beside = (room: ServedRoom): Asked<Wanting>[] =>
  room.neighbours.flatMap((neighbour) => {
    const { beyond } = neighbour;
    if (beyond.kind !== 'adjoining' || beyond.adjoining.kind === 'outdoors' || beyond.adjoining.gas === 'does-not-reach') return [];
    const { adjoining } = beyond;
    const signs = signsOf(room.on, 'adjacent').filter(({ at }) => isIn(at, adjoining));
    return [
      {
        subject: { level: room.ref.level, where: 'in this space', kindWords: `that warns of gas from ${room.name}`, at: adjoining.outline, signs: signs.map((sign) => ({ sign, off_m: 0, from: sign.at })), most_m: undefined, isDoubtful: adjoining.gas === 'not-assessed' },
        ref: beyond.ref,
        name: `${neighbourName(neighbour)}, beside ${room.name}`,
      },
    ];
  });

/** Each manual release of the enclosure. */
function atReleases(room: ServedRoom): Asked<Wanting>[] {
  const signs = signsOf(room.on, 'manual-release');
  return placedOf(roomDevices(room), 'manual-release').map((placed) => ({
    subject: {
      level: room.ref.level,
      where: 'at this manual release',
      kindWords: 'that says what it releases and how',
      at: [placed.device.at],
      signs: nearestSigns(signs, FROM_RELEASE_m, (at) => distance_m(at, placed.device.at), () => placed.device.at),
      most_m: FROM_RELEASE_m,
      isDoubtful: false,
    },
    ref: placed.ref,
    name: deviceName(placed, 'Manual release'),
  }));
}

/** The cylinders of a network: the one that is farthest from its sign counts. */
function atCylinders({ ref, network }: DerivedNetwork, on: DerivedLevel): Asked<Wanting>[] {
  const signs = signsOf(on, 'cylinder');
  const worst = Object.values(network.cylinders)
    .map(({ at }) => ({ at, signs: nearestSigns(signs, FROM_CYLINDER_m, (sign) => distance_m(sign, at), () => at) }))
    .reduce<{ at: PlanPoint; signs: Wanting['signs'] } | undefined>((most, each) => (most && (most.signs[0]?.off_m ?? Infinity) >= (each.signs[0]?.off_m ?? Infinity) ? most : each), undefined);
  if (!worst) return [];
  return [{ subject: { level: on.level.id, where: 'at the cylinders', kindWords: 'that warns of the gas in them', at: [worst.at], signs: worst.signs, most_m: FROM_CYLINDER_m, isDoubtful: false }, ref, name: `${network.name}, cylinders` }];
}

/**
 * S4: signs warn at every entrance, inside, in every adjoining space that gas may reach, at the cylinders and at every
 * manual release.
 * Measure: from the place to the nearest sign of its kind [m]. Limit: 1 m from a doorway and from a manual release, 2 m
 * from a cylinder; inside and in an adjoining space any place will do.
 * Not checked: nobody wrote down what the sign says, or whether gas reaches the adjoining space.
 */
export const s04Signs = defineRule<Wanting>({
  id: 'S4',
  title: 'Signs',
  severity: 'stop',
  measure: 'length',
  basis: {
    formula: 'a sign outside at every door, inside, in adjoining spaces that gas may reach, at the cylinders, at every manual release',
    source: 'NFPA 2001 and OSHA 29 CFR 1910.160: warning signs at entrances to, inside and beside protected spaces, and at manual releases (memory); distances: common practice',
    caution: 'Wording, colours and size as the adopted edition and the authority ask. Signs are checked for their place, not for what they say.',
  },
  subjects: bothSubjects(
    perServedRoom((room) => [...atDoors(room), within(room), ...beside(room), ...atReleases(room)]),
    perNetworkOnLevel(atCylinders),
  ),
  check({ level, where, kindWords, at, signs, most_m, isDoubtful }, { say }): Answer {
    const near = signs.filter(({ off_m }) => most_m === undefined || off_m <= most_m + LENGTH_SLACK_m);
    const [first] = signs;
    const written = near.find(({ sign }) => sign.wording.trim() !== '');
    const shown = written ?? near[0] ?? first;
    const isNear = shown !== undefined && most_m !== undefined && shown.off_m <= most_m + NEARBY_m;
    const figures = most_m !== undefined && shown ? atMost(shown.off_m, { value: most_m, source: PRACTICE }, LENGTH_SLACK_m) : ({ kind: 'judged' } as const);
    const place: Place = { level, at, dimension: isNear ? { a: shown.from, b: shown.sign.at } : undefined };
    const inputs: FindingInput[] = near.map(({ sign }) => ({ label: sign.name || 'Sign', value: sign.wording.trim() || 'wording not written down', source: 'plan' }));
    if (written) return { ...figures, isKept: true, text: `The sign “${written.sign.name || 'without a name'}” stands ${where}${most_m === undefined || written.off_m < SAME_SPOT_m ? '' : `, ${say.length(written.off_m)} off`}.`, inputs, place };
    if (near[0]) return notChecked(`nobody has written down what the sign “${near[0].sign.name || 'without a name'}” says.`, place);
    if (isDoubtful) return notChecked('whether gas reaches this space is not assessed, so that nobody knows whether it needs a sign.', place);
    const far = first && most_m !== undefined && isNear ? ` The nearest is ${say.against(first.off_m, most_m).value} off; ${say.against(first.off_m, most_m).limit} is common practice.` : '';
    return { ...figures, isKept: false, text: `No sign ${kindWords} stands ${where}.${far} Place one.`, place, cure: { kind: 'advice', text: `Place a sign ${where}.` } };
  },
});
