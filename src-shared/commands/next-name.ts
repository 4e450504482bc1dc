import type { Adjoining, DeviceKind, Obstruction, Opening, Plan } from '../model/plan.ts';
import { DEVICE_WORDS } from '../model/thing-name.ts';
import { asItStood } from './as-it-stood.ts';

export type NamedKind = 'enclosure' | 'obstruction' | 'device' | 'adjoining' | 'opening' | 'ceiling-zone' | 'network' | 'cylinder' | 'nozzle';

/** Names in use for a kind of thing, over the whole plan. */
export function namesIn(plan: Plan, kind: NamedKind): string[] {
  const names = (record: Readonly<Record<string, { readonly name: string }>>): string[] => Object.values(record).map(({ name }) => name);
  const levels = Object.values(plan.levels);
  const networks = Object.values(plan.networks);
  const enclosures = () => levels.flatMap((level) => Object.values(level.enclosures));
  switch (kind) {
    case 'enclosure':
      return levels.flatMap((level) => names(level.enclosures));
    case 'obstruction':
      return levels.flatMap((level) => names(level.obstructions));
    case 'device':
      return levels.flatMap((level) => names(level.devices));
    case 'adjoining':
      return levels.flatMap((level) => names(level.adjoining));
    case 'opening':
      return enclosures().flatMap(({ openings }) => names(openings));
    case 'ceiling-zone':
      return enclosures().flatMap(({ ceilingZones }) => names(ceilingZones));
    case 'network':
      return names(plan.networks);
    case 'cylinder':
      return networks.flatMap(({ cylinders }) => names(cylinders));
    case 'nozzle':
      return networks.flatMap(({ nozzles }) => names(nozzles));
  }
}

/** The highest number of a series of names: 7 of "N1", "N7" and "N". */
export function highestNumber(names: Iterable<string>, stem: string): number {
  let highest = 0;
  for (const name of names) {
    const digits = name.startsWith(stem) ? name.slice(stem.length) : '';
    if (/^\d{1,6}$/.test(digits)) highest = Math.max(highest, Number(digits));
  }
  return highest;
}

/** Numbers that one command has given so far, by its draft: names are sought in the plan as it stood before it. */
const given = new WeakMap<Plan, Map<string, number>>();

/**
 * The next name of a series, one more than the highest in use; a command that asks again gets the one after.
 * @param stem what stands before the number: "Room "
 */
export function nextName(draft: Plan, kind: NamedKind, stem: string): string {
  const numbers = given.get(draft) ?? new Map<string, number>();
  given.set(draft, numbers);
  const next = (numbers.get(stem) ?? highestNumber(namesIn(asItStood(draft), kind), stem)) + 1;
  numbers.set(stem, next);
  return `${stem}${next}`;
}

const OPENING_STEMS: Readonly<Record<Opening['kind'], string>> = {
  door: 'Door ', 'relief-vent': 'Vent ', damper: 'Damper ', grille: 'Grille ', penetration: 'Penetration ', window: 'Window ',
};
const OBSTRUCTION_STEMS: Readonly<Record<Obstruction['kind'], string>> = {
  beam: 'Beam ', duct: 'Duct ', rack: 'Rack ', cabinet: 'Cabinet ', column: 'Column ', light: 'Light ', tray: 'Tray ', panel: 'Panel ', partition: 'Partition ', 'live-part': 'Live part ', 'work-place': 'Work place ', other: 'Obstruction ',
};

const ADJOINING_STEMS: Readonly<Record<Adjoining['kind'], string>> = {
  unknown: 'Space ', room: 'Adjoining room ', corridor: 'Corridor ', exit: 'Exit way ', pit: 'Pit ', shaft: 'Shaft ', outdoors: 'Outdoors ',
};

/** Name of the next opening of a kind: "Door 2". */
export const nextOpeningName = (draft: Plan, kind: Opening['kind']): string => nextName(draft, 'opening', OPENING_STEMS[kind]);
/** Name of the next obstruction of a kind: "Beam 2". */
export const nextObstructionName = (draft: Plan, kind: Obstruction['kind']): string => nextName(draft, 'obstruction', OBSTRUCTION_STEMS[kind]);
/** Name of the next device of a kind: "D2" of a detector, "Sign 2". */
export const nextDeviceName = (draft: Plan, kind: DeviceKind): string => nextName(draft, 'device', kind === 'detector' ? 'D' : `${DEVICE_WORDS[kind]} `);
/** Name of the next adjoining space of a kind: "Corridor 2". */
export const nextAdjoiningName = (draft: Plan, kind: Adjoining['kind']): string => nextName(draft, 'adjoining', ADJOINING_STEMS[kind]);
/** Name of the next nozzle: N above the floor, U under it. */
export const nextNozzleName = (draft: Plan, z_m: number): string => nextName(draft, 'nozzle', z_m < 0 ? 'U' : 'N');
