import { type Datum, datumsOf, faceName, findDatum, fromFace_m } from '../derived/datum.ts';
import type { Derived, Space, WallFace } from '../derived/derived.ts';
import { distanceToOutline_m, isInside } from '../geometry/outline.ts';
import type { PlanPoint } from '../geometry/point.ts';
import type { Device, Level, Settings } from '../model/plan.ts';
import { AIR_WORDS, SENSES_WORDS, SIGN_WORDS, SPACE_WORDS } from '../model/surroundings-words.ts';
import { DEVICE_WORDS } from '../model/thing-name.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity } from '../units/quantity-text.ts';
import { heightText } from './sheet-text.ts';
import type { Table } from './tables.ts';

const NOT_KNOWN = 'not known';

/** A device farther than this from every room is placed from none [m]. */
const FARTHEST_m = 5;

const asked = (what: string, answer: boolean | null, yes: string, no: string): string => (answer === null ? `${what} ${NOT_KNOWN}` : answer ? yes : no);
const small = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

/** What is known of a device besides its place, in words; what nobody has looked at says so. */
export function deviceFacts(device: Device, lengths: Settings['lengths']): string {
  switch (device.kind) {
    case 'detector':
      return [device.senses === null ? `what it senses ${NOT_KNOWN}` : small(SENSES_WORDS[device.senses]), device.zone === '' ? `zone ${NOT_KNOWN}` : `zone ${device.zone}`, small(SPACE_WORDS[device.space])].join(', ');
    case 'sounder':
      return [
        ...(device.isHeard ? [device.sound_dBA === null ? `heard, loudness ${NOT_KNOWN}` : `heard, ${formatQuantity(device.sound_dBA, 'sound', lengths)} at 3 m`] : []),
        ...(device.isSeen ? [device.light_cd === null ? `seen, light ${NOT_KNOWN}` : `seen, ${device.light_cd} cd`] : []),
      ].join('; ') || 'neither heard nor seen';
    case 'sign':
      return `${small(SIGN_WORDS[device.sign])}: ${device.wording.trim() === '' ? `wording ${NOT_KNOWN}` : `“${device.wording.trim().replace(/\s+/g, ' ')}”`}`;
    case 'manual-release':
      return asked('guard', device.isGuarded, 'guarded against a chance pull', 'NOT guarded against a chance pull');
    case 'abort':
      return `${asked('whether it must be held', device.isHeld, 'works only while held', 'STAYS without being held')}; ${asked('whether manual release goes before it', device.yieldsToRelease, 'manual release goes before it', 'HOLDS manual release up')}`;
    case 'disconnect':
      return `${asked('key', device.isKeyed, 'keyed', 'NOT keyed')}, ${asked('supervision', device.isSupervised, 'supervised', 'NOT supervised')}`;
    case 'lock-out-valve':
      return asked('supervision', device.isSupervised, 'supervised', 'NOT supervised');
    case 'diffuser':
      return small(AIR_WORDS[device.air]);
    case 'door-button':
    case 'control-panel':
    case 'air-intake':
      return '';
  }
}

/** What hangs on a wall face itself is in the room [m]. */
const ON_WALL_m = 0.02;

/** The room that a device stands in, else the nearest one. */
function roomOf(rooms: readonly Space[], at: PlanPoint): Space | undefined {
  const within = rooms.find(({ outline }) => isInside(at, outline));
  if (within) return within;
  const near = rooms.map((room) => ({ room, away_m: distanceToOutline_m(at, room.outline) })).sort((a, b) => a.away_m - b.away_m)[0];
  return near && near.away_m <= FARTHEST_m ? near.room : undefined;
}

const fromWords = (face: WallFace, at: PlanPoint, lengths: Settings['lengths']): string => {
  const away_m = fromFace_m(face, at);
  return `${faceName(face)} ${formatLength(Math.abs(away_m), lengths)}${away_m < 0 ? ' behind it' : ''}`;
};

/** Devices of a level with all that an electrician needs to place them. */
export function deviceSchedule(derived: Derived, level: Level): Table {
  const { levels, settings } = derived.plan;
  const { lengths } = settings;
  const rooms = derived.spaces.filter((space) => space.level.id === level.id && space.kind === 'room');
  const ofNozzles = datumsOf(derived);
  const datums = new Map<string, Datum | undefined>();
  const datumOf = (room: Space): Datum | undefined => {
    if (!datums.has(room.key)) datums.set(room.key, ofNozzles.get(room.key) ?? findDatum(room, []));
    return datums.get(room.key);
  };
  const rank = Object.keys(DEVICE_WORDS);
  const devices = Object.values(level.devices).sort((a, b) => rank.indexOf(a.kind) - rank.indexOf(b.kind) || a.name.localeCompare(b.name, 'en', { numeric: true }));
  return {
    title: Object.keys(levels).length > 1 ? `Devices: ${level.name}` : 'Devices',
    shortTitle: 'Devices',
    note: 'Distances run from the finished datum faces, square to them, to the middle of the device; heights above the finished floor to its middle.',
    columns: [
      { head: 'Device', font: 'bold' },
      { head: 'What it is' },
      { head: 'Room' },
      { head: 'From', align: 'right' },
      { head: 'And from', align: 'right' },
      { head: 'Height', align: 'right' },
      { head: 'What is known', isWide: true },
    ],
    rows: devices.map((device) => {
      const room = roomOf(rooms, device.at);
      const datum = room && datumOf(room);
      const isIn = room && (isInside(device.at, room.outline) || distanceToOutline_m(device.at, room.outline) <= ON_WALL_m);
      return [
        device.name,
        DEVICE_WORDS[device.kind],
        room ? (isIn ? room.name : `outside ${room.name}`) : 'in no room',
        datum ? fromWords(datum.faces[0], device.at, lengths) : NOT_KNOWN,
        datum ? fromWords(datum.faces[1], device.at, lengths) : NOT_KNOWN,
        device.height_m === null ? NOT_KNOWN : heightText(device.height_m, lengths),
        deviceFacts(device, lengths),
      ];
    }),
  };
}
