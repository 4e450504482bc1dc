import { type Wording, fieldLabel, figurePair, hasUnit, isPoint, moveWords, valueWords } from './field-words.ts';
import type { FieldChange, Move } from './plan-change.ts';

/** How both states of a thing are written, and how far the whole thing was moved: what only went along is not told. */
export interface Telling {
  readonly before: Wording;
  readonly now: Wording;
  readonly move: Move | null;
}

type Fields = Readonly<Record<string, unknown>>;
const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value);
const hasIds = (list: readonly unknown[]): list is readonly (Fields & { readonly id: string })[] => list.every((each) => isFields(each) && typeof each.id === 'string');
const isNested = (list: readonly unknown[]): boolean => list.some((each) => typeof each === 'object' && each !== null && !isPoint(each));

/** Whether two values are alike, whatever the order of their fields. */
export function isAlike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (Array.isArray(a) && Array.isArray(b)) return a.length === b.length && a.every((each, i) => isAlike(each, b[i]));
  if (!isFields(a) || !isFields(b)) return false;
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => Object.hasOwn(b, key) && isAlike(a[key], b[key]));
}

/** Way from one place to another. */
export const wayBetween = (a: { readonly x: number; readonly y: number; readonly z?: number }, b: { readonly x: number; readonly y: number; readonly z?: number }): Move => ({ east_m: b.x - a.x, north_m: b.y - a.y, up_m: (b.z ?? 0) - (a.z ?? 0) });

/** Ways that differ less than this are the same [m]: sums of coordinates do not come out exactly. */
const SAME_WAY_m = 1e-6;
/** Whether two things moved the same way and as far. */
export const isSameWay = (a: Move, b: Move): boolean => Math.abs(a.east_m - b.east_m) <= SAME_WAY_m && Math.abs(a.north_m - b.north_m) <= SAME_WAY_m && Math.abs(a.up_m - b.up_m) <= SAME_WAY_m;

const nameIn = (value: unknown, other: unknown, fallback: string): string => {
  for (const each of [value, other]) if (isFields(each) && typeof each.name === 'string' && each.name.trim() !== '') return each.name;
  return fallback;
};
const within = (label: string, part: string): string => (label === '' ? part : `${label}: ${part.charAt(0).toLowerCase()}${part.slice(1)}`);

/** What differs between two values of a field, part by part, in words. Alike values tell nothing. */
export function fieldChanges(label: string, key: string, before: unknown, now: unknown, telling: Telling): FieldChange[] {
  if (isAlike(before, now)) return [];
  if (isPoint(before) && isPoint(now)) {
    const way = wayBetween(before, now);
    return telling.move && isSameWay(way, telling.move) ? [] : [{ label, before: '', now: `moved ${moveWords(way, telling.now.system)}` }];
  }
  if (Array.isArray(before) && Array.isArray(now) && (isNested(before) || isNested(now))) return listChanges(label, key, before, now, telling);
  if (isFields(before) && isFields(now)) {
    return [...new Set([...Object.keys(before), ...Object.keys(now)])]
      .filter((part) => part !== 'id')
      .flatMap((part) => fieldChanges(within(label, partLabel(part, before[part], now[part])), part === 'value' && hasUnit(key) ? key : part, before[part], now[part], telling));
  }
  if (typeof before === 'number' && typeof now === 'number') {
    const [was, is] = figurePair(key, before, now, telling.now.system);
    return [{ label, before: was, now: is }];
  }
  return [{ label, before: valueWords(key, before, telling.before), now: valueWords(key, now, telling.now) }];
}

/** A part is called by its own name where it has one: entries of records stand under ids. The source within a field is that of a figure. */
const partLabel = (part: string, before: unknown, now: unknown): string => (part === 'source' ? 'Source' : /-\d+$/.test(part) ? nameIn(now, before, fieldLabel(part)) : fieldLabel(part));

function listChanges(label: string, key: string, before: readonly unknown[], now: readonly unknown[], telling: Telling): FieldChange[] {
  if (!hasIds(before) || !hasIds(now)) {
    return Array.from({ length: Math.max(before.length, now.length) }, (_, i) => fieldChanges(within(label, nameIn(now[i], before[i], String(i + 1))), key, before[i], now[i], telling)).flat();
  }
  const was = new Map(before.map((each) => [each.id, each]));
  const is = new Map(now.map((each) => [each.id, each]));
  const ids = [...new Set([...was.keys(), ...is.keys()])];
  const told = ids.flatMap((id, i) => fieldChanges(within(label, nameIn(is.get(id), was.get(id), String(i + 1))), key, was.get(id), is.get(id), telling));
  const order = (list: readonly { readonly id: string }[], other: ReadonlyMap<string, unknown>): string => list.flatMap(({ id }) => (other.has(id) ? [id] : [])).join(' ');
  return order(before, is) === order(now, was) ? told : [...told, { label, before: '', now: 'in another order' }];
}
