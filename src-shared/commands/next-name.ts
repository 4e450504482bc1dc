import type { Obstruction, Opening, Plan } from '../model/plan.ts';

/** The next name of a series: one more than the highest number in use. */
export function nextName(names: Iterable<string>, stem: string): string {
  let highest = 0;
  for (const name of names) {
    const digits = name.startsWith(stem) ? name.slice(stem.length) : '';
    if (/^\d{1,6}$/.test(digits)) highest = Math.max(highest, Number(digits));
  }
  return `${stem}${highest + 1}`;
}

/** Names in use for a kind of thing, over the whole plan. */
export function namesIn(plan: Plan, kind: 'enclosure' | 'obstruction' | 'opening' | 'ceiling-zone' | 'network' | 'cylinder' | 'nozzle'): string[] {
  const names = (record: Readonly<Record<string, { readonly name: string }>>): string[] => Object.values(record).map(({ name }) => name);
  const levels = Object.values(plan.levels);
  const networks = Object.values(plan.networks);
  const enclosures = () => levels.flatMap((level) => Object.values(level.enclosures));
  switch (kind) {
    case 'enclosure':
      return levels.flatMap((level) => names(level.enclosures));
    case 'obstruction':
      return levels.flatMap((level) => names(level.obstructions));
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

const OPENING_STEMS: Readonly<Record<Opening['kind'], string>> = {
  door: 'Door ', 'relief-vent': 'Vent ', damper: 'Damper ', grille: 'Grille ', penetration: 'Penetration ', window: 'Window ',
};
const OBSTRUCTION_STEMS: Readonly<Record<Obstruction['kind'], string>> = {
  beam: 'Beam ', duct: 'Duct ', rack: 'Rack ', cabinet: 'Cabinet ', column: 'Column ', light: 'Light ', tray: 'Tray ', other: 'Obstruction ',
};

/** Name of the next opening of a kind: "Door 2". */
export const nextOpeningName = (plan: Plan, kind: Opening['kind']): string => nextName(namesIn(plan, 'opening'), OPENING_STEMS[kind]);
/** Name of the next obstruction of a kind: "Beam 2". */
export const nextObstructionName = (plan: Plan, kind: Obstruction['kind']): string => nextName(namesIn(plan, 'obstruction'), OBSTRUCTION_STEMS[kind]);
/** Name of the next nozzle: N above the floor, U under it. */
export const nextNozzleName = (plan: Plan, z_m: number): string => nextName(namesIn(plan, 'nozzle'), z_m < 0 ? 'U' : 'N');
