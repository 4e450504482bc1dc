import { findCorner, findThing } from './find-thing.ts';
import type { DeviceKind, Plan, Ref } from './plan.ts';

/** Kinds of opening in the user's words. */
export const OPENING_WORDS = {
  door: 'Door',
  'relief-vent': 'Relief vent',
  damper: 'Damper',
  grille: 'Grille',
  penetration: 'Penetration',
  window: 'Window',
} as const;

/** Kinds of obstacle in the user's words. */
export const OBSTRUCTION_WORDS = {
  beam: 'Beam',
  duct: 'Duct',
  rack: 'Rack',
  cabinet: 'Cabinet',
  column: 'Column',
  light: 'Light',
  tray: 'Cable tray',
  panel: 'Electrical panel',
  partition: 'Partition',
  'live-part': 'Live part',
  'work-place': 'Work place',
  other: 'Other',
} as const;

/** Kinds of device in the user's words. */
export const DEVICE_WORDS: Readonly<Record<DeviceKind, string>> = {
  detector: 'Detector',
  sounder: 'Sounder',
  sign: 'Sign',
  'manual-release': 'Manual release',
  abort: 'Abort switch',
  disconnect: 'Disconnect switch',
  'lock-out-valve': 'Lock-out valve',
  'door-button': 'Door exit button',
  'control-panel': 'Releasing panel',
  diffuser: 'Diffuser',
  'air-intake': 'Air intake',
};

const WORDS: Readonly<Record<Ref['kind'], string>> = {
  underlay: 'Floor plan',
  enclosure: 'Enclosure',
  obstruction: 'Obstacle',
  device: 'Device',
  adjoining: 'Adjoining space',
  dimension: 'Dimension',
  note: 'Note',
  corner: 'Corner',
  wall: 'Wall',
  opening: 'Opening',
  'ceiling-zone': 'Ceiling zone',
  network: 'Pipe network',
  cylinder: 'Cylinder',
  node: 'Pipe end',
  pipe: 'Pipe',
  nozzle: 'Nozzle',
  support: 'Pipe support',
};

/** What kind of thing a reference names, in the user's words. */
export const kindWord = (ref: Ref): string => WORDS[ref.kind];

/** The kind before a name, unless the name says it already: "Nozzle N2", but "West door". */
const named = (word: string, name: string | undefined): string => {
  if (!name) return word;
  return name.toLowerCase().includes(word.toLowerCase()) ? name : `${word} ${name}`;
};

/** Name of a thing as the user knows it: "Nozzle N2", "Wall 3 of Signal hut". A thing that has gone answers its kind. */
export function thingName(plan: Pick<Plan, 'levels' | 'networks'>, ref: Ref): string {
  const word = kindWord(ref);
  const found = findThing(plan, ref);
  switch (found?.kind) {
    case 'network':
    case 'enclosure':
    case 'adjoining':
      return found.thing.name || word;
    case 'cylinder':
    case 'nozzle':
    case 'ceiling-zone':
    case 'underlay':
      return named(word, found.thing.name);
    case 'pipe':
      return named(word, found.thing.size.concat(' in'));
    case 'opening':
      return named(OPENING_WORDS[found.thing.kind], found.thing.name);
    case 'obstruction':
      return named(OBSTRUCTION_WORDS[found.thing.kind], found.thing.name);
    case 'device':
      return named(DEVICE_WORDS[found.thing.kind], found.thing.name);
    case 'corner':
    case 'wall':
      return `${word} ${(findCorner(found.enclosure, ref.id)?.index ?? 0) + 1} of ${found.enclosure.name || 'the enclosure'}`;
    default:
      return word;
  }
}

/** The same inside a sentence: "nozzle N2", "door", "3 things". A name that the user gave keeps its capitals. */
export function thingsInSentence(plan: Plan, refs: readonly Ref[]): string {
  const [only] = refs;
  if (!only) return 'nothing';
  if (refs.length > 1) return `${refs.length} things`;
  const name = thingName(plan, only);
  const word = kindWord(only);
  return name === word || name.startsWith(`${word} `) ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}
