import type { LengthSystem } from '../units/length-text.ts';
import { formatLength } from '../units/length-text.ts';
import { formatQuantity, formatQuantityAgainstLimit } from '../units/quantity-text.ts';
import { LIMIT_CATALOGUE } from '../profile/limit-catalogue.ts';
import type { Move } from './plan-change.ts';

/** What the unit at the end of a field's key measures. */
const KINDS: Readonly<Record<string, string>> = {
  m: 'length', m2: 'area', m3: 'volume', m3_s: 'volumeFlow', kg: 'mass', kg_s: 'massFlow', Pa: 'pressure', rad: 'angle', K: 'temperature', s: 'time', V: 'voltage', A: 'current', N: 'force', dBA: 'sound', dB: 'sound', Ah: 'charge',
};
/** Units that are written as they are kept. */
const PLAIN_UNITS: Readonly<Record<string, string>> = { pct: '%', cd: 'cd', mm: 'mm', months: 'months' };
/** Fields that name another thing by its id. */
const NAMING: ReadonlySet<string> = new Set(['wall', 'node', 'from', 'to', 'level', 'profile', 'source', 'asset', 'enclosure', 'target', 'logo', 'plan', 'sheets', 'photos']);
/** Texts that the user wrote: they stand as they are. */
const WRITTEN: ReadonlySet<string> = new Set(['name', 'text', 'note', 'wording', 'purpose', 'reason', 'by', 'procedure', 'adjacent', 'notes']);

const LABELS: Readonly<Record<string, string>> = {
  at: 'Place', along_m: 'Along its wall', holes_rad: 'Hole directions', from: 'Begins at', to: 'Ends at', node: 'Hangs at', source: 'Pipe begins at', rotation_rad: 'Turned by', tilt_rad: 'Tilted by', back_rad: 'Wall behind it',
  front_rad: 'Opens toward', facing_rad: 'Faces', outlet_rad: 'Outlet toward', measured_m: 'Measured length', metresPerUnit: 'Scale', cylinderVolume_m3: 'Water volume of a cylinder',
};

const suffixOf = (key: string): string => /_([A-Za-z0-9_]+)$/.exec(key)?.[1] ?? '';
/** Whether a field's key says its unit. */
export const hasUnit = (key: string): boolean => KINDS[suffixOf(key)] !== undefined || PLAIN_UNITS[suffixOf(key)] !== undefined;

/** A field's key as the user reads it: `height_m` is "Height". */
export function fieldLabel(key: string): string {
  const known = LABELS[key] ?? (Object.hasOwn(LIMIT_CATALOGUE, key) ? LIMIT_CATALOGUE[key as keyof typeof LIMIT_CATALOGUE].label : undefined);
  if (known) return known;
  const bare = hasUnit(key) ? key.slice(0, -suffixOf(key).length - 1) : key;
  const words = bare.replace(/^(is|has)(?=[A-Z])/, '').replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).replace(/[-_]/g, ' ').trim();
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** How figures and names of one plan are written. */
export interface Wording {
  readonly system: LengthSystem;
  /** Name of a thing by its id. */
  readonly nameOf: (id: string) => string | undefined;
}

const kindOf = (key: string): string => (key.startsWith('orificeArea') ? 'orificeArea' : (KINDS[suffixOf(key)] ?? ''));

function numberWords(key: string, value: number, system: LengthSystem): string {
  const kind = kindOf(key);
  if (kind !== '') return formatQuantity(value, kind, system);
  const unit = PLAIN_UNITS[suffixOf(key)];
  return unit ? `${value} ${unit}` : String(value);
}

/** Longest value that is written out. */
const LONGEST = 140;
const shortened = (words: string): string => (words.length > LONGEST ? `${words.slice(0, LONGEST - 1)}…` : words);

type Point = { readonly x: number; readonly y: number; readonly z?: number };
/** Whether a value is a place on the plan or in space. */
export const isPoint = (value: unknown): value is Point =>
  typeof value === 'object' && value !== null && 'x' in value && 'y' in value && Object.keys(value).every((key) => key === 'x' || key === 'y' || key === 'z');

/** A place in words: how far east and north of the plan's origin, and how high. */
export const placeWords = ({ x, y, z }: Point, system: LengthSystem): string => [`x ${formatLength(x, system)}`, `y ${formatLength(y, system)}`, ...(z === undefined ? [] : [`${formatLength(z, system)} high`])].join(', ');

/** A value of a field in words, with its unit. */
export function valueWords(key: string, value: unknown, wording: Wording): string {
  const { system, nameOf } = wording;
  if (value === undefined) return 'none';
  if (value === null) return 'not entered';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return numberWords(key, value, system);
  if (typeof value === 'string') {
    if (value.trim() === '') return 'blank';
    // Pipe begins at a thing; what a figure was taken from is written out.
    if (NAMING.has(key) && !(key === 'source' && !/-\d+$/.test(value))) return nameOf(value) ?? 'something that has gone';
    const isWord = !WRITTEN.has(key) && /^[a-z0-9]+(-[a-z0-9]+)+$/.test(value) && !/^\d/.test(value);
    return shortened(isWord ? value.replaceAll('-', ' ') : value);
  }
  if (isPoint(value)) return placeWords(value, system);
  if (Array.isArray(value)) return value.length === 0 ? 'none' : shortened(value.map((each) => valueWords(key, each, wording)).join(', '));
  const parts = Object.entries(value)
    .filter(([part]) => part !== 'id')
    .map(([part, inner]) => `${fieldLabel(part).toLowerCase()} ${valueWords(part === 'value' && !hasUnit(part) ? key : part, inner, wording)}`);
  return shortened(parts.join(', '));
}

/** Two figures of a field, written so finely that they read differently. */
export function figurePair(key: string, before: number, now: number, system: LengthSystem): readonly [string, string] {
  const kind = kindOf(key);
  if (kind === '') return [numberWords(key, before, system), numberWords(key, now, system)];
  const { value, limit } = formatQuantityAgainstLimit(before, now, kind, system);
  return [value, limit];
}

/** Shorter ways are not told by themselves [m]. */
const NEGLIGIBLE_m = 0.0005;

/** How far and which way, in words: "0.30 m east and 0.10 m up". */
export function moveWords({ east_m, north_m, up_m }: Move, system: LengthSystem): string {
  const ways = ([[east_m, 'east', 'west'], [north_m, 'north', 'south'], [up_m, 'up', 'down']] as const).flatMap(([far_m, positive, negative]) => (Math.abs(far_m) < NEGLIGIBLE_m ? [] : [`${formatLength(Math.abs(far_m), system)} ${far_m > 0 ? positive : negative}`]));
  if (ways.length === 0) return system === 'feet' ? 'by less than 1/32"' : 'by less than 1 mm';
  return ways.length < 3 ? ways.join(' and ') : `${ways.slice(0, -1).join(', ')} and ${ways.at(-1)}`;
}
