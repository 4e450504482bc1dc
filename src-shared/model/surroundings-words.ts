import type { Adjoining, Device } from './plan.ts';

type OfKind<K extends Device['kind']> = Extract<Device, { kind: K }>;

/** Kinds of adjoining space in the user's words. */
export const ADJOINING_WORDS: Readonly<Record<Adjoining['kind'], string>> = {
  unknown: 'Not yet known',
  room: 'Room',
  corridor: 'Corridor',
  exit: 'Exit way',
  pit: 'Pit or low place',
  shaft: 'Shaft',
  outdoors: 'Outdoors',
};

/** What was found about gas that drifts into an adjoining space. */
export const GAS_WORDS: Readonly<Record<Adjoining['gas'], string>> = {
  'not-assessed': 'Nobody has looked',
  'does-not-reach': 'Does not reach it',
  alarmed: 'Reaches it: an oxygen alarm warns',
  ventilated: 'Reaches it: it is ventilated',
};

/** What each sign is for. */
export const SIGN_WORDS: Readonly<Record<OfKind<'sign'>['sign'], string>> = {
  entrance: 'At an entrance',
  inside: 'Inside the enclosure',
  adjacent: 'At an adjoining space',
  cylinder: 'At the cylinders',
  'manual-release': 'At a manual release',
};

/** What a detector senses. */
export const SENSES_WORDS: Readonly<Record<NonNullable<OfKind<'detector'>['senses']>, string>> = {
  smoke: 'Smoke',
  heat: 'Heat',
  aspirating: 'Smoke in drawn air',
  flame: 'Flame',
};

/** Which of the spaces of an enclosure. */
export const SPACE_WORDS: Readonly<Record<OfKind<'detector'>['space'], string>> = {
  room: 'In the room',
  'under-floor': 'Under the floor',
  'ceiling-void': 'Above the ceiling',
};

/** Which way the air goes at a diffuser. */
export const AIR_WORDS: Readonly<Record<OfKind<'diffuser'>['air'], string>> = {
  supply: 'Supply: into the room',
  return: 'Return: back to the air handler',
  extract: 'Extract: out of the building',
};
